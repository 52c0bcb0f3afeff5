/** The numbers behind a plot: as a table that is filled when it is opened, and as a file for a spreadsheet. */
import { el, setText } from "#view/dom";
import { formatNumber } from "#view/format";
import { plotWords } from "#view/words/en-plots";
import { axisWords } from "./layout.ts";
import type { Curve, PlotState, Table } from "./state.ts";

/** Rows of a table on the page; a file has them all. */
const ROWS = 21;

/** A curve's value at `at`, read along a straight line between its neighbours; null outside it and in its gaps. */
export function valueAt({ xs, ys }: Pick<Curve, "xs" | "ys">, at: number): number | null {
  const n = Math.min(xs.length, ys.length);
  if (n === 0) return null;
  const rising = xs[0]! <= xs[n - 1]!;
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! <= at === rising) low = middle;
    else high = middle;
  }
  const a = ys[low] ?? null;
  const b = ys[high] ?? null;
  if (at === xs[low]) return a;
  if (at === xs[high]) return b;
  const share = (at - xs[low]!) / (xs[high]! - xs[low]!);
  return a === null || b === null || !(share > 0 && share < 1) ? null : a + share * (b - a);
}

/** The values of the table that makes itself: all curves and flat levels at the places of the longest curve. */
function tableOf(state: PlotState, most = ROWS): Table {
  if (state.table) return state.table;
  const inked = state.curves.filter((curve) => curve.xs.length > 0);
  const [first] = [...inked].sort((a, b) => b.xs.length - a.xs.length);
  const x = axisWords(state.x);
  const y = axisWords(state.y);
  if (!first) {
    const points = state.points ?? [];
    return {
      columns: [plotWords.point, x, y],
      rows: points.map((point) => [point.label ?? point.key, point.x, point.y]),
    };
  }
  const levels = (state.levels ?? []).filter((level) => level.axis === "y");
  const named = (label: string) => (label === "" ? y : `${label}, ${y.split(", ").at(-1)}`);
  const n = first.xs.length;
  const count = Math.min(n, most);
  const rows = Array.from({ length: count }, (_, k) => {
    const at = first.xs[count === 1 ? 0 : Math.round((k * (n - 1)) / (count - 1))]!;
    return [at, ...inked.map((curve) => valueAt(curve, at)), ...levels.map((level) => level.at)];
  });
  return {
    columns: [x, ...[...inked.map(({ name, label }) => name ?? label), ...levels.map(({ label }) => label)].map(named)],
    rows,
  };
}

/** Each cell as text; a column keeps its decimals over all its rows. */
function cellTexts({ rows }: Table): string[][] {
  const columns = rows[0]?.length ?? 0;
  const decimals = Array.from({ length: columns }, (_, c) => {
    const numbers = rows.map((row) => row[c]).filter((value): value is number => typeof value === "number");
    // Four figures of the largest value in the column; none behind the point where all are whole.
    if (numbers.every((value) => Math.abs(value - Math.round(value)) < 1e-6)) return 0;
    const largest = Math.max(...numbers.map(Math.abs));
    return Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(largest))));
  });
  return rows.map((row) =>
    row.map((cell, c) =>
      cell === null ? plotWords.none : typeof cell === "number" ? formatNumber(cell, decimals[c]) : cell,
    ),
  );
}

/** Enough figures for any work with the numbers, without the dust of their reckoning. */
const exact = (cell: string | number | null) => (typeof cell === "number" ? Number(cell.toPrecision(9)) : cell);

async function save(doc: Document, state: PlotState): Promise<void> {
  // The writer of such files is fetched when somebody wants one.
  const { default: papa } = await import("papaparse");
  const { columns, rows } = tableOf(state, Number.POSITIVE_INFINITY);
  const text = papa.unparse(
    { fields: [...columns], data: rows.map((row) => row.map(exact)) },
    { escapeFormulae: true },
  );
  const url = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
  const link = el(doc, "a", { href: url, download: `${state.name}.csv` });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The closed table below a plot. The function that comes back brings it to a state; closed, it costs nothing. */
export function tableBehind(doc: Document): { element: HTMLElement; put(state: PlotState): void } {
  const body = el(doc, "div", { class: "plot-table" });
  const details = el(doc, "details", {}, el(doc, "summary", {}, plotWords.table), body);
  let state: PlotState | null = null;
  let made: { key: string; cells: Element[] } | null = null;

  function fill(): void {
    if (!state || !details.open) return;
    const table = tableOf(state);
    const texts = cellTexts(table);
    const key = `${table.columns.join("|")} ${texts.length}`;
    if (made?.key !== key) made = { key, cells: build(table) };
    texts.flat().forEach((text, i) => {
      setText(made!.cells[i]!, text);
    });
  }

  function build(table: Table): Element[] {
    const cells: Element[] = [];
    const head = el(doc, "tr", {}, ...table.columns.map((column) => el(doc, "th", { scope: "col" }, column)));
    const rows = table.rows.map((row) =>
      el(
        doc,
        "tr",
        {},
        ...row.map((_, c) => {
          const cell = c === 0 ? el(doc, "th", { scope: "row" }) : el(doc, "td");
          cells.push(cell);
          return cell;
        }),
      ),
    );
    const button = el(doc, "button", { type: "button", class: "quiet" }, plotWords.save);
    button.addEventListener("click", () => {
      if (state) void save(doc, state);
    });
    body.replaceChildren(el(doc, "table", {}, el(doc, "thead", {}, head), el(doc, "tbody", {}, ...rows)), button);
    return cells;
  }

  details.addEventListener("toggle", fill);
  return {
    element: details,
    put(next) {
      state = next;
      if (details.open) fill();
    },
  };
}
