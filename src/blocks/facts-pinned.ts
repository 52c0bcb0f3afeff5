/** What a table of figures says for the pinned machine: a column beside the machine's own, or a second line in each cell that differs. */
import { plotWords } from "#view/words/en-plots";
import type { FactsState } from "./facts-table.ts";

/** A table with the same table of the pinned machine in it. Rows and columns belong together by their titles. */
export function factsPinned(state: FactsState, pinned: FactsState | undefined): FactsState {
  if (pinned?.name !== state.name) return state;
  // Titles may come twice: the same place goes before.
  const rowOf = (title: string, i: number) =>
    pinned.rows[i]?.title === title ? pinned.rows[i] : pinned.rows.find((row) => row.title === title);
  const { own } = state;
  if (own !== undefined) {
    const then = pinned.own ?? own;
    const put = (list: readonly string[], at: number, text: string) => list.toSpliced(at, 0, text);
    return {
      ...state,
      dashed: own + 1,
      columns: put(state.columns, own + 2, plotWords.pinned(pinned.columns[then + 1] ?? "")),
      rows: state.rows.map((row, i) => ({
        ...row,
        cells: put(row.cells, own + 1, rowOf(row.title, i)?.cells[then] ?? plotWords.none),
      })),
    };
  }
  const [, ...titles] = state.columns;
  const places = titles.map((title, i) => (pinned.columns[i + 1] === title ? i : pinned.columns.indexOf(title) - 1));
  const then = state.rows.map(({ title, cells }, r) =>
    cells.map((cell, i) => {
      const text = rowOf(title, r)?.cells[places[i] ?? -1] ?? "";
      return text === cell ? "" : text;
    }),
  );
  return { ...state, then };
}
