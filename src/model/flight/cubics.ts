/** Curves in tables: from unevenly spaced points to even ones, and from these to cubics that are read without a search. */

/**
 * Values at `count` + 1 even places from `from` on, `width` apart, by cubics through unevenly spaced points; beyond
 * their ends the end holds. Units: those of the points. Source: C. de Boor, A Practical Guide to Splines, ch. IV
 * (cubic Hermite, three-point slopes).
 *
 * @param xs rising
 * @param ys as many
 */
export function evenly(xs: Float64Array, ys: Float64Array, from: number, width: number, count: number): Float64Array {
  const last = xs.length - 1;
  const slope = (i: number): number => {
    if (i === 0 || i === last) return 0;
    const [a, b] = [xs[i]! - xs[i - 1]!, xs[i + 1]! - xs[i]!];
    return ((ys[i]! - ys[i - 1]!) * (b / a) + (ys[i + 1]! - ys[i]!) * (a / b)) / (a + b);
  };
  let i = 0;
  return Float64Array.from({ length: count + 1 }, (_, n) => {
    const x = from + n * width;
    while (i < last - 1 && x > xs[i + 1]!) i++;
    const h = xs[i + 1]! - xs[i]!;
    const t = Math.min(1, Math.max(0, (x - xs[i]!) / h));
    const [y0, y1, s0, s1] = [ys[i]!, ys[i + 1]!, slope(i) * h, slope(i + 1) * h];
    return y0 + t * (s0 + t * (3 * (y1 - y0) - 2 * s0 - s1 + t * (2 * (y0 - y1) + s0 + s1)));
  });
}

/**
 * Writes the cubics through equally spaced values, one of four coefficients (of 1, t, t^2, t^3; t from 0 to 1 in a
 * cell) for each cell, `stride` apart. Slopes by central differences, one-sided at the ends. Units: those of the values.
 * Source: Catmull and Rom, in Computer Aided Geometric Design (1974).
 */
export function writeCubics(values: ArrayLike<number>, into: Float64Array, from: number, stride: number): void {
  const last = values.length - 1;
  const slope = (i: number): number => {
    if (i === 0) return values[1]! - values[0]!;
    if (i === last) return values[last]! - values[last - 1]!;
    return (values[i + 1]! - values[i - 1]!) / 2;
  };
  for (let i = 0; i < last; i++) {
    const [a, b, p, q] = [values[i]!, values[i + 1]!, slope(i), slope(i + 1)];
    const at = from + i * stride;
    into[at] = a;
    into[at + 1] = p;
    into[at + 2] = 3 * (b - a) - 2 * p - q;
    into[at + 3] = 2 * (a - b) + p + q;
  }
}
