/** What the picture of the power says: its rows, its sentence and the table behind it, from an operating point. */
import type { RotorPower, SteadyLoad } from "#figures/asked";
import type { Figures } from "#figures/figures";
import { type BoardHeat, ceilingIn, lastsFor, type Operating, operatingOf } from "#figures/operating";
import { notOperatingWords } from "#figures/operating-words";
import { rpm } from "#model/constants";
import { formatModelled, formatNumber, formatValue } from "#view/format";
import { enFlow as en } from "#view/words/en-flow";

type PartName = keyof BoardHeat | keyof RotorPower;
export type GroupName = "heat" | "air" | "gain";

/** The parts in the order in which they leave the stream, by where they go. */
export const groups = {
  heat: ["pack", "lead", "controller", "copper", "noLoad", "gears"],
  air: ["profile", "induced", "tail", "airframe"],
  gain: ["raising"],
} as const satisfies Readonly<Record<GroupName, readonly PartName[]>>;

export const groupNames = ["heat", "air", "gain"] as const satisfies readonly GroupName[];

/** One load of one mode, of the machine and of the what-if. */
export interface FlowState {
  readonly figures: Figures;
  readonly whatIf: Figures | null;
  readonly load: SteadyLoad;
  readonly mode: number;
}

/** Power of a part, W; nothing below nothing is drawn. */
export const wattsOf = ({ balance }: Operating, part: PartName): number =>
  Math.max(0, { ...balance.heat, ...balance.rotors }[part]);

const watts = (value: number): string => formatValue(value, "W", { decimals: value < 10 ? 1 : 0 });
const hundredth = (value: number, all: number): string => formatNumber((100 * value) / all, 0);
const percent = (share: number): string => formatValue(100 * share, "percent", { decimals: 0 });

/** Power as it stands beside its part; a dash where there is none. */
export const wattsText = (value: number): string => (value < 0.005 ? en.nothing : watts(value));

/** Share of the whole as it stands beside its part. */
export const shareText = (value: number, all: number): string =>
  value < 0.005 ? "" : formatValue((100 * value) / all, "percent", { decimals: value < 0.1 * all ? 1 : 0 });

/** The sum of a group, W. */
export const groupSum = (found: Operating, group: GroupName): number =>
  groups[group].reduce((sum, part) => sum + wattsOf(found, part), 0);

/** The figure that surprises most, as the first sentence. */
function first(found: Operating, { figures, load, mode }: FlowState): string {
  const { source, rotors } = found.balance;
  const of100 = (value: number) => hundredth(value, source);
  const other = (name: SteadyLoad): Operating | null => {
    const there = operatingOf(figures.rig, name, mode);
    return there.ok ? there : null;
  };
  switch (load) {
    case "hover":
      return en.first.hover(of100(rotors.induced));
    case "flat": {
      const hover = other("hover");
      if (!hover) return en.first.flatAlone(watts(source));
      return en.first.flat(watts(source), percent(source / hover.balance.source));
    }
    case "full-pitch": {
      const hover = other("hover");
      if (!hover) return en.first.fullPitchAlone(watts(source));
      const times = formatNumber(source / hover.balance.source, 1);
      return en.first.fullPitch(times, formatNumber(found.asked.thrust / hover.asked.thrust, 1));
    }
    case "climb": {
      const before = other("full-pitch");
      const raised = en.first.climb(of100(rotors.raising), formatValue(found.asked.climb, "m/s"));
      return before ? `${raised} ${en.first.less(watts(source), watts(before.balance.source))}` : raised;
    }
    case "forward": {
      const speed = formatValue(found.asked.airspeed, "m/s", { decimals: 0 });
      return en.first.forward(speed, of100(rotors.airframe), of100(rotors.induced));
    }
  }
}

function board(found: Operating): string {
  const { source } = found.balance;
  const heat = groupSum(found, "heat");
  const [most] = [...groups.heat].sort((a, b) => wattsOf(found, b) - wattsOf(found, a)) as [keyof BoardHeat];
  return en.board(watts(heat), percent(heat / source), en.most[most], watts(wattsOf(found, most)));
}

