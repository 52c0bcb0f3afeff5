/** A small table of figures side by side: a few rows, a few columns, each cell a short text. */
import { el, setAttribute, setHidden, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enPins } from "#view/words/en-pins";

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
  /** Where each machine has a column of its own: the place of this machine's cell in a row. */
  readonly own?: number;
  /** The place of the pinned machine's cells, where they are a column. */
  readonly dashed?: number;
  /** What the cells were for the pinned machine, row by row; nothing where that is the same. */
  readonly then?: readonly (readonly string[])[];
}

/** Shows figures side by side. */
export const factsTable = (state: FactsState): Shown<FactsState> => show(factsView, state);

/** A cell in words, with what it was for the pinned machine. */
const cellWords = ({ columns, then }: FactsState, cell: string, row: number, i: number): string => {
  const was = then?.[row]?.[i] ?? "";
  return `${columns[i + 1]} ${cell}${was === "" ? "" : ` (${enPins.row} ${was})`}`;
};

const factsView: View<FactsState> = {
  name: "facts-table",
  patient: true,
  words: (state) =>
    `${state.caption}. ${state.rows
      .map(({ title, cells }, row) => `${title}: ${cells.map((cell, i) => cellWords(state, cell, row, i)).join(", ")}.`)
      .join(" ")} ${state.words}`.trim(),
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
    let lines: HTMLElement[] = [];
    return (state) => {
      const next = `${state.columns.length} ${state.rows.length} ${state.dashed} ${state.then !== undefined}`;
      if (next !== shape) {
        shape = next;
        texts = [];
        lines = [];
        const cell = <E extends Element>(element: E): E => {
          texts.push(element);
          return element;
        };
        // Below its text, a cell has what it was for the pinned machine.
        const twofold = <E extends Element>(element: E): E => {
          if (!state.then) return cell(element);
          const line = el(doc, "span", { class: "pinned-value" });
          lines.push(line);
          element.append(cell(el(doc, "span")), line);
          return element;
        };
        // A column without a title has nothing to announce: its corner is no heading.
        head.replaceChildren(
          ...state.columns.map((title) => cell(title === "" ? el(doc, "td") : el(doc, "th", { scope: "col" }))),
        );
        const value = (_: string, i: number) =>
          i === state.dashed ? cell(el(doc, "td", { class: "pinned-column" })) : twofold(el(doc, "td"));
        const row = () => [twofold(el(doc, "th", { scope: "row" })), ...state.columns.slice(1).map(value)];
        body.replaceChildren(...state.rows.map(() => el(doc, "tr", {}, ...row())));
      }
      setAttribute(host, "data-facts", state.name);
      setAttribute(scroller, "aria-label", state.caption);
      setText(caption, state.caption);
      setText(words, state.words);
      words.hidden = state.words === "";
      const all = [...state.columns, ...state.rows.flatMap(({ title, cells }) => [title, ...cells])];
      for (const [i, element] of texts.entries()) setText(element, all[i] ?? "");
      const were = (state.then ?? []).flatMap((row) => [row.some(Boolean) ? enPins.row : "", ...row]);
      for (const [i, line] of lines.entries()) {
        setText(line, were[i] ?? "");
        setHidden(line, !were[i]);
      }
      for (const [i, row] of state.rows.entries())
        setAttribute(body.children[i] as Element, "class", row.marked ? "is-marked" : null);
    };
  },
};
