/**
 * Words that describe a picture follow when the hand rests: nobody reads a sentence while it changes sixty times a second,
 * and setting it anew costs more than the picture. The picture and its figures never wait.
 */

/** Changes closer together than this belong to one movement: ms. A frame of a slow machine is shorter. */
const TOGETHER = 150;

interface Waiter {
  readonly work: () => void;
  /** When it was asked for last, ms. */
  last: number;
}

// One clock for all that waits: a page has dozens, and a timer for each would run in every frame of a movement.
const waiting = new Set<Waiter>();

function arm(): void {
  if (waiting.size === 0) return;
  const first = Math.min(...[...waiting].map(({ last }) => last));
  setTimeout(look, Math.max(0, first + TOGETHER - performance.now()));
}

function look(): void {
  const now = performance.now();
  const due = [...waiting].filter(({ last }) => last + TOGETHER <= now);
  for (const waiter of due) waiting.delete(waiter);
  // The rest is seen to before the work, which may fail.
  arm();
  for (const { work } of due) work();
}

/** Makes a call that does its work at once, or, within a movement, once the movement has ended. Units: none. Source: definition. */
export function rested(work: () => void): () => void {
  const waiter: Waiter = { work, last: Number.NEGATIVE_INFINITY };
  return () => {
    const now = performance.now();
    const moving = now - waiter.last < TOGETHER;
    waiter.last = now;
    if (waiting.has(waiter)) return;
    if (!moving) work();
    else {
      waiting.add(waiter);
      if (waiting.size === 1) arm();
    }
  };
}
