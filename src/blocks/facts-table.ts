/** A small table of figures side by side: a few rows, a few columns, each cell a short text. */
import { el, setAttribute, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";

export interface FactsRow {
  readonly title: string;
  readonly cells: readonly string[];
  /** Says that this row is the one to look at. */
  readonly marked?: boolean;
}

export interface FactsState {
  /** Its stable name in kebab-case (`data-facts`). */
  readonly name: string;
  readonly caption: string;
  /** The title of the first column, then one for each cell of a row. */
  readonly columns: readonly string[];
  readonly rows: readonly FactsRow[];
  /** What the table comes to, in a sentence or two. */
  readonly words: string;
}

/** Shows figures side by side. */
export const factsTable = (state: FactsState): Shown<FactsState> => show(factsView, state);

const factsView: View<FactsState> = {
  name: "facts-table",
  words: ({ caption, columns, rows, words }) =>
    `${caption}. ${rows
      .map(({ title, cells }) => `${title}: ${cells.map((cell, i) => `${columns[i + 1]} ${cell}`).join(", ")}.`)
      .join(" ")} ${words}`.trim(),
  mount(host) {
    const doc = host.ownerDocument;
    const caption = el(doc, "caption");
    const head = el(doc, "tr");
    const body = el(doc, "tbody");
    const table = el(doc, "table", { class: "facts-table" }, caption, el(doc, "thead", {}, head), body);
    const scroller = el(doc, "div", { class: "wide-table", tabindex: "0", role: "region" }, table);
    const words = el(doc, "p", { class: "facts-words" });
    host.append(scroller, words);
    let shape = "";
    let texts: Element[] = [];
    return (state) => {
      const next = `${state.columns.length} ${state.rows.length}`;
      if (next !== shape) {
        shape = next;
        texts = [];
        const cell = <E extends Element>(element: E): E => {
          texts.push(element);
          return element;
        };
        // A column without a title has nothing to announce: its corner is no heading.
        head.replaceChildren(
          ...state.columns.map((title) => cell(title === "" ? el(doc, "td") : el(doc, "th", { scope: "col" }))),
        );
        const row = () => [
          cell(el(doc, "th", { scope: "row" })),
          ...state.columns.slice(1).map(() => cell(el(doc, "td"))),
        ];
        body.replaceChildren(...state.rows.map(() => el(doc, "tr", {}, ...row())));
      }
      setAttribute(host, "data-facts", state.name);
      setAttribute(scroller, "aria-label", state.caption);
      setText(caption, state.caption);
      setText(words, state.words);
      words.hidden = state.words === "";
      const all = [...state.columns, ...state.rows.flatMap(({ title, cells }) => [title, ...cells])];
      for (const [i, element] of texts.entries()) setText(element, all[i] ?? "");
      for (const [i, row] of state.rows.entries())
        setAttribute(body.children[i] as Element, "class", row.marked ? "is-marked" : null);
    };
  },
};
