/** The lanes of a flight: one plot below the other against one time axis. From results to plot states and their places; pure. */
import type { FlightResult } from "#flights/flight";
import { type LaneName, lanes, lineOf } from "#flights/lanes";
import type { Span as Stretch } from "#model/flight/watch";
import { type Scale, type Span, scaleOf, spanOf, ticksOf } from "#plots/axis";
import { LINE, spread, textWidth } from "#plots/labels";
import { BASELINE, type Layout } from "#plots/layout";
import { extent } from "#plots/path";
import type { Axis, Curve, Level, PlotState, Zone } from "#plots/state";
import { formatValue, unitText } from "#view/format";
import { enFlights as en } from "#view/words/en-flights";
import { timeOf } from "./flight-curve.ts";
import type { FlightState } from "./flight-state.ts";

/** Longer flights than this have their time in minutes, s. */
const MINUTES_FROM = 150;
const FIRST = 170;
const OTHER = 78;
const ABOVE = 26;
const BETWEEN = 42;
const BELOW = 44;
const WIDE = 540;
/** Hatched stretches of full duty: no more than these, and none shorter than this share of the flight. */
const STRETCHES = 40;

/** Seconds for one unit of the time axis. */
export const timeUnit = (seconds: number): number => (seconds > MINUTES_FROM ? 60 : 1);

/** A time (s) in words. */
export const timeText = (time: number, seconds: number): string =>
  timeUnit(seconds) === 60
    ? formatValue(time / 60, "min", { decimals: 2 })
    : formatValue(time, "s", { decimals: seconds > 20 ? 1 : 2 });

/** What is drawn beside the runs: an earlier run that was pinned, and what the reader draws. */
export interface Beside {
  readonly pinned: FlightResult | null;
  readonly draft: readonly number[] | null;
}

function yAxis(state: FlightState, name: LaneName, asked: readonly number[], results: readonly FlightResult[]): Axis {
  const { drawing } = state;
  const label = en.lanes[name];
  const { unit } = lanes[name];
  if (name === "duty") {
    const lowest = Math.min(...results.map((result) => (result.ok ? Math.min(...result.trace.duty) : 1)));
    return lowest < 0.5
      ? { label, unit, low: 0, high: 126, exact: true, ticks: [0, 50, 100] }
      : { label, unit, low: 50, high: 113, exact: true, ticks: [50, 75, 100] };
  }
  if (name === "charge") return { label, unit, low: 0, high: 100, exact: true, ticks: [0, 50, 100] };
  // Once it is flown without a guess, the flight alone sets the scale.
  if (drawing?.what === name && (drawing.what === "collective" || drawing.drawn || !state.go)) {
    return { label, unit, low: drawing.low, high: drawing.high };
  }
  if (name === "head-speed" && asked.length > 0) {
    return { label, unit, low: 0.96 * Math.min(...asked), high: 1.02 * Math.max(...asked) };
  }
  if (name === "collective") return { label, unit, low: 0, high: 10 };
  return { label, unit };
}

/** Stretches of full duty of the first run, hatched across the head speed; the longest one bears the words. */
function fullDuty(result: FlightResult | undefined, seconds: number): Zone[] {
  if (!result?.ok) return [];
  const unit = timeUnit(seconds);
  const near = seconds / 200;
  const joined: { from: number; to: number }[] = [];
  for (const span of result.spans.filter((s: Stretch) => s.kind === "duty-at-limit")) {
    const last = joined.at(-1);
    if (last && span.from - last.to < near) last.to = span.to;
    else joined.push({ from: span.from, to: span.to });
  }
  const shown = joined.filter((span) => span.to - span.from > seconds / 500).slice(0, STRETCHES);
  const longest = Math.max(0, ...shown.map((span) => span.to - span.from));
  return shown.map((span, i) => ({
    key: `full-duty-${i}`,
    words: span.to - span.from === longest && longest > seconds / 12 ? en.fullDuty : "",
    x: [span.from / unit, span.to / unit] as const,
  }));
}