/** The same load of the what-if; null where there is none. */
export const flowOther = ({ whatIf, load, mode }: FlowState) =>
  whatIf && operatingOf(whatIf.rig, load, Math.min(mode, whatIf.machine.modes.length - 1));

/** All that the picture says, in whole sentences; the first is the main thing. */
export function flowWords(state: FlowState): string {
  const { figures, load, mode } = state;
  const found = operatingOf(figures.rig, load, mode);
  const other = flowOther(state);
  const more = other ? [other.ok ? en.whatIf(watts(other.balance.source)) : en.whatIfNone] : [];
  if (!found.ok) return [notOperatingWords(found), ...more].join(" ");
  const { packCurrent, motorCurrent, duty } = found.point;
  const amperes = (value: number) => formatValue(value, "A", { decimals: 1 });
  const draws = en.draws(watts(found.balance.source), amperes(packCurrent), amperes(motorCurrent), percent(duty));
  const tail = found.asked.tailHolds ? [] : [en.tail];
  return [first(found, state), board(found), draws, ...tail, ...more].join(" ");
}

/** The table behind the picture: each row its title, now, of 100 W, what if. */
export function flowTable(state: FlowState): readonly (readonly string[])[] {
  const { rows, none } = en.table;
  const { figures, whatIf, load, mode } = state;
  const whatIfMode = Math.min(mode, (whatIf?.machine.modes.length ?? 1) - 1);
  const both = [
    { rig: figures.rig, found: operatingOf(figures.rig, load, mode), mode },
    ...(whatIf ? [{ rig: whatIf.rig, found: operatingOf(whatIf.rig, load, whatIfMode), mode: whatIfMode }] : []),
  ];
  const [now] = both;
  const row = (title: string, text: (found: Operating, which: (typeof both)[number]) => string, share = "") => {
    const cell = (which: (typeof both)[number] | undefined) =>
      which === undefined ? "" : which.found.ok ? text(which.found, which) : none;
    return [title, cell(both[0]), share, cell(both[1])];
  };
  const power = (title: string, of: (found: Operating) => number) =>
    row(
      title,
      (found) => wattsText(of(found)),
      now?.found.ok ? shareText(of(now.found), now.found.balance.source).replace(/.%$/, "") : "",
    );
  const share = (value: number | null) =>
    value === null ? none : formatValue(100 * value, "percent", { decimals: 1 });
  return [
    power(rows.source, ({ balance }) => balance.source),
    ...groups.heat.map((part) => power(en.parts[part], (found) => wattsOf(found, part))),
    power(rows.shaft, ({ balance }) => balance.shaft),
    ...[...groups.air, ...groups.gain].map((part) => power(en.parts[part], (found) => wattsOf(found, part))),
    row(rows.packCurrent, ({ point }) => formatValue(point.packCurrent, "A")),
    row(rows.motorCurrent, ({ point }) => formatValue(point.motorCurrent, "A")),
    row(rows.packVoltage, ({ point }) => formatValue(point.packVoltage, "V")),
    row(rows.duty, ({ point }) => share(point.duty)),
    row(rows.ceiling, (_, { rig, mode: at }) => {
      const ceiling = ceilingIn(rig, load, at);
      return ceiling.ok ? formatModelled(ceiling.speed / rpm) : none;
    }),
    row(rows.lasts, (found, { rig }) => {
      const time = lastsFor(rig, found);
      return time === null ? none : formatValue(time / 60, "min");
    }),
    row(rows.thrust, ({ asked }) => formatValue(asked.thrust, "N", { decimals: 1 })),
    row(rows.chain, ({ efficiencies }) => share(efficiencies.chain)),
    row(rows.motor, ({ efficiencies }) => share(efficiencies.motor)),
    row(rows.merit, ({ efficiencies }) => share(efficiencies.merit)),
  ];
}

/** Of 100 W out of the cells, those that push air down in a hover; null when there is no hover. */
export function hoverShare({ rig }: Figures, mode: number): number | null {
  const found = operatingOf(rig, "hover", mode);
  return found.ok ? (100 * wattsOf(found, "induced")) / found.balance.source : null;
}
