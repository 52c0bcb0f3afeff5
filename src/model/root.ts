/**
 * Zero of a continuous function between two points where it has different signs, by Chandrupatla's rule: inverse
 * quadratic steps where they are safe, halving where they are not, so it can't fail and rarely needs ten calls.
 *
 * @param f function of one number
 * @param a one end
 * @param b other end
 * @param tolerance width at which the bracket is narrow enough, in the unit of a and b
 * @param fa value at a, if it is known already
 * @param fb value at b, if it is known already
 * @returns the zero in the unit of a and b, or null when both ends have the same sign (nothing is bracketed)
 *
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149; P. O. J. Scherer, Computational
 * Physics. Units: those of the caller.
 */
export function bracketedRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance: number,
  fa: number = f(a),
  fb: number = f(b),
): number | null {
  let x1 = b;
  let x2 = a;
  let f1 = fb;
  let f2 = fa;
  if (f1 === 0) return x1;
  if (f2 === 0) return x2;
  if (f1 > 0 === f2 > 0) return null;
  let t = 0.5;
  // Halving alone would end within 1,100 steps over all doubles; in practice it is under twenty.
  for (let i = 0; i < 1100; i++) {
    const x = x1 + t * (x2 - x1);
    const fx = f(x);
    const same = fx > 0 === f1 > 0;
    const x3 = same ? x1 : x2;
    const f3 = same ? f1 : f2;
    if (!same) {
      x2 = x1;
      f2 = f1;
    }
    x1 = x;
    f1 = fx;
    const best = Math.abs(f2) < Math.abs(f1) ? x2 : x1;
    const narrow = tolerance / Math.abs(x2 - x1);
    if (f1 === 0 || narrow > 0.5) return f1 === 0 ? x1 : best;
    const xi = (x1 - x2) / (x3 - x2);
    const phi = (f1 - f2) / (f3 - f2);
    if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi) {
      t = (f1 / (f2 - f1)) * (f3 / (f2 - f3)) + ((x3 - x1) / (x2 - x1)) * (f1 / (f3 - f1)) * (f2 / (f3 - f2));
    } else {
      t = 0.5;
    }
    t = Math.min(1 - narrow, Math.max(narrow, t));
  }
  return x1;
}
