/** Other cells and the Kv to match at one head speed: what changes nothing, and what does change. */
import { rewoundFor, withCells } from "#figures/curves-pack";
import { type Figures, figuresOf } from "#figures/figures";
import type { LoadName } from "#figures/rig";
import { plot } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { formatModelled, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enPack } from "#view/words/en-pack";
import { type FactsState, factsTable } from "./facts-table.ts";

const percent = (value: number) => formatValue(value, "percent", { decimals: 0 });
const watts = (value: number | null) => formatValue(value, "W", { none: enPack.cellTable.none });

/** The heaviest load of a mode that can be held: full pitch, or hover; null for neither. */
function heaviest(figures: Figures, mode: number): LoadName | null {
  return (["full-pitch", "hover"] as const).find((load) => figures.bearings.point(load, mode) !== null) ?? null;
}

const [FEWEST_CELLS, MOST_CELLS] = [2, 14];

/** Heat between pack and rotor at the same head speed, over the cells, with a motor wound for each. */
export function cellsPlot(figures: Figures, other: number, mode = 0): Shown<PlotState> {
  const en = enPack.cells;
  const { cells } = figures.machine.pack;
  const load = heaviest(figures, mode);
  const counts = Array.from({ length: Math.max(MOST_CELLS, cells, other) - 1 }, (_, i) => i + FEWEST_CELLS);
  const choices = load === null ? [] : counts.map((count) => withCells(figures, count, load, mode));
  const now = load === null ? null : withCells(figures, cells, load, mode);
  const then = load === null ? null : withCells(figures, other, load, mode);
  const ys = choices.map(({ heat }) => heat);
  const bare = choices.map(({ heat, wiring }) => (heat === null || wiring === null ? null : heat - wiring));
  let words: string = en.none;
  if (load !== null && now && now.heat !== null && now.wiring !== null) {
    const share = percent(now.heat > 0 ? (100 * now.wiring) / now.heat : 0);
    const beside = then && then.heat !== null && other !== cells ? ` ${en.other(other, watts(then.heat))}` : "";
    words = `${en.words(watts(now.heat), cells, load === "hover" ? en.hover : en.full)} ${en.wiring(share)}${beside} ${en.flat}`;
  }
  const points = [now, then].flatMap((choice, i) =>
    choice && choice.heat !== null && (i === 0 || other !== cells)
      ? [
          {
            key: i === 0 ? "now" : "other",
            x: choice.cells,
            y: choice.heat,
            kind: i === 0 ? ("now" as const) : ("place" as const),
            label: en.point(choice.cells),
          },
        ]
      : [],
  );
  return plot({
    name: "heat-by-cells",
    title: en.title,
    unit: "W",
    x: { label: en.x, unit: "", ticks: counts, low: FEWEST_CELLS, high: counts.at(-1) ?? MOST_CELLS },
    y: { label: en.y, unit: "W", low: 0, high: 1.4 * (now?.heat ?? 1) },
    curves: [
      { key: "all", label: en.all, ink: "now", xs: counts.slice(0, ys.length), ys, dots: true },
      { key: "bare", label: en.bare, ink: "plain", xs: counts.slice(0, bare.length), ys: bare },
    ],
    points,
    words,
    size: "short",
  });
}

/** The machine beside itself with other cells and the Kv to match, at a mode's set speed. */
export function cellsTable(figures: Figures, other: number, mode = 0): Shown<FactsState> {
  const en = enPack.cellTable;
  const load = heaviest(figures, mode) ?? "hover";
  const { cells } = figures.machine.pack;
  const sides = [cells, other].map((count) => {
    const machine = rewoundFor(figures.machine, count);
    const { current, heat, wiring } = withCells(figures, count, load, mode);
    return {
      kv: formatValue(machine.motor.kvRpmPerVolt, "rpm/V"),
      current: formatValue(current, "A", { none: en.none }),
      bare: watts(heat === null || wiring === null ? null : heat - wiring),
      wiring: watts(wiring),
      ceiling: formatModelled(figuresOf(machine).number("ceiling-full-pitch", mode), { none: en.none }),
    };
  });
  return factsTable({
    name: "other-cells",
    own: 0,
    caption: en.caption,
    columns: [en.figure, en.now(cells), en.other(other)],
    rows: (["kv", "current", "bare", "wiring", "ceiling"] as const).map((key) => ({
      title: en[key],
      cells: sides.map((side) => side[key]),
    })),
    words: en.words,
  });
}
