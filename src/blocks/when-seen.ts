/** Puts off costly work on a figure until the reader comes near it, and does it at most once a frame. */

export interface Seen {
  /** There is something to do. */
  wake(): void;
}

/** How near the figure has to be to the screen. */
const NEAR = "300px";

/**
 * Runs `work` after `wake`: in the very frame when the figure is on the screen or near it, otherwise when it gets there.
 * Where a page is set without a screen, at once.
 */
export function whenSeen(figure: Element, work: () => void): Seen {
  const view = figure.ownerDocument.defaultView;
  const Observer = view?.IntersectionObserver;
  if (!view || typeof window === "undefined" || !Observer) return { wake: work };
  let near = false;
  let due = false;
  new Observer(
    (entries) => {
      near = entries.at(-1)?.isIntersecting ?? false;
      if (!near || !due) return;
      due = false;
      work();
    },
    { rootMargin: NEAR },
  ).observe(figure);
  // Paper shows all of the page.
  view.addEventListener("beforeprint", () => {
    if (!due) return;
    due = false;
    work();
  });
  return {
    wake() {
      if (near) work();
      else due = true;
    },
  };
}
