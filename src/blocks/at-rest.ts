/** Costly work that waits until the reader's hand rests, and is then done piece by piece in idle time. */

/** So long nothing must have changed, ms. */
const REST = 150;

/**
 * Gives a function that takes the pieces of a work. They run one after the other, each in idle time of its own, once
 * nothing has been asked anew for a moment; asking anew drops what was left. Where a page is set without a screen, never.
 */
export function atRest(host: Element): (pieces: readonly (() => void)[]) => void {
  const view = host.ownerDocument.defaultView;
  if (!view || typeof window === "undefined") return () => {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const idle = (work: () => void) => {
    if (view.requestIdleCallback) view.requestIdleCallback(work, { timeout: 500 });
    else setTimeout(work);
  };
  return (pieces) => {
    clearTimeout(timer);
    asked += 1;
    const mine = asked;
    const next = (i: number) => {
      const piece = pieces[i];
      // Who left the page needs no answer any more.
      if (!piece || mine !== asked || !host.isConnected) return;
      piece();
      if (i + 1 < pieces.length) idle(() => next(i + 1));
    };
    timer = setTimeout(() => idle(() => next(0)), REST);
  };
}
