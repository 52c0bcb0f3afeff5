/**
 * What a cell can show. A view knows how to draw; a state is plain data that says what to draw. Cells only ever make
 * states, so a notebook runs without a document, and the same state gives the caption, the speech and the print.
 */
import type { Bench } from "#machine/bench";

/** One kind of thing that can stand on a page. `S` is plain data: no functions, no elements. */
export interface View<S> {
  readonly name: string;
  /** A table or a list: where frames come late it waits for its turn, so that plots and figures in the text never do. */
  readonly patient?: boolean;
  /** The state in whole sentences: for captions, screen readers, print and the tests that run without a document. */
  words(state: S): string;
  /**
   * Builds the elements in `host` once and returns the function that brings them to a state.
   * Called again for another state of the same view, that function alone runs: nothing is rebuilt.
   */
  mount(host: HTMLElement, bench: Bench): (state: S) => void;
}

/** A view together with its present state: the value of a cell that shows something. */
export interface Shown<S = unknown> {
  readonly view: View<S>;
  readonly state: S;
}

export function show<S>(view: View<S>, state: S): Shown<S> {
  return { view, state };
}

export function isShown(value: unknown): value is Shown {
  return typeof value === "object" && value !== null && "view" in value && "state" in value;
}
