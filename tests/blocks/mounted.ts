/** A block on a page of its own, as a cell of a notebook would show it. */
import { type Bench, createBench } from "#machine/bench";
import type { Shown } from "#view/shown";

/** A block that stands on a page, whatever it shows. */
export type Mounted = Omit<ReturnType<typeof mounted>, "update">;

/** Puts a block on an empty page and returns what tests ask of it. */
export function mounted<S>(shown: Shown<S>, bench: Bench = createBench()) {
  const host = document.createElement("div");
  document.body.replaceChildren(host);
  const update = shown.view.mount(host, bench);
  update(shown.state);
  return {
    host,
    bench,
    /** Brings it to another state of the same view. */
    update: (next: Shown<S>): void => update(next.state),
    one: <E extends HTMLElement = HTMLElement>(selector: string): E => {
      const found = host.querySelector<E>(selector);
      if (!found) throw new Error(`nothing matches ${selector}`);
      return found;
    },
    all: <E extends HTMLElement = HTMLElement>(selector: string): E[] => [...host.querySelectorAll<E>(selector)],
    button: (words: string): HTMLButtonElement => {
      const found = [...host.querySelectorAll("button")].find((each) => each.textContent === words);
      if (!found) throw new Error(`no button says ${words}`);
      return found;
    },
  };
}

/** What a block says in whole sentences. */
export const wordsOf = <S>({ view, state }: Shown<S>): string => view.words(state);

/** Whether an update left every element where it was. */
export function leavesElements(host: HTMLElement, update: () => void): boolean {
  const before = [...host.querySelectorAll("*")];
  update();
  const after = [...host.querySelectorAll("*")];
  return before.length === after.length && before.every((element, i) => element === after[i]);
}

/** Text as a reader sees it: one kind of space. */
export const plain = (text: string | null | undefined): string => (text ?? "").replace(/\s+/g, " ").trim();