function curvesOf(
  state: FlightState,
  name: LaneName,
  results: readonly FlightResult[],
  beside: Beside,
  width: number,
  first: boolean,
): Curve[] {
  const unit = timeUnit(state.seconds);
  const curves: Curve[] = [];
  const add = (key: string, label: string, ink: Curve["ink"], result: FlightResult | null | undefined) => {
    if (!result?.ok) return;
    const { times, values } = lineOf(result.trace, name, width);
    if (unit !== 1) for (let i = 0; i < times.length; i++) times[i] = times[i]! / unit;
    curves.push({
      key,
      label: first && (state.runs.length > 1 || ink !== "now") ? label : "",
      ink,
      xs: times,
      ys: values,
    });
  };
  add("pinned", en.runs.pinned, "pinned-now", beside.pinned);
  // The last comes first, so that the reader's machine lies on top.
  for (let i = state.runs.length - 1; i >= 0; i--) {
    const run = state.runs[i]!;
    const same = i > 0 && run.request.machine === state.runs[0]!.request.machine;
    if (name === "collective" && same) continue;
    add(run.key, run.label, run.ink, results[i]);
  }
  const { drawing } = state;
  if (drawing?.what === name && beside.draft) {
    const xs = beside.draft.map((_, i) => timeOf(i, state.seconds) / unit);
    const label = name === "head-speed" ? en.guess : en.hand;
    curves.push({ key: "drawn", label: first ? label : "", ink: "pencil", xs, ys: beside.draft });
  }
  return curves;
}

/** The plot states of all lanes, from the top. */
export function laneStates(
  state: FlightState,
  results: readonly FlightResult[],
  beside: Beside,
  width: number,
): PlotState[] {
  const unit = timeUnit(state.seconds);
  const asked = [
    ...new Set(
      state.runs.map(({ request: { machine, mode, headRpm } }) => headRpm ?? machine.modes[mode]?.headRpm ?? 0),
    ),
  ];
  return state.lanes.map((name, i): PlotState => {
    const last = i === state.lanes.length - 1;
    const governed = name === "head-speed" && state.runs[0]?.request.scenario.kind !== "learning";
    const levels: Level[] = governed
      ? asked.map((at, k) => ({
          key: `set-${k}`,
          axis: "y" as const,
          at,
          label: k === 0 ? en.asked : "",
          ink: "plain" as const,
        }))
      : [];
    const zones: Zone[] =
      name === "duty"
        ? [{ key: "limit", words: en.nothingMore, y: [100, null] }]
        : name === "charge"
          ? [{ key: "reserve", words: en.reserve, y: [null, 20] }]
          : name === "head-speed"
            ? fullDuty(results[0], state.seconds)
            : [];
    return {
      name,
      title: en.lanes[name],
      unit: unitText(lanes[name].unit),
      x: {
        label: last ? en.time : "",
        unit: last ? (unit === 60 ? "min" : "s") : "",
        low: 0,
        high: state.seconds / unit,
        exact: true,
      },
      y: yAxis(state, name, governed ? asked : [], results),
      curves: curvesOf(state, name, results, beside, width, i === 0),
      levels,
      zones,
      words: "",
    };
  });
}

/** What the lanes remember, so that no axis jumps. */
export type LaneMemory = Map<string, Span>;

/** Height of all lanes together, px: the style sheet keeps as much free. */
export const heightOf = (count: number): number => ABOVE + FIRST + (count - 1) * (BETWEEN + OTHER) + BELOW;

function endLabels(plot: PlotState, y: Scale, right: number, top: number, bottom: number, inside: boolean) {
  const wanted: { middle: number; height: number }[] = [];
  const at = (text: string, value: number | null | undefined): number => {
    if (text === "" || value === null || value === undefined) return -1;
    const middle = Math.min(bottom, Math.max(top, y(value))) + (inside ? -13 : 0);
    return wanted.push({ middle, height: LINE }) - 1;
  };
  const curveAt = plot.curves.map((curve) => at(curve.label, curve.ys[curve.ys.length - 1]));
  const levelAt = (plot.levels ?? []).map((level) => at(level.label, level.at));
  const middles = spread(wanted, top + 4, bottom - 6);
  const put = (text: string, i: number) => ({
    lines: i < 0 ? [] : [text],
    x: inside ? right - 2 : right + 13,
    y: (middles[i] ?? 0) + BASELINE,
    anchor: inside ? ("end" as const) : ("start" as const),
  });
  return {
    curveLabels: plot.curves.map((curve, i) => put(curve.label, curveAt[i]!)),
    levelLabels: (plot.levels ?? []).map((level, i) => put(level.label, levelAt[i]!)),
  };
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
    return {
      box,
      left,
      right,
      top,
      bottom,
      x,
      y,
      xTicks,
      yTicks,
      ...endLabels(plot, y, right, top, bottom, inside),
    };
  });
}
