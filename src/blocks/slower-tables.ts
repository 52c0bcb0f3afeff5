/** What a slower rotor gains and what it costs, step by step; and what twice the head speed takes. */
import { longestHover } from "#figures/curves-hover";
import { powerAt } from "#figures/curves-power";
import { type Figures, figuresOf } from "#figures/figures";
import { withValue } from "#machine/paths";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enRotor as en } from "#view/words/en-rotor";
import { type FactsState, factsTable } from "./facts-table.ts";
import { longestWords } from "./hover-plots.ts";

/** How much slower the third and the last column ask for. */
const FIFTH = 0.8;
const BELOW = 0.85;

const LOWEST_RPM = 100;

/** The same machine with a mode at another head speed. */
const at = (figures: Figures, mode: number, headRpm: number): Figures =>
  figuresOf(withValue(figures.machine, `modes.${mode}.headRpm`, Math.max(LOWEST_RPM, Math.round(headRpm))));

/** A mode as it is, a fifth slower, at the longest hover and below it. */
export function slowerTable(figures: Figures, mode = 0): Shown<FactsState> {
  const { name = "", headRpm = LOWEST_RPM } = figures.machine.modes[mode] ?? {};
  const longest = longestHover(figures);
  const { here, fifth, longest: best, below } = en.slower.columns;
  const columns: [string, Figures][] = [
    [here, figures],
    [fifth, at(figures, mode, headRpm * FIFTH)],
    ...(longest
      ? (
          [
            [best, at(figures, mode, longest.speed)],
            [below, at(figures, mode, longest.speed * BELOW)],
          ] as const
        ).map(([title, each]): [string, Figures] => [title, each])
      : []),
  ];
  const none = en.slower.cannot;
  const row = (title: string, text: (each: Figures) => string, marked = false) => ({
    title,
    cells: columns.map(([, each]) => text(each)),
    marked,
  });
  const { rows } = en.slower;
  return factsTable({
    name: "slower",
    caption: en.slower.caption(name),
    columns: ["", ...columns.map(([title]) => title)],
    rows: [
      row(rows.speed, (each) => formatValue(each.number("set-head-speed", mode), "rpm")),
      row(rows.minutes, (each) => formatValue(each.number("hover-duration", mode), "min", { none }), true),
      row(rows.power, (each) => formatValue(each.number("hover-power", mode), "W", { none })),
      row(rows.pitch, (each) => formatValue(each.number("hover-collective", mode), "deg", { none })),
      row(rows.motor, (each) => formatValue(each.number("hover-motor-current", mode), "A", { none })),
    ],
    words: longestWords(figures),
  });
}

/** The answers to the questions of the page. */
export interface SlowerFacts {
  /** Hover time of a mode a fifth slower, min. */
  readonly fifthSlower: number | null;
  /** Power in hover at the mode's head speed over that at half of it. */
  readonly hoverTimes: number | null;
  /** The same for blades at flat pitch, and for full pitch. */
  readonly flatTimes: number | null;
  readonly fullTimes: number | null;
  /** `flatTimes` in words. */
  readonly flatWords: string;
  readonly twiceWords: string;
}

/** What a fifth slower and twice as fast come to for a mode. */
export function slowerFacts(figures: Figures, mode: number): SlowerFacts {
  const { headRpm = LOWEST_RPM } = figures.machine.modes[mode] ?? {};
  const [half, whole] = [powerAt(figures, mode, 0.5), powerAt(figures, mode, 1)];
  const times = (load: keyof typeof half): number | null => {
    const [a, b] = [half[load], whole[load]];
    return a === null || b === null || !(a > 0) ? null : b / a;
  };
  const [hoverTimes, flatTimes] = [times("hover"), times("flat")];
  const flat = flatTimes === null ? en.twice.many : en.twice.sometimes(formatNumber(flatTimes, 1));
  return {
    fifthSlower: at(figures, mode, headRpm * FIFTH).number("hover-duration", mode),
    hoverTimes,
    flatTimes,
    fullTimes: times("full"),
    flatWords: flat,
    twiceWords:
      hoverTimes === null
        ? `At one of the two speeds this machine can't hover at all, so there is no such figure. With flat pitch it would be ${flat} as much.`
        : `Carrying the weight takes no more than before, rather less. Turning the blades takes ${flat} as much.`,
  };
}

/** Power at half a mode's head speed and at the whole, for three loads. */
export function twiceTable(figures: Figures, mode = 0): Shown<FactsState> {
  const { name = "" } = figures.machine.modes[mode] ?? {};
  const [half, whole] = [powerAt(figures, mode, 0.5), powerAt(figures, mode, 1)];
  const none = en.twice.cannot;
  const { columns, rows } = en.twice;
  return factsTable({
    name: "twice",
    caption: en.twice.caption(name),
    columns: ["", columns.half, columns.whole, columns.times],
    rows: (["flat", "hover", "full"] as const).map((load) => {
      const [a, b] = [half[load], whole[load]];
      const times = a !== null && b !== null && a > 0 ? formatNumber(b / a, 1) : "–";
      return { title: rows[load], cells: [formatValue(a, "W", { none }), formatValue(b, "W", { none }), times] };
    }),
    words: "",
  });
}
