/**
 * Words that describe a picture follow when the hand rests: nobody reads a sentence while it changes sixty times a second,
 * and setting it anew costs more than the picture. The picture and its figures never wait.
 */

/** Changes closer together than this belong to one movement: ms. A frame of a slow machine is shorter. */
const TOGETHER = 70;

/** Makes a call that does its work at once, or, within a movement, once the movement has ended. Units: none. Source: definition. */
export function rested(work: () => void): () => void {
  let last = Number.NEGATIVE_INFINITY;
  let waiting = false;
  const look = (): void => {
    const left = last + TOGETHER - performance.now();
    if (left > 0) {
      setTimeout(look, left);
      return;
    }
    waiting = false;
    work();
  };
  return () => {
    const now = performance.now();
    const moving = now - last < TOGETHER;
    last = now;
    if (waiting) return;
    if (!moving) work();
    else {
      waiting = true;
      setTimeout(look, TOGETHER);
    }
  };
}
