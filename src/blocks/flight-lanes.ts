/** The lanes of a flight: one plot below the other against one time axis. From results to plot states; pure. */
import { figuresOf } from "#figures/figures";
import type { FlightResult } from "#flights/flight";
import { type LaneName, lanes, lineOf } from "#flights/lanes";
import { packedAs } from "#flights/packs";
import type { Span as Stretch } from "#model/flight/watch";
import { inShownUnits } from "#plots/shown-units";
import type { Axis, Curve, Level, PlotState, Zone } from "#plots/state";
import { formatValue, unitText } from "#view/format";
import { enFlights as en } from "#view/words/en-flights";
import { timeOf } from "./flight-curve.ts";
import { endOf, type FlightState } from "./flight-state.ts";

/** Longer flights than this have their time in minutes, s. */
const MINUTES_FROM = 150;
/** A lane of volts reaches down to this share of the pack at rest. */
const VOLTS_BELOW = 0.95;
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

/** Volts of the first run's pack at rest. */
function restingVoltage({ runs: [run] }: FlightState): number {
  return run
    ? (figuresOf(packedAs(run.request.machine, run.request.pack ?? "own")).number("pack-open-voltage") ?? 1)
    : 1;
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
  if (name === "voltage") {
    // The few hundredths by which a voltage trembles are not to fill a lane.
    const rest = restingVoltage(state);
    return { label, unit, low: VOLTS_BELOW * rest, high: rest };
  }
  return { label, unit };
}

/** Stretches of full duty of the first run, hatched across the head speed; the longest one bears the words. */
function fullDuty(result: FlightResult | undefined, seconds: number): Zone[] {
  if (!result?.ok) return [];
  const unit = timeUnit(seconds);
  // In a whole pack such stretches come with every round of its loads: they are one.
  const near = seconds > MINUTES_FROM ? seconds / 25 : seconds / 200;
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
  add("pinned-run", en.runs.run, "pinned-now", beside.pinned);
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

/** Shares of the planned time that an axis may have: where all flights touch the ground long before, the rest would be empty. */
const SHORTER = [1 / 3, 1 / 2] as const;

/** Length of the time axis, s. What is drawn by hand has the planned one, and so has a flight of minutes. */
function lengthOf({ seconds, drawing }: FlightState, results: readonly FlightResult[]): number {
  const end = endOf(results);
  const planned = drawing !== null || seconds > MINUTES_FROM || end === 0;
  return seconds * ((planned ? null : SHORTER.find((share) => end <= share * seconds)) ?? 1);
}

/** The plot states of all lanes, from the top. */
export function laneStates(
  state: FlightState,
  results: readonly FlightResult[],
  beside: Beside,
  width: number,
): PlotState[] {
  const unit = timeUnit(state.seconds);
  const high = lengthOf(state, beside.pinned ? [...results, beside.pinned] : results) / unit;
  const asked = [
    ...new Set(
      state.runs.map(({ request: { machine, mode, headRpm } }) => headRpm ?? machine.modes[mode]?.headRpm ?? 0),
    ),
  ];
  const states = state.lanes.map((name, i): PlotState => {
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
        high,
        exact: true,
      },
      y: yAxis(state, name, governed ? asked : [], results),
      curves: curvesOf(state, name, results, beside, width, i === 0),
      levels,
      zones,
      words: "",
    };
  });
  return states.map(inShownUnits);
}
