/** Two pairs of gears side by side, as they are fitted and as the what-if has them: what the choice gives and what it costs. */
import { contactWith } from "#figures/contact";
import type { Figures } from "#figures/figures";
import { type Gearing, type GearQuantity, gearingBy, gearQuantities, gearUnits, type Heats } from "#figures/gearing";
import { modeName } from "#figures/mode-name";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enGearMap as en } from "#view/words/en-gear-map";
import { type FactsRow, type FactsState, factsTable } from "./facts-table.ts";

interface Side {
  readonly figures: Figures;
  readonly mode: number;
  readonly gearing: Gearing;
}

function sideOf(figures: Figures, wanted: number): Side {
  // The what-if may have fewer modes.
  const mode = Math.min(wanted, figures.machine.modes.length - 1);
  return { figures, mode, gearing: gearingBy(figures, mode, figures.rig.parts.gears) };
}

const pairOf = ({ figures: { machine } }: Side): string => en.pair(machine.gears.pinionTeeth, machine.gears.mainTeeth);

function row(
  title: string,
  sides: readonly Side[],
  value: (side: Side) => number | null,
  unit: string,
  decimals?: number,
): FactsRow {
  const options = decimals === undefined ? {} : { decimals };
  const values = sides.map(value);
  const [a = null, b = null] = values;
  const told = values.map((each) => formatValue(each, unit, { none: en.cannot, ...options }));
  const gap = a === null || b === null ? null : b - a;
  const difference = formatValue(gap, unit, { none: en.nothing, signed: true, ...options });
  return { title, cells: sides.length > 1 ? [...told, difference] : told };
}

const digits = (quantity: GearQuantity): number | undefined =>
  quantity === "throttle" || quantity === "tip" ? 0 : undefined;

function wordsOf([now, other]: readonly Side[]): string {
  if (!now || !other) return en.compare.waiting;
  const gap = (quantity: GearQuantity) => {
    const [a, b] = [now.gearing.number(quantity), other.gearing.number(quantity)];
    return a === null || b === null ? null : b - a;
  };
  const told = (quantity: GearQuantity) => {
    const difference = gap(quantity);
    return difference === null ? null : formatValue(difference, gearUnits[quantity], { signed: true });
  };
  const parts = (["speed", "current", "full-heat", "duration"] as const).flatMap((quantity) => {
    const text = told(quantity);
    return text === null ? [] : [en.compare.gap[quantity](text)];
  });
  return parts.length === 0 ? en.compare.apart(pairOf(other)) : en.compare.sum(pairOf(other), parts);
}

/** The pair that is fitted beside that of the what-if. Throttles are those after learning again, with either pair. */
export function compareGears(figures: Figures, whatIf: Figures | null, mode = 0): Shown<FactsState> {
  const sides = [figures, ...(whatIf ? [whatIf] : [])].map((each) => sideOf(each, mode));
  const { rows } = en.compare;
  const motorSpeed = ({ figures: { rig }, mode: place }: Side) =>
    ((rig.parts.modes[place]?.headSpeed ?? 0) * rig.ratio * 30) / Math.PI;
  const held: FactsRow = {
    title: rows.held,
    cells: [...sides.map(({ gearing }) => en.compare.held[gearing.held]), ...(sides.length > 1 ? [""] : [])],
  };
  return factsTable({
    name: "gear-compare",
    own: 0,
    caption: en.compare.caption(modeName(figures.machine, mode)),
    columns: ["", ...sides.map(pairOf), ...(sides.length > 1 ? [en.compare.difference] : [])],
    rows: [
      row(en.columns.ratio, sides, ({ gearing }) => gearing.ratio, "", 2),
      held,
      ...gearQuantities.map((quantity) =>
        row(
          en.quantities[quantity].row,
          sides,
          ({ gearing }) => gearing.number(quantity),
          gearUnits[quantity],
          digits(quantity),
        ),
      ),
      row(rows.motor, sides, motorSpeed, "rpm"),
      row(rows.contact, sides, (side) => contactWith(side.figures, side.figures.machine.gears.pinionTeeth), "", 2),
    ],
    words: wordsOf(sides),
  });
}

/** What teeth more on the pinion change at one held head speed: the answer to a question of the page. */
export interface TeethMore {
  /** What gets warmer in hover. */
  readonly right: "both" | "controller" | "motor" | "neither";
  readonly words: string;
  /** The same at full pitch, in words. */
  readonly fullWords: string;
  /** Whether motor and controller together get cooler, in hover and at full pitch; null where there is nothing to compare. */
  readonly hoverCooler: boolean | null;
  readonly fullCooler: boolean | null;
}

/** What gets warmer with so many teeth more on the pinion, at the mode's head speed: in hover, and at full pitch. */
export function teethMore(figures: Figures, mode: number, teeth: number): TeethMore {
  const { gears } = figures.rig.parts;
  const [now, then] = [0, teeth].map((more) =>
    gearingBy(figures, mode, { ...gears, pinionTeeth: gears.pinionTeeth + more }),
  );
  const [a, b] = [now?.heats("hover"), then?.heats("hover")];
  const [c, d] = [now?.heats("full-pitch"), then?.heats("full-pitch")];
  const fullWords = c && d ? en.compare.heatFull(...heatTexts(c, d)) : en.compare.heatNone;
  const cooler = (was?: Heats | null, is?: Heats | null) =>
    was && is ? is.motor + is.controller < was.motor + was.controller : null;
  const [hoverCooler, fullCooler] = [cooler(a, b), cooler(c, d)] as const;
  if (!a || !b) return { right: "neither", words: en.compare.heatNone, fullWords, hoverCooler, fullCooler };
  const [motor, controller] = [b.motor > a.motor, b.controller > a.controller];
  return {
    right: motor ? (controller ? "both" : "motor") : controller ? "controller" : "neither",
    words: en.compare.heat(...heatTexts(a, b)),
    fullWords,
    hoverCooler,
    fullCooler,
  };
}

const watts = (value: number): string => `${formatNumber(value, value < 10 ? 2 : value < 100 ? 1 : 0)}\u00a0W`;

const heatTexts = (a: Heats, b: Heats): [string, string, string, string] => [
  watts(a.motor),
  watts(b.motor),
  watts(a.controller),
  watts(b.controller),
];
