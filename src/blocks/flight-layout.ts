/** Where the lanes of a flight stand: one below the other, with one scale of time. Pure. Heights belong with those in flight.css. */
import { type Span, scaleOf, spanOf, ticksOf } from "#plots/axis";
import { type Area, around, clearSpot, LINE, spread, textWidth } from "#plots/labels";
import { BASELINE, type EndLabel, type Layout, takenBy } from "#plots/layout";
import { extent } from "#plots/path";
import type { PlotState } from "#plots/state";
import { enFlights as en } from "#view/words/en-flights";

/** Heights of the first lane, of the others, and of what lies above, between and below them, px; and what counts as wide. */
const FIRST = 170;
const OTHER = 78;
const ABOVE = 26;
const BETWEEN = 42;
const BELOW = 44;
const WIDE = 540;

/** A drawing has this width until the page has told the real one, px. */
export const FIRST_WIDTH = 640;

/** What the lanes remember, so that no axis jumps. */
export type LaneMemory = Map<string, Span>;

/** Height of all lanes together, px: the style sheet keeps as much free. */
export const heightOf = (count: number): number => ABOVE + FIRST + (count - 1) * (BETWEEN + OTHER) + BELOW;

type Frame = Pick<Layout, "x" | "y" | "left" | "right" | "top" | "bottom">;

const nowhere: EndLabel = { lines: [], x: 0, y: 0, anchor: "start" };

/** Words at the ends of their lines, beside the lanes. */
function besideLabels(plot: PlotState, { y, right, top, bottom }: Frame) {
  const wanted: { middle: number; height: number }[] = [];
  const at = (text: string, value: number | null | undefined): number => {
    if (text === "" || value === null || value === undefined) return -1;
    return wanted.push({ middle: Math.min(bottom, Math.max(top, y(value))), height: LINE }) - 1;
  };
  const curveAt = plot.curves.map((curve) => at(curve.label, curve.ys[curve.ys.length - 1]));
  const levelAt = (plot.levels ?? []).map((level) => at(level.label, level.at));
  const middles = spread(wanted, top + 4, bottom - 6);
  const put = (text: string, i: number): EndLabel =>
    i < 0 ? nowhere : { lines: [text], x: right + 13, y: (middles[i] ?? 0) + BASELINE, anchor: "start" };
  return {
    curveLabels: plot.curves.map((curve, i) => put(curve.label, curveAt[i]!)),
    levelLabels: (plot.levels ?? []).map((level, i) => put(level.label, levelAt[i]!)),
  };
}

/** Half the thickness of a line that words keep clear of, px. */
const STROKE = 2;

/**
 * Words within a narrow lane, off its lines: those of a level along it, those of the curves together in a corner, from the
 * one that ends highest down.
 */
function insideLabels(plot: PlotState, { x, y, left, right, top, bottom }: Frame) {
  const frame = { left, right, top, bottom };
  const taken: Area[] = plot.curves.flatMap(({ xs, ys }) =>
    Array.from(xs, (at, k) => ({ at, value: ys[k] })).flatMap(({ at, value }) =>
      value === null || value === undefined ? [] : [around(x(at), y(value), STROKE)],
    ),
  );
  const sides = [
    { x: right - 2, anchor: "end" as const },
    { x: left + 4, anchor: "start" as const },
  ];
  const levelLabels = (plot.levels ?? []).map(({ label, at }): EndLabel => {
    if (label === "") return nowhere;
    const spots = [-7, 17].flatMap((by) => sides.map((side) => ({ ...side, y: y(at) + by })));
    return { lines: [label], ...clearSpot([label], spots, taken, frame) };
  });
  const ends = plot.curves.map(({ label, ys }, i) => ({ i, label, end: ys[ys.length - 1] ?? 0 }));
  const named = ends.filter(({ label }) => label !== "").sort((a, b) => b.end - a.end);
  const curveLabels = plot.curves.map(() => nowhere);
  if (named.length > 0) {
    const lines = named.map(({ label }) => label);
    const high = (named.length - 1) * (LINE - 1);
    const spots = [top + LINE - 2, bottom - high - 7].flatMap((first) => sides.map((side) => ({ ...side, y: first })));
    const spot = clearSpot(lines, spots, taken, frame);
    for (const [k, { i, label }] of named.entries())
      curveLabels[i] = { lines: [label], ...spot, y: spot.y + k * (LINE - 1) };
  }
  return { curveLabels, levelLabels };
}

/** Where the lanes go in a box so wide (px): all share left, right and the scale of time. */
export function laneLayouts(plots: readonly PlotState[], width: number, memory: LaneMemory, hold: boolean): Layout[] {
  const box = { width, height: heightOf(plots.length) };
  const rows = plots.map((plot, i) => {
    const top = i === 0 ? ABOVE : ABOVE + FIRST + BETWEEN + (i - 1) * (OTHER + BETWEEN);
    const bottom = top + (i === 0 ? FIRST : OTHER);
    const before = memory.get(plot.name) ?? null;
    const levels = (plot.levels ?? []).map((level) => level.at);
    const seen = extent(...plot.curves.map((curve) => curve.ys), levels);
    const span = hold && before ? before : spanOf(plot.y, before, seen);
    memory.set(plot.name, span);
    return { plot, top, bottom, span, yTicks: ticksOf(plot.y, span, bottom - top, i === 0 ? 28 : 26) };
  });
  const left = Math.max(34, ...rows.flatMap(({ yTicks }) => yTicks.map((tick) => textWidth(tick.text)))) + 8;
  const labels = rows.flatMap(({ plot }) =>
    [...plot.curves, ...(plot.levels ?? [])].map((each) => textWidth(each.label)),
  );
  // As much room as the widest words of a flight need, whether they stand there yet or not.
  const beside = Math.max(textWidth(en.asked), textWidth(en.guess), ...labels) + 13;
  const inside = width < WIDE;
  const right = width - (inside ? 10 : beside);
  return rows.map(({ plot, top, bottom, span, yTicks }, i) => {
    const x = scaleOf({ low: plot.x.low ?? 0, high: plot.x.high ?? 1 }, left, right);
    const y = scaleOf(span, bottom, top);
    const last = i === rows.length - 1;
    const xTicks = last
      ? ticksOf({ ...plot.x, label: "" }, { low: plot.x.low ?? 0, high: plot.x.high ?? 1 }, right - left, 48)
      : [];
    const frame = { x, y, left, right, top, bottom };
    const labels = (inside ? insideLabels : besideLabels)(plot, frame);
    const taken = takenBy(plot, { x, y, right, top, bottom }, [...labels.curveLabels, ...labels.levelLabels]);
    return { box, ...frame, xTicks, yTicks, ...labels, taken };
  });
}
