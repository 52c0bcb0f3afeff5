/** Costly work that waits until the reader's hand rests, and is then done piece by piece in idle time. */

/** So long, ms, nothing must have changed; twice as long at most, since one timer looks after all changes of a movement. */
const REST = 150;

/**
 * Gives a function that takes the pieces of a work. They run one after the other, each in idle time of its own, once
 * nothing has been asked anew for a moment; asking anew drops what was left. Where a page is set without a screen, never.
 */
export function atRest(host: Element): (pieces: Iterable<() => void>) => void {
  const view = host.ownerDocument.defaultView;
  if (!view || typeof window === "undefined") return () => {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  let wanted: Iterable<() => void> = [];
  const idle = (work: () => void) => {
    if (view.requestIdleCallback) view.requestIdleCallback(work, { timeout: 500 });
    else setTimeout(work);
  };
  const begin = () => {
    const mine = asked;
    const left = wanted[Symbol.iterator]();
    const next = () => {
      // Who left the page needs no answer any more.
      if (mine !== asked || !host.isConnected) return;
      const { value: piece, done } = left.next();
      if (done) return;
      piece();
      idle(next);
    };
    idle(next);
  };
  const arm = () => {
    const seen = asked;
    timer = setTimeout(() => {
      timer = undefined;
      if (seen === asked) begin();
      else arm();
    }, REST);
  };
  return (pieces) => {
    wanted = pieces;
    asked += 1;
    if (timer === undefined) arm();
  };
}
