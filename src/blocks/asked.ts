/** The questions that stand on a page, for those who put them to a whole room. */

/** A question on the page. What it asks changes with the machine; whoever shows it elsewhere follows it. */
export interface Asked<S = unknown> {
  readonly element: HTMLElement;
  readonly state: S;
  /** Called after each change of the state, while somebody follows. */
  follow: (() => void) | null;
}

const all = new Set<Asked>();

/** Enters a question. The function that comes back brings it to its next state. */
export function ask<S>(element: HTMLElement): (state: S) => void {
  const asked: { element: HTMLElement; state: unknown; follow: (() => void) | null } = {
    element,
    state: null,
    follow: null,
  };
  all.add(asked);
  return (state) => {
    asked.state = state;
    asked.follow?.();
  };
}

/** The questions that stand on the page now. */
export function askedOn(doc: Document): Asked[] {
  for (const asked of all) if (asked.state !== null && !asked.element.isConnected) all.delete(asked);
  return [...all].filter(({ element }) => element.ownerDocument === doc);
}
