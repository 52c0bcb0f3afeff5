/**
 * Axes that stay put: nice ends, kept until the values leave them or, once the hand rests, fill too little of them; and few
 * ticks.
 */
import { tickStep } from "d3-array";
import { formatNumber } from "#view/format";
import type { Axis } from "./state.ts";

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** A straight map from a value to a place on the page, in px. */
export interface Scale {
  (value: number): number;
  /** The value at a place. */
  invert(place: number): number;
  /** The values at both ends. */
  domain(): readonly [number, number];
}

export interface Tick {
  readonly value: number;
  readonly text: string;
}

/** Values that fill less than this of an axis let it shrink. */
const FILLS = 0.55;
/** Ends lie on steps of about a fifth of the values' range. */
const STEPS = 5;

function nice({ low, high }: Span): Span {
  const step = tickStep(low, high, STEPS);
  // The small shift keeps an end that lies on a step but for rounding from being pushed one step out.
  return { low: Math.floor(low / step + 1e-9) * step, high: Math.ceil(high / step - 1e-9) * step };
}

function widened(low: number, high: number): Span {
  if (high > low) return { low, high };
  const half = Math.abs(low) * 0.05 || 0.5;
  return { low: low - half, high: low + half };
}

/**
 * The ends of an axis for values from `low` to `high`. The ends it had are kept as long as all values lie between
 * them and still fill a fair part, so an axis stays still while a slider moves and then takes a whole step. While a hand
 * moves it only grows: ends that go to and fro with the values would hide how these move.
 */
export function steadySpan(before: Span | null, low: number, high: number, moving = false): Span {
  const wanted = widened(low, high);
  if (before && moving) {
    if (wanted.low >= before.low && wanted.high <= before.high) return before;
    return nice({ low: Math.min(wanted.low, before.low), high: Math.max(wanted.high, before.high) });
  }
  if (before && wanted.low >= before.low && wanted.high <= before.high) {
    const filled = (wanted.high - wanted.low) / (before.high - before.low);
    const best = nice(wanted);
    if (filled >= FILLS || best.high - best.low > FILLS * (before.high - before.low)) return before;
    return best;
  }
  return nice(wanted);
}

/** The ends of an axis: exactly those asked for, or steady ones around the values and what has to be in view. */
export function spanOf(axis: Axis, before: Span | null, seen: Span | null, moving = false): Span {
  if (axis.exact && axis.low !== undefined && axis.high !== undefined && axis.high > axis.low) {
    return before?.low === axis.low && before.high === axis.high ? before : { low: axis.low, high: axis.high };
  }
  const low = Math.min(seen?.low ?? Number.POSITIVE_INFINITY, axis.low ?? Number.POSITIVE_INFINITY);
  const high = Math.max(seen?.high ?? Number.NEGATIVE_INFINITY, axis.high ?? Number.NEGATIVE_INFINITY);
  if (!Number.isFinite(low) || !Number.isFinite(high)) return before ?? { low: 0, high: 1 };
  return steadySpan(before, Math.min(low, high), Math.max(low, high), moving);
}

/** The map of a span onto the page from `from` px to `to` px. */
export function scaleOf({ low, high }: Span, from: number, to: number): Scale {
  const slope = (to - from) / (high - low);
  const scale = (value: number): number => from + (value - low) * slope;
  // A general library's scale brings colours and formats along, a twelfth of all that a first page may weigh.
  return Object.assign(scale, {
    invert: (place: number): number => low + (place - from) / slope,
    domain: () => [low, high] as const,
  });
}

/** Pixels for one unit of the value; negative where the values run against the page. */
export const slopeOf = (scale: Scale): number => scale(1) - scale(0);

const decimalsOf = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));

/** Two or five times ten to a power keep their own decimals; 2.5 needs one more. */
function stepDecimals(step: number): number {
  const decimals = decimalsOf(step);
  const scaled = step * 10 ** decimals;
  return Math.abs(scaled - Math.round(scaled)) > 1e-6 ? decimals + 1 : decimals;
}

/** The smallest of 1, 2, 2.5, 5 and 10 times a power of ten that is at least `least`. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const [found = 10] = [1, 2, 2.5, 5].filter((times) => times * power >= least * (1 - 1e-9));
  return found * power;
}

/** Ticks for a span that has `room` px, at least `apart` px from each other. */
export function ticksOf(axis: Axis, span: Span, room: number, apart: number): Tick[] {
  const most = Math.max(1, Math.floor(room / apart));
  if (axis.ticks) {
    const { ticks, tickTexts } = axis;
    const isInside = (value: number) => value >= span.low && value <= span.high;
    const every = Math.max(1, Math.ceil(ticks.filter(isInside).length / (most + 1)));
    // They need not lie evenly: of two that are too close the second goes.
    const near = (0.7 * apart * (span.high - span.low)) / room;
    let last = Number.NEGATIVE_INFINITY;
    return ticks.flatMap((value, i) => {
      // Counted from the first of all, so that the same ones are left while an axis grows.
      if (!isInside(value) || i % every !== 0 || value - last < near) return [];
      last = value;
      return [{ value, text: tickTexts?.[i] ?? formatNumber(value, 0) }];
    });
  }
  const step = roundStep((span.high - span.low) / most);
  const decimals = stepDecimals(step);
  const ticks: Tick[] = [];
  for (let i = Math.ceil(span.low / step - 1e-9); i * step <= span.high + step * 1e-9; i++) {
    ticks.push({ value: i * step, text: formatNumber(i * step, decimals) });
  }
  return ticks;
}
