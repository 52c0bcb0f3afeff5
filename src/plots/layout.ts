/** Where everything on a plot goes: from a state and a box to scales, ticks and placed words. Pure, in px. */
import { formatNumber, unitText } from "#view/format";
import { type Scale, type Span, scaleOf, slopeOf, spanOf, type Tick, ticksOf } from "./axis.ts";
import { type Area, areaOf, around, LINE, SIZE, spread, textWidth, wrapped } from "./labels.ts";
import { extent } from "./path.ts";
import type { Axis, Curve, PlotState } from "./state.ts";

export interface Box {
  readonly width: number;
  readonly height: number;
}

/** What a plot remembers from one state to the next, so that nothing jumps. */
export interface Memory {
  x: Span | null;
  y: Span | null;
  /** Widest words that stood beside the plot so far, and how many words there were. */
  beside: number;
  count: number;
}

export const noMemory = (): Memory => ({ x: null, y: null, beside: 0, count: 0 });

/** Words at the end of a curve or a flat level. */
export interface EndLabel {
  readonly lines: readonly string[];
  readonly x: number;
  /** The first line's baseline. */
  readonly y: number;
  readonly anchor: "start" | "end";
}

export interface Layout {
  readonly box: Box;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Scale;
  readonly y: Scale;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  /** In the order of the state's curves. */
  readonly curveLabels: readonly EndLabel[];
  /** In the order of the state's levels; null for upright ones. */
  readonly levelLabels: readonly (EndLabel | null)[];
  /** What marks and words take of the drawing; those that are placed while it is drawn are added, in the order of drawing. */
  readonly taken: Area[];
}

const BELOW = 44;
const BESIDE = 13;
/** Where the words of curves and flat levels stand: beside the plot in one line or two, or in it on a narrow page. */
type Place = "one line" | "two lines" | "inside";
const ONE_LINE_FROM = 540;
/** A label's baseline lies this far below its middle. */
export const BASELINE = SIZE * 0.35;

function seen(state: PlotState, axis: "x" | "y"): Span | null {
  const lists: ArrayLike<number | null>[] = state.curves.map((curve) => (axis === "x" ? curve.xs : curve.ys));
  const singles: (number | null)[] = [];
  for (const level of state.levels ?? []) if (level.axis === axis) singles.push(level.at);
  for (const point of state.points ?? []) {
    singles.push(point[axis]);
    if (axis === "y") singles.push(point.low ?? null, point.high ?? null);
  }
  for (const handle of state.handles ?? []) singles.push(handle[axis]);
  return extent(...lists, singles);
}

/** The end of a curve that its words belong to: the last value on the right of the page. */
function endOf(curve: Curve, reversed: boolean, x: Scale): { x: number; y: number; before: number } | null {
  const n = Math.min(curve.xs.length, curve.ys.length);
  let end: { x: number; y: number } | null = null;
  const rising = n > 1 && curve.xs[0]! <= curve.xs[n - 1]!;
  const fromLast = rising !== reversed;
  for (let k = 0; k < n; k++) {
    const i = fromLast ? n - 1 - k : k;
    const vx = curve.xs[i]!;
    const vy = curve.ys[i];
    if (vy === null || vy === undefined || !Number.isFinite(vy)) continue;
    if (!end) {
      end = { x: vx, y: vy };
      continue;
    }
    // A piece of the way back tells on which side of the words the curve comes in.
    if (Math.abs(slopeOf(x) * (vx - end.x)) > 60 || k === n - 1) return { ...end, before: vy };
  }
  return end && { ...end, before: end.y };
}

function endLabels(state: PlotState, place: Place, frame: Omit<Layout, "curveLabels" | "levelLabels" | "taken">) {
  const { x, y, right, top, bottom } = frame;
  const inside = place === "inside";
  const labels: { lines: readonly string[]; x: number; middle: number; height: number }[] = [];
  const add = (text: string, at: number, middle: number) => {
    const lines = place === "two lines" ? wrapped(text) : [text];
    return (
      labels.push({ lines, x: at, middle, height: lines.length * (LINE - 1) + (place === "two lines" ? 6 : 1) }) - 1
    );
  };
  const inFrame = (value: number) => Math.min(Math.max(y(value), top), bottom);
  const curveAt = state.curves.map((curve) => {
    const end = curve.label === "" ? null : endOf(curve, state.x.reversed === true, x);
    if (!end) return -1;
    // Inside, words go to the side of the curve where it did not come from.
    const falls = y(end.before) <= y(end.y);
    return add(curve.label, x(end.x), inFrame(end.y) + (inside ? (falls ? 14 : -14) : 0));
  });
  const levelAt = (state.levels ?? []).map((level) =>
    level.axis === "y" && level.label !== "" ? add(level.label, right, inFrame(level.at) - (inside ? 12 : 0)) : -1,
  );
  const middles = spread(labels, top + 4, bottom - 12);
  const placed = labels.map((label, i): EndLabel => {
    const first = middles[i]! + BASELINE - ((label.lines.length - 1) * (LINE - 1)) / 2;
    if (inside) return { lines: label.lines, x: right - 2, y: first, anchor: "end" };
    return { lines: label.lines, x: Math.min(label.x, right) + BESIDE, y: first, anchor: "start" };
  });
  const nowhere: EndLabel = { lines: [], x: 0, y: 0, anchor: "start" };
  return {
    curveLabels: curveAt.map((i) => placed[i] ?? nowhere),
    levelLabels: levelAt.map((i) => placed[i] ?? null),
  };
}

