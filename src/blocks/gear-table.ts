/** The table behind the map of gears: the pairs that fit, with all their figures. Filled when it is opened. */
import { gearingBy, gearQuantities, gearUnits } from "#figures/gearing";
import { el, setText } from "#view/dom";
import { formatNumber, unitText } from "#view/format";
import { enGearMap as en } from "#view/words/en-gear-map";
import type { GearMapState, MapCell } from "./gear-map.ts";
import { sayGear } from "./gear-says.ts";

const titles = (): string[] => [
  `${en.pinion} on ${en.main}`,
  en.columns.ratio,
  en.columns.moves,
  ...gearQuantities.map((quantity) => `${en.quantities[quantity].pick}, ${unitText(gearUnits[quantity])}`),
  en.columns.stands,
];

function rowOf({ figures, mode }: GearMapState, cell: MapCell): string[] {
  const { pinionTeeth, mainTeeth } = cell;
  const gearing = gearingBy(figures, mode, { ...figures.rig.parts.gears, pinionTeeth, mainTeeth });
  return [
    en.pair(pinionTeeth, mainTeeth),
    formatNumber(cell.ratio, 3),
    formatNumber(cell.shiftMm, 2, true),
    // The unit stands in the heading.
    ...gearQuantities.map((quantity) => sayGear(quantity, gearing.number(quantity)).replace(/\u00a0.*$/, "")),
    cell.mark === null ? en.nothing : en.marks[cell.mark].says,
  ];
}

/** The closed table. The function that comes back brings it to a state; closed, it costs nothing. */
export function gearTable(doc: Document): { element: HTMLElement; put(state: GearMapState): void } {
  const body = el(doc, "tbody");
  const head = el(doc, "tr", {}, ...titles().map((title) => el(doc, "th", { scope: "col" }, title)));
  const table = el(doc, "table", {}, el(doc, "thead", {}, head), body);
  const scroller = el(
    doc,
    "div",
    { class: "plot-table", tabindex: "0", role: "region", "aria-label": en.table },
    table,
  );
  const details = el(doc, "details", {}, el(doc, "summary", {}, en.table), scroller);
  let state: GearMapState | null = null;
  let rows: Element[][] = [];
  function fill(): void {
    if (!state || !details.open) return;
    const now = state;
    const texts = now.cells.filter((cell) => cell.fits).map((cell) => rowOf(now, cell));
    if (texts.length !== rows.length) {
      rows = texts.map((row) => row.map((_, i) => (i === 0 ? el(doc, "th", { scope: "row" }) : el(doc, "td"))));
      body.replaceChildren(...rows.map((cells) => el(doc, "tr", {}, ...cells)));
    }
    texts.forEach((row, r) => {
      row.forEach((text, c) => {
        setText(rows[r]?.[c] as Element, text);
      });
    });
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
