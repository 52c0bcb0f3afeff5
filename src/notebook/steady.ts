/**
 * Keeps what is drawn from getting shorter while a hand moves something: all that stands below would jump up and down under
 * the reader's eyes, and the browser would paint it anew in every frame. It may grow, and shrinks when the hand rests.
 */
import { rested } from "#view/rested";

interface Steady {
  /** The call to make before a place is drawn anew. */
  of(host: HTMLElement): () => void;
  end(): void;
}

/** Places of a document that keep their height. Units: px. Source: definition. */
export function steadyPlaces(document: Document): Steady {
  const heights = new WeakMap<Element, number>();
  const Observer = document.defaultView?.ResizeObserver;
  // Told of after the layout of each frame, so that nothing is measured in the middle of one.
  const observer =
    Observer &&
    new Observer((entries) => {
      for (const { target } of entries) heights.set(target, (target as HTMLElement).offsetHeight);
    });
  return {
    of(host) {
      observer?.observe(host);
      let held = 0;
      const hold = (height: number) => {
        if (height === held) return;
        held = height;
        host.style.minHeight = height > 0 ? `${height}px` : "";
      };
      // Before the first change of a movement it lets go at once, from then on when the hand rests.
      const release = rested(() => hold(0));
      return () => {
        hold(heights.get(host) ?? 0);
        release();
      };
    },
    end: () => observer?.disconnect(),
  };
}
