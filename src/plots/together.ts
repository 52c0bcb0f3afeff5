/**
 * Several machines on one plot. Each machine's own state of the plot is made by the same factory; here the marks of the
 * others are put beside those of the first: the what-if in its own ink, an earlier, pinned state in the same ink, dashed.
 */
import { firstAndRest } from "#view/text";
import { plotWords } from "#view/words/en-plots";
import { extent } from "./path.ts";
import type { Axis, Curve, Ink, Level, PlotState, Point } from "./state.ts";
import { valueAt } from "./table.ts";

/** The states of one plot for the machines beside the first; either may be missing. */
export interface OtherPlots {
  readonly whatIf?: PlotState | undefined;
  readonly pinned?: PlotState | undefined;
  /** What the pinned machine has that the first has not, in a few words: `14 t`. */
  readonly pinnedAs: string;
}

type Kind = "what-if" | "pinned";

const inkOf: Readonly<Record<Kind, Ink>> = { "what-if": "what-if", pinned: "pinned-now" };

/** Curves nearer to each other than this share of the height lie on each other on any screen. */
const NEAR = 0.004;

/** Whether a curve runs where another one does, as far as both go; it may well be longer or shorter. */
function sameCurve(first: Curve, other: Curve): boolean {
  if (first.ys === other.ys && first.xs === other.xs) return true;
  const span = extent(first.ys, other.ys);
  if (!span) return true;
  let shared = 0;
  for (let i = 0; i < other.xs.length; i++) {
    const y = other.ys[i] ?? null;
    const there = valueAt(first, other.xs[i] as number);
    if (y === null || there === null) continue;
    shared++;
    if (Math.abs(y - there) > NEAR * (span.high - span.low)) return false;
  }
  return shared > other.xs.length / 2;
}

interface Added {
  readonly curves: Curve[];
  readonly levels: Level[];
  readonly points: Point[];
}

/** The marks of one other state that the first has not, in their ink; only one of them carries the words. */
function added(state: PlotState, other: PlotState, kind: Kind, words: string): Added {
  const ink = inkOf[kind];
  const key = (mark: { readonly key: string }) => `${kind}-${mark.key}`;
  let free = words;
  const label = () => {
    const now = free;
    free = "";
    return now;
  };
  const drawn = new Map(state.curves.map((curve) => [curve.key, curve]));
  const curves = other.curves
    .filter((curve) => curve.ink === "now")
    .filter((curve) => {
      const first = drawn.get(curve.key);
      return !first || !sameCurve(first, curve);
    })
    .map(
      (curve): Curve => ({
        ...curve,
        key: key(curve),
        ink,
        label: label(),
        name: [curve.label, words].filter(Boolean).join(", "),
      }),
    );
  const standing = new Map((state.levels ?? []).map((level) => [level.key, level.at]));
  const levels = (other.levels ?? [])
    .filter((level) => level.ink === "now" && standing.get(level.key) !== level.at)
    .map((level): Level => ({ ...level, key: key(level), ink, label: label() }));
  return {
    curves,
    levels,
    points: points(state, other, kind, free === "" ? "" : kind === "pinned" ? plotWords.pinned("") : free),
  };
}

/** How far a plot's curves reach along an axis. */
function reach({ curves }: PlotState, axis: "xs" | "ys"): number {
  const ends = extent(...curves.map((curve) => curve[axis]));
  return ends ? ends.high - ends.low : 0;
}

/** Points and marks that stand elsewhere. A mark that can be dragged leaves a ring where it stood; the first has the words. */
function points(state: PlotState, other: PlotState, kind: Kind, words: string): Point[] {
  const places = (from: PlotState) =>
    new Map(
      [...(from.handles ?? []), ...(from.points ?? []).filter((point) => point.kind === "now")].flatMap(
        ({ key, x, y }): [string, { x: number; y: number }][] => (x === null || y === null ? [] : [[key, { x, y }]]),
      ),
    );
  const here = places(state);
  const [wide, high] = [reach(state, "xs"), reach(state, "ys")];
  const found: Point[] = [];
  for (const [key, { x, y }] of places(other)) {
    const first = here.get(key);
    if (first && Math.abs(first.x - x) <= NEAR * wide && Math.abs(first.y - y) <= NEAR * high) continue;
    found.push({ key: `${kind}-${key}`, x, y, kind, label: found.length === 0 ? words : "" });
  }
  return found;
}

/** Ticks that stand at single values, such as teeth, reach as far as the farther machine's. */
function axisOf(first: Axis, others: readonly Axis[]): Axis {
  const [low, high] = [first.ticks?.[0], first.ticks?.at(-1)];
  if (!first.ticks || low === undefined || high === undefined) return first;
  const beyond = new Set(others.flatMap(({ ticks }) => ticks ?? []).filter((tick) => tick < low || tick > high));
  return beyond.size === 0 ? first : { ...first, ticks: [...first.ticks, ...beyond].sort((a, b) => a - b) };
}

/** What the others say for themselves, where that is not what the first says. */
function said(state: PlotState, other: PlotState, name: string): string {
  const [main] = firstAndRest(other.words);
  return main === firstAndRest(state.words)[0] ? "" : ` ${plotWords.otherwise(name, main)}`;
}

/** A plot of one machine with the same plot of others drawn into it. What they have in common is drawn once. */
export function plotTogether(state: PlotState, { whatIf, pinned, pinnedAs }: OtherPlots): PlotState {
  const same = (other: PlotState | undefined) => (other?.name === state.name ? other : undefined);
  const [then, other] = [same(pinned), same(whatIf)];
  // A plot that draws the what-if by itself knows better how.
  const drawsIt = state.curves.some(({ ink }) => ink === "what-if");
  const pinnedWords = plotWords.pinned(pinnedAs);
  const adding: Added[] = [];
  let words = state.words;
  if (other) {
    const marks = added(state, other, "what-if", drawsIt ? "" : plotWords.whatIf);
    adding.push(drawsIt ? { ...marks, curves: [] } : marks);
    words += said(state, other, plotWords.whatIf);
  }
  if (then) {
    const marks = added(state, then, "pinned", pinnedWords);
    adding.push(marks);
    const none = marks.curves.length + marks.levels.length + marks.points.length === 0;
    const differs = said(state, then, plotWords.pinnedLong(pinnedAs));
    if (pinnedAs !== "") words += none && differs === "" ? ` ${plotWords.samePinned}` : differs;
  }
  if (adding.length === 0) return state;
  const axes = [then, other].filter((each): each is PlotState => each !== undefined);
  return {
    ...state,
    x: axisOf(
      state.x,
      axes.map(({ x }) => x),
    ),
    // Ink lies over what was pinned.
    curves: [...adding.flatMap(({ curves }) => curves).reverse(), ...state.curves],
    levels: [...adding.flatMap(({ levels }) => levels), ...(state.levels ?? [])],
    points: [...adding.flatMap(({ points }) => points), ...(state.points ?? [])],
    words,
  };
}
