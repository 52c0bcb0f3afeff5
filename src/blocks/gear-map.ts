/** The map of gears: every pinion and main gear around those fitted, one figure in each cell; choosing one starts a what-if. */
import type { Figures } from "#figures/figures";
import { type GearCell, gearMap } from "#figures/gear-map";
import { type GearQuantity, gearQuantities, gearUnits } from "#figures/gearing";
import { modeName } from "#figures/mode-name";
import type { Answers } from "#view/answers";
import { formatNumber } from "#view/format";
import { type Shown, show } from "#view/shown";
import { enGearMap as en } from "#view/words/en-gear-map";
import { gearMapView } from "./gear-map-view.ts";
import { sayGear } from "./gear-says.ts";
import { pick, picked } from "./pick.ts";

/** Steps of the shading. */
const LEVELS = 6;

/** A pair of gears as it stands on the map. */
export interface MapCell extends GearCell {
  readonly text: string;
  /** The short word for what stands against it; empty where nothing does. */
  readonly tag: string;
  /** 0 to 6: where its value lies between the lowest and the highest on the map; null: none. */
  readonly level: number | null;
  /** The value with its unit. */
  readonly says: string;
}

export interface GearMapState {
  readonly quantity: GearQuantity;
  readonly title: string;
  readonly unit: string;
  readonly pinions: readonly number[];
  readonly mains: readonly number[];
  readonly cells: readonly MapCell[];
  readonly fitted: readonly [number, number];
  readonly whatIf: readonly [number, number] | null;
  readonly summary: string;
  /** Where the table behind gets its figures. */
  readonly figures: Figures;
  readonly mode: number;
}

const ID = "gear-map-shows";

/** Which figure the map shows. */
export const gearQuantity = (answers: Answers): GearQuantity =>
  picked(answers, ID, gearQuantities as unknown as [GearQuantity, ...GearQuantity[]]);

/** The row of figures to choose from. */
export const gearQuantityPick = (answers: Answers): ReturnType<typeof pick> =>
  pick({
    id: ID,
    label: en.pick,
    options: gearQuantities.map((key) => ({ key, says: en.quantities[key].pick })),
    answers,
  });

/** Hover times and currents below 100 have a decimal in them; all else is told in whole units. */
function decimalsOf(quantity: GearQuantity, most: number): number {
  if (quantity === "duration") return 1;
  return (quantity === "current" || quantity.endsWith("heat")) && most < 20 ? 1 : 0;
}

function summaryOf(cells: readonly MapCell[], [pinion, main]: readonly [number, number], quantity: GearQuantity) {
  const own = cells.find((cell) => cell.pinionTeeth === pinion && cell.mainTeeth === main);
  const now = en.sumNow(en.pair(pinion, main), own?.says ?? en.cannot);
  const fitting = cells.filter((cell) => cell.fits);
  const { best, named } = en.quantities[quantity];
  const sign = best === "highest" ? 1 : -1;
  let top: MapCell | null = null;
  for (const cell of fitting) {
    if (cell.value === null || cell.mark === "no-hover") continue;
    if (!top || sign * (cell.value - (top.value ?? 0)) > 1e-9) top = cell;
  }
  const found = top
    ? en.sum(now, fitting.length, en.pair(top.pinionTeeth, top.mainTeeth), named, top.says)
    : en.none(now);
  const troubles = Object.entries(en.marks).flatMap(([mark, { says }]) => {
    const count = fitting.filter((cell) => cell.mark === mark).length;
    return count === 0 ? [] : [en.trouble(count, says)];
  });
  return [found, ...troubles].join(" ");
}

/** A figure of a mode for every pair of gears around those fitted; `travelMm` is how far the motor slides each way. */
export function gearChoiceMap(
  figures: Figures,
  whatIf: Figures | null,
  mode: number,
  quantity: GearQuantity,
  travelMm: number,
): Shown<GearMapState> {
  const { pinions, mains, cells } = gearMap(figures, mode, quantity, travelMm);
  const values = cells.flatMap(({ value }) => (value === null ? [] : [value]));
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const decimals = decimalsOf(quantity, high);
  const level = (value: number | null) =>
    value === null ? null : high > low ? Math.round((LEVELS * (value - low)) / (high - low)) : LEVELS / 2;
  const told = cells.map(
    (cell): MapCell => ({
      ...cell,
      text: cell.value === null ? en.nothing : formatNumber(cell.value, decimals, quantity === "room"),
      tag: cell.mark === null ? "" : en.marks[cell.mark].tag,
      level: level(cell.value),
      says: sayGear(quantity, cell.value),
    }),
  );
  const { gears } = figures.machine;
  const fitted = [gears.pinionTeeth, gears.mainTeeth] as const;
  const other = whatIf?.machine.gears;
  return show<GearMapState>(gearMapView, {
    quantity,
    title: en.quantities[quantity].title(modeName(figures.machine, mode)),
    unit: gearUnits[quantity],
    pinions,
    mains,
    cells: told,
    fitted,
    whatIf: other ? [other.pinionTeeth, other.mainTeeth] : null,
    summary: summaryOf(told, fitted, quantity),
    figures,
    mode,
  });
}
