/** The flight modes as a table: head speed and throttle, each from the other, what is really given, and whether it is held. */
import type { QuantityName } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import { figuresOf } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { bind, newId, socketFor } from "#inputs/bound";
import { boxFor, numberInput } from "#inputs/box";
import { makeSlider } from "#inputs/slider";
import { readFigure } from "#inputs/typed";
import type { Bench } from "#machine/bench";
import { el, setText } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { pinnedCells } from "./pin-cells.ts";
import { fillOutput, quantityText } from "./quantity.ts";

interface ModesTableState {
  readonly figures: Figures;
  /** Head speed and throttle can be typed. */
  readonly edit: boolean;
  /** Shows what the old throttle values give with today's parts. */
  readonly stale: boolean;
  /** Leaves the room in hover and the lowest charge to other pages. */
  readonly brief: boolean;
  /** The figures of the pinned machine, where there is one. */
  readonly pinned?: Figures;
}

/** The flight modes of a machine in a table. */
export function modesTable(
  figures: Figures,
  { edit = false, stale = false, brief = false }: { edit?: boolean; stale?: boolean; brief?: boolean } = {},
): Shown<ModesTableState> {
  return show(modesTableView, { figures, edit, stale, brief });
}

/** Columns after the name and the two that can be typed. */
const columns = ({ stale, brief }: ModesTableState): readonly (readonly [QuantityName, string])[] => [
  ["throttle-entered", en.modes.entered],
  ["head-speed-entered", en.modes.real],
  ...(stale ? ([["stale-head-speed", en.modes.stale]] as const) : []),
  ...(brief ? [] : ([["speed-headroom-hover", en.modes.hover]] as const)),
  ["speed-headroom-full-pitch", en.modes.full],
  ...(brief ? [] : ([["lowest-charge", en.modes.lowest]] as const)),
];

/** A mode's throttle, typed: it sets the head speed by way of the reference. An input of pages only. */
function throttleBox(host: HTMLElement, bench: Bench, mode: number): { element: HTMLElement; show(): void } {
  const doc = host.ownerDocument;
  const input = numberInput(doc, newId(), en.modes.throttleOf(String(mode + 1)), "decimal");
  const element = el(doc, "span", { class: "input box-only", "data-input": `modes.${mode}.throttle` });
  const throttle = () => figuresOf(bench.now).number("throttle", mode);
  const text = () => {
    const value = throttle();
    return value === null ? "" : String(Number(value.toFixed(1)));
  };
  const problem = (value: unknown, words: string) => ({ path: `modes.${mode}.throttle`, value, words });
  const box = boxFor(input, element, {
    text,
    words: () => formatValue(throttle(), "percent"),
    take(typed) {
      const reference = figuresOf(bench.now).number("learned-head-speed");
      if (reference === null) return problem(typed, en.modes.noReference);
      const share = readFigure(typed.trim().replace(/\s*%$/, ""));
      if (share === null || share < 1 || share > 150) return problem(typed, en.modes.badThrottle(typed));
      return bench.set(`modes.${mode}.headRpm`, Number(((reference * share) / 100).toFixed(3)));
    },
  });
  element.append(el(doc, "span", { class: "entry" }, input, el(doc, "span", { class: "unit" }, "%")));
  let last = "";
  return {
    element,
    show() {
      const next = text();
      box.show(next !== last);
      last = next;
    },
  };
}

interface Row {
  readonly element: HTMLTableRowElement;
  update(state: ModesTableState): void;
}

function rowFor(host: HTMLElement, bench: Bench, mode: number, first: ModesTableState): Row {
  const doc = host.ownerDocument;
  const { edit } = first;
  const name = el(doc, "span");
  const rowHead = el(doc, "th", { scope: "row" }, name);
  const headOutput = el(doc, "output");
  const throttleOutput = el(doc, "output");
  const typed = edit ? throttleBox(host, bench, mode) : null;
  const head = edit
    ? bind(socketFor(host, bench), makeSlider(socketFor(host, bench), `modes.${mode}.headRpm`, { boxOnly: true }))
        .element
    : headOutput;
  const cells = columns(first).map(([quantity, title]) => {
    const output = el(doc, "output");
    return { quantity, output, cell: el(doc, "td", { "data-column": title }, output) };
  });
  const headCell = el(doc, "td", { "data-column": en.modes.head }, head);
  const throttleCell = el(doc, "td", { "data-column": en.modes.throttle }, typed ? typed.element : throttleOutput);
  const element = el(doc, "tr", {}, rowHead, headCell, throttleCell, ...cells.map(({ cell }) => cell));
  const then = pinnedCells(rowHead, [
    { quantity: "set-head-speed", cell: headCell },
    { quantity: "throttle", cell: throttleCell },
    ...cells,
  ]);
  return {
    element,
    update({ figures, pinned }) {
      then(figures, pinned, mode);
      setText(name, modeName(figures.machine, mode));
      if (!edit) fillOutput(headOutput, { figures, name: "set-head-speed", mode, machine: null });
      if (typed) typed.show();
      else fillOutput(throttleOutput, { figures, name: "throttle", mode, machine: null });
      for (const { quantity, output, cell } of cells) {
        fillOutput(output, { figures, name: quantity, mode, machine: null });
        const value = figures.number(quantity, mode);
        cell.classList.toggle("is-short", value === null || value < 0);
      }
    },
  };
}

const modesTableView: View<ModesTableState> = {
  name: "modes-table",
  patient: true,
  words: ({ figures }) =>
    figures.machine.modes
      .map((_, mode) => {
        const text = (quantity: QuantityName) => quantityText({ figures, name: quantity, mode });
        const entered = [text("throttle-entered"), text("head-speed-entered")] as const;
        return en.modes.headWords(
          modeName(figures.machine, mode),
          text("set-head-speed"),
          text("throttle"),
          ...entered,
        );
      })
      .join(" "),
  mount(host, bench) {
    const doc = host.ownerDocument;
    const head = el(doc, "tr");
    const body = el(doc, "tbody");
    const table = el(
      doc,
      "table",
      { class: "modes-table" },
      el(doc, "caption", {}, en.modes.caption),
      el(doc, "thead", {}, head),
      body,
    );
    host.append(
      el(doc, "div", { class: "wide-table", tabindex: "0", role: "region", "aria-label": en.modes.caption }, table),
    );
    const rows: Row[] = [];
    return (state) => {
      if (!head.firstChild) {
        table.classList.toggle("is-brief", state.brief);
        const titles = [en.modes.name, en.modes.head, en.modes.throttle, ...columns(state).map(([, title]) => title)];
        head.append(...titles.map((title) => el(doc, "th", { scope: "col" }, title)));
      }
      const wanted = state.figures.machine.modes.length;
      while (rows.length < wanted) {
        const row = rowFor(host, bench, rows.length, state);
        rows.push(row);
        body.append(row.element);
      }
      while (rows.length > wanted) rows.pop()?.element.remove();
      for (const row of rows) row.update(state);
    };
  },
};
