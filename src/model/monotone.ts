/** A smooth curve through rising points that never turns back between them. */
export interface MonotoneCurve {
  /** y at x; outside the table's x the end value is not a guess of ours to make: null. */
  readonly at: (x: number) => number | null;
  /** x at y; null outside the table's y. */
  readonly inverse: (y: number) => number | null;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** Slopes at the points: weighted harmonic mean inside, so no span overshoots; one-sided and limited at the ends. */
function slopesOf(xs: readonly number[], ys: readonly number[]): number[] {
  const last = xs.length - 1;
  const h = (i: number) => xs[i + 1]! - xs[i]!;
  const d = (i: number) => (ys[i + 1]! - ys[i]!) / h(i);
  // One-sided, at most twice the end's own slope for rising points; never below zero.
  const end = (h0: number, h1: number, d0: number, d1: number): number =>
    Math.max(0, ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1));
  return xs.map((_, i) => {
    if (i === 0) return end(h(0), h(1), d(0), d(1));
    if (i === last) return end(h(last - 1), h(last - 2), d(last - 1), d(last - 2));
    const before = 2 * h(i) + h(i - 1);
    const after = h(i) + 2 * h(i - 1);
    return (before + after) / (before / d(i - 1) + after / d(i));
  });
}

/**
 * Monotone cubic interpolation through a table whose x and y both rise strictly.
 *
 * @param xs at least three rising x
 * @param ys as many rising y
 * @returns the curve both ways; the inverse is exact to rounding. Units: those of the table.
 * @throws RangeError when the table doesn't rise: a slip of the author, not of a reader
 *
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[]): MonotoneCurve {
  const rises = (list: readonly number[]) => list.every((v, i) => i === 0 || v > list[i - 1]!);
  if (xs.length < 3 || xs.length !== ys.length || !rises(xs) || !rises(ys)) throw new RangeError("the table must rise");
  const slopes = slopesOf(xs, ys);
  const last = xs.length - 1;

  const span = (i: number, x: number): number => {
    const h = xs[i + 1]! - xs[i]!;
    const t = (x - xs[i]!) / h;
    const u = 1 - t;
    const left = ys[i]! * (1 + 2 * t) + h * slopes[i]! * t;
    const right = ys[i + 1]! * (3 - 2 * t) - h * slopes[i + 1]! * u;
    // Rounding alone may leave the span by a last digit, and its inverse then with no answer.
    return Math.min(ys[i + 1]!, Math.max(ys[i]!, left * u * u + right * t * t));
  };
  const within = (list: readonly number[], v: number): number => {
    let i = 0;
    while (i < last - 1 && v > list[i + 1]!) i++;
    return i;
  };

  const at = (x: number): number | null => (x >= xs[0]! && x <= xs[last]! ? span(within(xs, x), x) : null);
  const inverse = (y: number): number | null => {
    if (!(y >= ys[0]! && y <= ys[last]!)) return null;
    const i = within(ys, y);
    let low = xs[i]!;
    let high = xs[i + 1]!;
    // False position with the stalled end's weight halved: the span rises all the way, so the bracket always holds.
    let below = ys[i]! - y;
    let above = ys[i + 1]! - y;
    if (below === 0) return low;
    for (let n = 0; n < 80 && above !== 0; n++) {
      const x = low - (below * (high - low)) / (above - below);
      const miss = span(i, x) - y;
      if (miss === 0 || high - low < 1e-15) return x;
      if (miss < 0) {
        low = x;
        below = miss;
        above /= 2;
      } else {
        high = x;
        above = miss;
        below /= 2;
      }
      if (Math.abs(miss) < 1e-14) return x;
    }
    return high;
  };
  return { at, inverse, xs, ys };
}
