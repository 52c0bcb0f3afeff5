/** The grid of the map of gears: cells that keys, mouse and finger walk over, each with its figure and a name for the ear. */
import { el, Pen, setText } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { enGearMap as en } from "#view/words/en-gear-map";
import type { GearMapState, MapCell } from "./gear-map.ts";

/** Where the keys lead from a place: columns along, rows down. */
const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  Home: [-99, 0],
  End: [99, 0],
  PageUp: [0, -99],
  PageDown: [0, 99],
};

const isPair = (pair: readonly [number, number] | null, cell: MapCell): boolean =>
  pair !== null && pair[0] === cell.pinionTeeth && pair[1] === cell.mainTeeth;

function shiftWords({ shiftMm, fits }: MapCell): string {
  if (Math.abs(shiftMm) < 1e-9) return en.stays;
  const size = formatValue(Math.abs(shiftMm), "mm", { decimals: 2, units: "metric" });
  return en.moves(size, shiftMm > 0 ? "away" : "towards", fits);
}

/** What is to be said of a pair besides its value. */
export function factsOf(state: GearMapState, cell: MapCell): string {
  return [
    ...(isPair(state.fitted, cell) ? [en.fitted] : []),
    ...(isPair(state.whatIf, cell) ? [en.tried] : []),
    ...(cell.mark === null ? [] : [en.marks[cell.mark].says]),
    en.ratio(formatNumber(cell.ratio, 2)),
    shiftWords(cell),
  ].join("; ");
}

/** The short word in a cell: which machine has these gears, or what stands against them. */
function tagOf(state: GearMapState, cell: MapCell): string {
  if (isPair(state.fitted, cell)) return en.now;
  return isPair(state.whatIf, cell) ? en.whatIf : cell.tag;
}

interface Grid {
  readonly element: HTMLElement;
  put(state: GearMapState): void;
}

/** The cells themselves. `look` is told which one the reader is at, `take` which one is chosen. */
export function gearGrid(doc: Document, look: (cell: number) => void, take: (cell: number) => void): Grid {
  const table = el(doc, "table", { class: "gear-grid", role: "grid" });
  let cells: Pen<HTMLTableCellElement>[] = [];
  let numbers: Element[] = [];
  let tags: Element[] = [];
  let heads: Element[] = [];
  let shape = "";
  let columns = 0;
  let at = 0;
  const move = (to: number, focus: boolean) => {
    cells[at]?.set("tabindex", "-1");
    at = to;
    cells[at]?.set("tabindex", "0");
    if (focus) cells[at]?.element.focus();
    look(at);
  };
  const placeOf = (event: Event): number =>
    cells.findIndex(({ element }) => element === (event.target as Element | null)?.closest?.("td"));
  table.addEventListener("keydown", (event) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      take(at);
      return;
    }
    const step = steps[event.key];
    if (!step || event.altKey || event.metaKey || event.ctrlKey) return;
    event.preventDefault();
    const rows = cells.length / columns;
    const clamp = (value: number, most: number) => Math.min(Math.max(value, 0), most - 1);
    const column = clamp((at % columns) + step[0], columns);
    const row = clamp(Math.floor(at / columns) + step[1], rows);
    move(row * columns + column, true);
  });
  table.addEventListener("click", (event) => {
    const place = placeOf(event);
    if (place < 0) return;
    move(place, true);
    take(place);
  });
  table.addEventListener("focusin", (event) => {
    const place = placeOf(event);
    if (place >= 0 && place !== at) move(place, false);
  });
  table.addEventListener("pointerover", (event) => {
    const place = placeOf(event);
    if (place >= 0) look(place);
  });
  table.addEventListener("pointerleave", () => look(at));

  function build(state: GearMapState): void {
    columns = state.pinions.length;
    heads = [...state.pinions, ...state.mains].map((_, i) =>
      el(doc, "th", { scope: i < columns ? "col" : "row", role: i < columns ? "columnheader" : "rowheader" }),
    );
    cells = state.cells.map(() => new Pen(el(doc, "td", { role: "gridcell", tabindex: "-1" })));
    numbers = cells.map(() => el(doc, "b"));
    tags = cells.map(() => el(doc, "i"));
    for (const [i, cell] of cells.entries()) cell.element.append(numbers[i] as Element, " ", tags[i] as Element);
    const corner = el(doc, "td", { class: "corner" }, el(doc, "span", {}, en.axes), el(doc, "span", {}, en.down));
    const rows = state.mains.map((_, row) =>
      el(
        doc,
        "tr",
        {},
        heads[columns + row] as Element,
        ...cells.slice(row * columns, (row + 1) * columns).map(({ element }) => element),
      ),
    );
    table.replaceChildren(
      el(doc, "thead", {}, el(doc, "tr", {}, corner, ...heads.slice(0, columns))),
      el(doc, "tbody", {}, ...rows),
    );
    at = state.cells.findIndex((cell) => isPair(state.fitted, cell));
    cells[at]?.set("tabindex", "0");
  }

  return {
    element: table,
    put(state) {
      const next = `${state.pinions.length} ${state.mains.length}`;
      if (next !== shape) {
        shape = next;
        build(state);
        look(at);
      }
      table.setAttribute("aria-label", `${state.title}, ${en.pinion} ${en.axes} ${en.main} ↓`);
      [...state.pinions, ...state.mains].forEach((teeth, i) => {
        setText(heads[i] as Element, String(teeth));
      });
      for (const [i, cell] of state.cells.entries()) {
        const pen = cells[i] as Pen;
        const now = isPair(state.fitted, cell);
        const tried = isPair(state.whatIf, cell);
        setText(numbers[i] as Element, cell.text);
        const tag = tagOf(state, cell);
        setText(tags[i] as Element, tag);
        pen.set("data-level", cell.level ?? "none");
        pen.set("data-fits", String(cell.fits));
        pen.set("data-mark", cell.mark ?? "none");
        pen.set("data-machine", tried && now ? "both" : tried ? "what-if" : now ? "now" : "none");
        pen.set("aria-selected", String(tried));
        // What is seen in the cell stands in front of its name, so that it can be called by it.
        const seen = tag === "" ? cell.text : `${cell.text} ${tag}`;
        pen.set("aria-label", `${seen}. ${en.label(cell.pinionTeeth, cell.mainTeeth)}; ${factsOf(state, cell)}.`);
      }
    },
  };
}
