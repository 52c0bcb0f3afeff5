/** Path data, to a tenth of a pixel. A value that does not exist makes a gap, never a wrong line. */
import { pathRound } from "d3-path";
import type { Scale } from "./axis.ts";

type Values = ArrayLike<number | null>;

const tenth = (place: number): number => Math.round(place * 10) / 10;

/** Far outside a plot, where a curve is cut off anyway; keeps a steep curve from making absurd numbers. */
const FAR = 20_000;
const near = (place: number): number => (place > FAR ? FAR : place < -FAR ? -FAR : tenth(place));

const exists = (value: number | null | undefined): value is number =>
  value !== null && value !== undefined && value - value === 0;

/** The places of a list in runs, from the first to the last one of each: between two runs something doesn't exist. */
function runsOf(n: number, isThere: (i: number) => boolean): (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  let first = 0;
  for (let i = 0; i <= n; i++) {
    if (i < n && isThere(i)) continue;
    if (i > first) runs.push([first, i - 1]);
    first = i + 1;
  }
  return runs;
}

/** A line through the points. A point that stands alone is a line back to itself, which a round pen draws as a dot. */
export function linePath(xs: ArrayLike<number>, ys: Values, x: Scale, y: Scale): string {
  const draw = pathRound(1);
  for (const [first, last] of runsOf(Math.min(xs.length, ys.length), (i) => exists(xs[i]) && exists(ys[i]))) {
    draw.moveTo(near(x(xs[first]!)), near(y(ys[first]!)));
    for (let i = first + 1; i <= last; i++) draw.lineTo(near(x(xs[i]!)), near(y(ys[i]!)));
    if (first === last) draw.closePath();
  }
  return draw.toString();
}

/** Pencil strokes are about so long, px, before the hand wavers. */
const STROKE = 7;

const waver = (place: number, pass: number): number =>
  0.8 * Math.sin(place / 23 + pass * 3.1) +
  0.5 * Math.sin(place / 9.7 + pass * 1.3) +
  0.35 * Math.sin(place / 3.9 - pass);

/** A pencil line: the points joined by a slightly uneven hand, gone over twice. The same guess always looks the same. */
export function pencilPath(xs: ArrayLike<number>, ys: Values, x: Scale, y: Scale): string {
  let path = "";
  const n = Math.min(xs.length, ys.length);
  for (let pass = 0; pass < 2; pass++) {
    let before: { x: number; y: number } | null = null;
    for (let i = 0; i < n; i++) {
      const vx = xs[i];
      const vy = ys[i];
      if (!exists(vx) || !exists(vy)) {
        before = null;
        continue;
      }
      const next = { x: near(x(vx)), y: near(y(vy)) };
      const from = before ?? next;
      const pieces = Math.min(400, Math.max(1, Math.ceil(Math.hypot(next.x - from.x, next.y - from.y) / STROKE)));
      for (let k = before ? 1 : pieces; k <= pieces; k++) {
        const px = from.x + ((next.x - from.x) * k) / pieces;
        const py = from.y + ((next.y - from.y) * k) / pieces;
        const along = px + 0.37 * py;
        path += `${before || k < pieces ? "L" : "M"}${near(px + waver(along + 40, pass) * 0.5)},${near(py + waver(along, pass))}`;
      }
      before = next;
    }
  }
  return path;
}

/** Small circles at the points, all in one path. */
export function dotsPath(xs: ArrayLike<number>, ys: Values, x: Scale, y: Scale, radius: number): string {
  let path = "";
  const n = Math.min(xs.length, ys.length);
  for (let i = 0; i < n; i++) {
    const vx = xs[i];
    const vy = ys[i];
    if (!exists(vx) || !exists(vy)) continue;
    const left = near(x(vx) - radius);
    path += `M${left},${near(y(vy))}a${radius},${radius} 0 1 0 ${2 * radius},0a${radius},${radius} 0 1 0 ${-2 * radius},0`;
  }
  return path;
}

/** The area between two curves; one closed piece for each run of points that have both. */
export function areaPath(xs: ArrayLike<number>, lower: Values, upper: Values, x: Scale, y: Scale): string {
  const draw = pathRound(1);
  for (const [first, last] of runsOf(xs.length, (i) => exists(xs[i]) && exists(lower[i]) && exists(upper[i]))) {
    draw.moveTo(near(x(xs[first]!)), near(y(upper[first]!)));
    for (let i = first + 1; i <= last; i++) draw.lineTo(near(x(xs[i]!)), near(y(upper[i]!)));
    for (let i = last; i >= first; i--) draw.lineTo(near(x(xs[i]!)), near(y(lower[i]!)));
    draw.closePath();
  }
  return draw.toString();
}

/** Lowest and highest of the values that exist, or null when none does. */
export function extent(...lists: readonly Values[]): { low: number; high: number } | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists) {
    for (let i = 0; i < list.length; i++) {
      const value = list[i];
      if (!exists(value)) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? { low, high } : null;
}
