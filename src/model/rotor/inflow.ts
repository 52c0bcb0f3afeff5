import { liftAt } from "./section.ts";

/**
 * What the wake mixes into the mass flow while the rotor sinks into it: b in m^2 = w^2 + b V^2. One eighth is the least
 * for which thrust from momentum grows with inflow at every rate of descent, so that there is one answer only.
 */
const mixing = 0.125;

/**
 * Speed of the far wake over that in the disc, for a rotor in hover: smoke shows wakes that contract to 0.78 of the radius,
 * not to momentum theory's 0.71, and 1 / 0.78^2 = 1.64, not 2, times the flow then passes there. The rest of the power
 * stays in swirl, in unevenness and in the tip vortices. In climb the wake contracts less and the ideal 2 comes back.
 * Source: Landgrebe, J. American Helicopter Society 17 (1972); Kocurek and Tangler, same journal 22 (1977).
 */
export const realWake = 1 / 0.78 ** 2;

/**
 * Share of the momentum of an unbroken disc that a few blades hold near an end: Prandtl's factor
 * F = (2 / pi) arccos exp(-x), x = (B / 2) (R - r) / (r sin phi) at the tip.
 *
 * @param x exponent, no unit, 0 or more
 * @returns 0 at the end, 1 far from it (no unit). Source: Glauert in Durand, Aerodynamic Theory IV (1935).
 */
export function prandtlFactor(x: number): number {
  return x > 18 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-x));
}

/**
 * Angle that the blades' own inflow adds at one annulus: the zero of
 * g(e) = F sin e m - (sigma' / 4) C_l(a0 - e) cos^2 e, where e turns the flow from its undisturbed angle phi0 to
 * phi = phi0 + e. Momentum gives the axial and the swirl velocity at once, as the induced velocity stands at right angles
 * to the flow at the blade: W = W0 cos e, v = W0 sin e. Only lift moves momentum (Betz); drag heats the wake. The mass
 * flow is that through the annulus, m = |cos e sin phi|; where the rotor sinks into its own wake, the wake mixes in
 * more, m^2 = (cos e sin phi)^2 + sin^2 phi0 / 8.
 *
 * @param c section coefficients
 * @param at where they begin
 * @param load sigma' / 4 = B c / (8 pi r)
 * @param tip exponent of the tip loss times sin phi
 * @param root exponent of the root loss times sin phi
 * @param sin0 sine of the undisturbed inflow angle, climb positive
 * @param cos0 its cosine
 * @param angle0 angle of attack before the rotor moves any air, rad
 * @param wake speed of the far wake over that in the disc, in hover: `realWake`, or 2 in momentum theory; momentum goes by half of it
 * @returns e in rad. It never fails: at e = 0 g has the sign of -C_l(a0), and where the angle of attack has come down to
 * zero lift it has the other sign.
 * Source: Glauert, in Durand, Aerodynamic Theory IV (1935); hover form after Stahlhut and Leishman, AHS Forum 68 (2012).
 */
export function inflowAngle(
  c: Float64Array,
  at: number,
  load: number,
  tip: number,
  root: number,
  sin0: number,
  cos0: number,
  angle0: number,
  wake: number,
): number {
  const sinA = Math.sin(angle0);
  const cosA = Math.cos(angle0);
  if (sinA * cosA === 0 || load === 0) return 0;
  // The section is symmetric: solve with lift upwards and turn the answer round.
  const turn = sinA * cosA > 0 ? 1 : -1;
  const s0 = turn * sin0;
  const sa = turn * sinA;
  const end = cosA > 0 ? turn * angle0 : turn * angle0 + Math.PI;
  const spared = 1 - wake / 2;
  const mixed = s0 < 0 ? mixing * s0 * s0 : 0;

  // Small angles, straight lift: e (e + phi0) F = (sigma' a / 4) (a0 - e), once with F = 1, once with the F that gives.
  let x = 0;
  let slope = 1;
  let loss = 1;
  for (let pass = 0; pass < 2; pass++) {
    const pull = (load * c[at]!) / (loss * (s0 === 0 ? 1 - spared : 1));
    const p = Math.abs(s0) + pull;
    x = -p / 2 + Math.sqrt((p * p) / 4 + pull * end);
    slope = loss * (2 * x + p);
    if (pass === 0) loss = Math.max(0.02, lossAt(tip, root, x + s0));
  }
  let low = 0;
  let high = end;
  if (!(x > low && x < high)) x = end / 2;
  let before = 0;
  let beforeG = 0;
  for (let step = 0; step < 100; step++) {
    const se = Math.sin(x);
    const ce = Math.cos(x);
    const sinPhi = s0 * ce + cos0 * se;
    const w = ce * sinPhi;
    const m = mixed === 0 ? Math.abs(w) : Math.sqrt(w * w + mixed);
    let share = 1;
    if (s0 !== 0) {
      const v = se * (cos0 * ce - s0 * se);
      share = (v * v) / (v * v + s0 * s0);
    }
    const g =
      lossAt(tip, root, sinPhi) * se * m * (1 - spared * share) -
      load * ce * ce * liftAt(c, at, sa * ce - cosA * se, cosA * ce + sa * se);
    if (g === 0) break;
    if (g < 0) low = x;
    else high = x;
    if (step > 0) slope = (g - beforeG) / (x - before);
    let next = x - g / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    before = x;
    beforeG = g;
    const shift = Math.abs(next - x);
    x = next;
    if (shift < 1e-7 * (x + 1e-3)) break;
  }
  return turn * x;
}

/** Tip and root loss together at one sine of the inflow angle. */
function lossAt(tip: number, root: number, sinPhi: number): number {
  const s = Math.abs(sinPhi);
  return prandtlFactor(tip / s) * prandtlFactor(root / s);
}