/** Chooses the place of the words, and how much room they take beside the plot. */
function placeOf(state: PlotState, width: number, memory: Memory): { place: Place; beside: number } {
  const texts = state.curves.map((curve) => curve.label);
  for (const level of state.levels ?? []) if (level.axis === "y") texts.push(level.label);
  if (memory.count !== texts.length) memory.beside = 0;
  memory.count = texts.length;
  const oneLine = width >= ONE_LINE_FROM && texts.every((text) => textWidth(text) < 0.36 * width);
  let beside = memory.beside;
  for (const text of texts) {
    for (const line of oneLine ? [text] : wrapped(text)) beside = Math.max(beside, textWidth(line));
  }
  memory.beside = beside;
  if (beside === 0 || beside > 0.42 * width) return { place: "inside", beside: 0 };
  return { place: oneLine ? "one line" : "two lines", beside };
}

/**
 * Lays a state out in a box. `memory` is brought up to date; `hold` keeps one axis as it is, while it is dragged on, and
 * while a hand is `moving` anything, axes only grow.
 */
export function layOut(
  state: PlotState,
  box: Box,
  memory: Memory,
  hold: "x" | "y" | null = null,
  moving = false,
): Layout {
  if (hold !== "x" || !memory.x) memory.x = spanOf(state.x, memory.x, seen(state, "x"), moving);
  if (hold !== "y" || !memory.y) memory.y = spanOf(state.y, memory.y, seen(state, "y"), moving);
  const { place, beside } = placeOf(state, box.width, memory);
  const top = (state.levels ?? []).some((level) => level.axis === "x") ? LINE + 8 : 12;
  const bottom = box.height - BELOW;
  const yTicks = ticksOf(state.y, memory.y, bottom - top, 28);
  const left = Math.max(34, ...yTicks.map((tick) => textWidth(tick.text))) + 8;
  const right = box.width - (beside > 0 ? beside + BESIDE : 14);
  const y = scaleOf(memory.y, bottom, top);
  const x = state.x.reversed ? scaleOf(memory.x, right, left) : scaleOf(memory.x, left, right);
  const widest = Math.max(textWidth(formatNumber(memory.x.low, 0)), textWidth(formatNumber(memory.x.high, 0)));
  const xTicks = ticksOf(state.x, memory.x, right - left, Math.max(widest + 12, state.x.ticks ? 26 : 44));
  const frame = { box, left, right, top, bottom, x, y, xTicks, yTicks };
  const labels = endLabels(state, place, frame);
  return { ...frame, ...labels, taken: takenBy(state, frame, [...labels.curveLabels, ...labels.levelLabels]) };
}

/** Half the size of a mark, px: words beside it keep clear of others' marks. */
const MARK = 6;

/** What marks and the words of curves and levels take, before any other words are placed. */
export function takenBy(
  state: PlotState,
  { x, y, right, top, bottom }: Pick<Layout, "x" | "y" | "right" | "top" | "bottom">,
  labels: readonly (EndLabel | null)[],
): Area[] {
  const marks = [
    ...(state.points ?? []).map((point) => around(x(point.x), y(point.y), MARK)),
    ...(state.handles ?? []).map((handle) =>
      around(
        handle.x === null ? right : x(handle.x),
        handle.y === null ? (handle.x === null ? top : bottom) : y(handle.y),
        MARK,
      ),
    ),
  ];
  return [
    ...marks,
    ...labels.flatMap((label) => (label && label.lines.length > 0 ? [areaOf(label.lines, label)] : [])),
  ];
}

/** What an axis measures, with its unit: `charge, %`. */
export function axisWords(axis: Axis): string {
  const unit = unitText(axis.unit, "metric");
  return unit === "" ? axis.label : `${axis.label}, ${unit}`;
}
