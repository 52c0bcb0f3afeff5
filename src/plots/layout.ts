/** Where everything on a plot goes: from a state and a box to scales, ticks and placed words. Pure, in px. */
import { formatNumber, unitText } from "#view/format";
import { type Scale, type Span, scaleOf, spanOf, type Tick, ticksOf, toPage } from "./axis.ts";
import { LINE, SIZE, spread, textWidth } from "./labels.ts";
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
  /** Widest words that stood beside the plot so far. */
  beside: number;
}

export const noMemory = (): Memory => ({ x: null, y: null, beside: 0 });

/** Words at the end of a curve or a flat level. */
export interface EndLabel {
  readonly text: string;
  readonly x: number;
  /** The baseline's height. */
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
}

const BELOW = 44;
const BESIDE = 10;
/** Narrower plots carry the words of curves inside. */
const WIDE = 470;
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
    if (Math.abs(x.slope * (vx - end.x)) > 60 || k === n - 1) return { ...end, before: vy };
  }
  return end && { ...end, before: end.y };
}

function endLabels(state: PlotState, wide: boolean, frame: Omit<Layout, "curveLabels" | "levelLabels">) {
  const { x, y, right, top, bottom } = frame;
  const labels: { text: string; x: number; middle: number }[] = [];
  const inFrame = (place: number) => Math.min(Math.max(place, top), bottom);
  const curveAt: number[] = [];
  const levelAt: number[] = [];
  for (const curve of state.curves) {
    const end = curve.label === "" ? null : endOf(curve, state.x.reversed === true, x);
    if (!end) {
      curveAt.push(-1);
      continue;
    }
    const place = inFrame(toPage(y, end.y));
    // Inside, words go to the side of the curve where it did not come from.
    const falls = toPage(y, end.before) <= place;
    curveAt.push(
      labels.push({ text: curve.label, x: toPage(x, end.x), middle: place + (wide ? 0 : falls ? 14 : -14) }) - 1,
    );
  }
  for (const level of state.levels ?? []) {
    const shown = level.axis === "y" && level.label !== "";
    levelAt.push(
      shown
        ? labels.push({ text: level.label, x: right, middle: inFrame(toPage(y, level.at)) - (wide ? 0 : 12) }) - 1
        : -1,
    );
  }
  const middles = spread(
    labels.map((label) => label.middle),
    top + (wide ? 2 : 9),
    bottom - 6,
  );
  const placed = labels.map((label, i): EndLabel => {
    const inside = { x: right - 2, anchor: "end" as const };
    // Words of a curve that ends early stand at its end when there is room for them.
    const beside = { x: Math.min(label.x, right) + BESIDE, anchor: "start" as const };
    return { text: label.text, y: middles[i]! + BASELINE, ...(wide ? beside : inside) };
  });
  const nowhere: EndLabel = { text: "", x: 0, y: 0, anchor: "start" };
  return {
    curveLabels: curveAt.map((i) => placed[i] ?? nowhere),
    levelLabels: levelAt.map((i) => placed[i] ?? null),
  };
}

/** Lays a state out in a box. `memory` is brought up to date; `hold` keeps one axis as it is, while it is dragged on. */
export function layOut(state: PlotState, box: Box, memory: Memory, hold: "x" | "y" | null = null): Layout {
  if (hold !== "x" || !memory.x) memory.x = spanOf(state.x, memory.x, seen(state, "x"));
  if (hold !== "y" || !memory.y) memory.y = spanOf(state.y, memory.y, seen(state, "y"));
  const beside = [...state.curves, ...(state.levels ?? []).filter((level) => level.axis === "y")].map((each) =>
    textWidth(each.label),
  );
  memory.beside = Math.max(memory.beside, ...beside);
  const wide = box.width >= WIDE && memory.beside < 0.36 * box.width;
  const top = (state.levels ?? []).some((level) => level.axis === "x") ? LINE + 8 : 12;
  const bottom = box.height - BELOW;
  const yTicks = ticksOf(state.y, memory.y, bottom - top, 34);
  const left = Math.max(34, ...yTicks.map((tick) => textWidth(tick.text))) + 8;
  const right = box.width - (wide && memory.beside > 0 ? memory.beside + BESIDE + 2 : 14);
  const y = scaleOf(memory.y, bottom, top);
  const x = state.x.reversed ? scaleOf(memory.x, right, left) : scaleOf(memory.x, left, right);
  const widest = Math.max(textWidth(formatNumber(memory.x.low, 0)), textWidth(formatNumber(memory.x.high, 0)));
  const xTicks = ticksOf(state.x, memory.x, right - left, Math.max(widest + 12, state.x.ticks ? 26 : 52));
  const frame = { box, left, right, top, bottom, x, y, xTicks, yTicks };
  return { ...frame, ...endLabels(state, wide, frame) };
}

/** What an axis measures, with its unit: `charge, %`. */
export function axisWords(axis: Axis): string {
  const unit = unitText(axis.unit);
  return unit === "" ? axis.label : `${axis.label}, ${unit}`;
}
