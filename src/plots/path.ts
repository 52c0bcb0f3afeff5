/** Path data, to a tenth of a pixel. A value that does not exist makes a gap, never a wrong line. */
import { area, line } from "d3-shape";
import type { Scale } from "./axis.ts";

type Values = ArrayLike<number | null>;

const tenth = (place: number): number => Math.round(place * 10) / 10;

/** Far outside a plot, where a curve is cut off anyway; keeps a steep curve from making absurd numbers. */
const FAR = 20_000;
const near = (place: number): number => (place > FAR ? FAR : place < -FAR ? -FAR : tenth(place));

const exists = (value: number | null | undefined): value is number =>
  value !== null && value !== undefined && value - value === 0;

/** The places 0, 1, 2 ... of the points: kept, since a plot draws as many again in the next frame. */
const places: number[] = [];
function upTo(n: number): readonly number[] {
  while (places.length < n) places.push(places.length);
  return places.length === n ? places : places.slice(0, n);
}

/** A line through the points. */
export function linePath(xs: ArrayLike<number>, ys: Values, x: Scale, y: Scale): string {
  const draw = line<number>()
    .defined((i) => exists(xs[i]) && exists(ys[i]))
    .x((i) => near(x(xs[i] as number)))
    .y((i) => near(y(ys[i] as number)))
    .digits(1);
  return draw(upTo(Math.min(xs.length, ys.length))) ?? "";
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
  const draw = area<number>()
    .defined((i) => exists(xs[i]) && exists(lower[i]) && exists(upper[i]))
    .x((i) => near(x(xs[i] as number)))
    .y0((i) => near(y(lower[i] as number)))
    .y1((i) => near(y(upper[i] as number)))
    .digits(1);
  return draw(upTo(xs.length)) ?? "";
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
