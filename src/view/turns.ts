/**
 * What may come a frame or two later on a machine that can't keep up: tables and lists stand aside there, so that plots and
 * the figures in the text keep their frame. One of them is drawn in each frame, in turn, with what it has to show by then.
 * What is out of sight waits until frames come in time again, or the hand rests.
 */

/** Frames of a movement that are farther apart than this come late: ms, a frame and a half at 60 Hz. */
const LATE = 25;

/** So many frames in time, in a row, end the turns: after a single one all that waits would make the next frame late again. */
const CALM = 6;

/** Asks for a call in the next frame, with the time at which that begins, ms. */
type Next = (call: (time: number) => void) => void;

/** Makes a call that does its work at once or in its turn; `inSight` tells whether anybody can see what it draws. */
type InTurn = (work: () => void, inSight?: () => boolean) => () => void;

/** Turns in the frames that `next` tells of. Units: ms. Source: definition. */
export function turnsOn(next: Next): InTurn {
  // What waits, and whether it is in sight.
  const waiting = new Map<() => void, () => boolean>();
  let ticking = false;
  let moving = false;
  let last: number | null = null;
  let inTime = CALM;
  const tick = (time: number): void => {
    // Only frames in a row tell how fast they come: a change after a rest is in time.
    inTime = last !== null && time - last > LATE ? 0 : inTime + 1;
    last = time;
    const all = [...waiting];
    const due = moving && inTime < CALM ? all.filter(([, inSight]) => inSight()).slice(0, 1) : all;
    for (const [work] of due) waiting.delete(work);
    ticking = moving || waiting.size > 0;
    moving = false;
    // The next frame is seen to before the work, which may fail.
    if (ticking) next(tick);
    else {
      last = null;
      inTime = CALM;
    }
    for (const [work] of due) work();
  };
  return (work, inSight = () => true) =>
    () => {
      moving = true;
      if (!ticking) {
        ticking = true;
        next(tick);
      }
      if (waiting.has(work)) return;
      if (inTime < CALM) waiting.set(work, inSight);
      else work();
    };
}

/** Makes a call that does its work at once, or in one of the next frames where frames come late. Units: none. Source: definition. */
export const inTurn = turnsOn((call) => void globalThis.requestAnimationFrame?.(call));
