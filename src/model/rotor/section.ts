/**
 * Lift and drag of a blade section, all round the circle.
 *
 * One curve for every section and six coefficients that depend on Reynolds and Mach number: they change slowly, so a
 * solver works them out once per annulus and then asks for lift and drag at as many angles as it likes.
 */

/** How many numbers `coefficients` writes. */
export const sectionCoefficients = 6;

/** Lift and drag of the plate that a section becomes past stall: C_l = 1.08 sin 2a, C_d rises by 2 sin^2 a. */
const plateLift = 2.16;
const plateDrag = 2;

/** A symmetric blade section. */
export interface Section {
  readonly name: string;
  /**
   * Writes six numbers into `out` from `at` on: lift slope a (1/rad), the lift coefficient at which the boundary layer
   * gives way (its inverse), the inverse squared sine of the stall angle, drag at zero lift, its rise with sin^2, and
   * what the stall adds to that rise.
   */
  readonly coefficients: (reynolds: number, mach: number, out: Float64Array, at: number) => void;
}

/**
 * Share of separated flow, 0 to 1: w = u / (1 + u), u = (sin a / sin a_s)^12; one half at the stall angle a_s.
 *
 * @param c coefficients
 * @param at where they begin
 * @param s sine of the angle of attack
 * @param cosine cosine of the angle of attack; in flow from behind all is separated
 * @returns a fraction. Source: definition.
 */
export function separatedShare(c: Float64Array, at: number, s: number, cosine: number): number {
  if (cosine < 0) return 1;
  const x = s * s * c[at + 2]!;
  const x3 = x * x * x;
  const u = x3 * x3;
  return u > 1e12 ? 1 : u / (1 + u);
}

/**
 * Lift coefficient C_l = (1 - w) C_a + w 1.08 sin 2a with C_a = l / (1 + (l / C_m)^8)^(1/8) and l = a sin a.
 *
 * @param c coefficients
 * @param at where they begin
 * @param s sine of the angle of attack
 * @param cosine cosine of the angle of attack
 * @returns a plain number (no unit), odd in the angle, smooth; past 90 degrees a flat plate.
 * Source: the form is ours; coefficients from `symmetricSection`.
 */
export function liftAt(c: Float64Array, at: number, s: number, cosine: number): number {
  const plate = plateLift * s * cosine;
  if (cosine < 0) return plate;
  const x = s * s * c[at + 2]!;
  const x3 = x * x * x;
  const u = x3 * x3;
  const l = c[at]! * s;
  const q = l * c[at + 1]!;
  const q2 = q * q;
  const q4 = q2 * q2;
  const attached = l / Math.sqrt(Math.sqrt(Math.sqrt(1 + q4 * q4)));
  return u > 1e12 ? plate : (attached + u * plate) / (1 + u);
}

/**
 * Drag coefficient C_d = C_d0 + sin^2 a (k (1 - w) + 2 w).
 *
 * @param c coefficients
 * @param at where they begin
 * @param s sine of the angle of attack
 * @param cosine cosine of the angle of attack
 * @returns a plain number (no unit), even in the angle, smooth. Source: the form is ours; coefficients from `symmetricSection`.
 */
export function dragAt(c: Float64Array, at: number, s: number, cosine: number): number {
  return c[at + 3]! + s * s * (c[at + 4]! + c[at + 5]! * separatedShare(c, at, s, cosine));
}

/** Beyond this Mach number the linear rule, which has a pole at 1, is bent towards a limit. */
const linearised = 0.8;

/** How the blade's skin is: "smooth" keeps its laminar flow as long as it can, "rough" loses it at the nose. */
export type Surface = "smooth" | "rough";

/**
 * A symmetric section of the NACA four-digit family between 12 and 15 % thick.
 *
 * How the coefficients were got: polars of NACA 0012 and 0015 computed with Drela's panel and boundary layer program
 * (version 6.99, 180 panels, 0 to 18 degrees by half degrees, Re 5e3 to 4e6, Mach 0 to 0.7) at N = 3: each blade meets
 * the wake of the one before it, and 1 % of turbulence, Mack's N = 2.6, trips the laminar layer sooner than a quiet
 * tunnel's N = 9 does. Three corrections from tests of sections, none from a rotor:
 * - Drag times 1.09: such programs are 9 % below the tunnel over a wide range of sections (Timmer, AIAA 2009-268).
 * - Lift slope: the program's is 6 % too high at Re 1e6. Here 5.87 + 0.28 log10(Re / 1e6) per rad, from a survey of some
 *   forty tunnel tests of NACA 0012 (McCroskey, NASA TM 100019, from memory), plus what the program adds about Re 8e4,
 *   where the laminar layer bridges the rear of the section, less its fall to a third below Re 2e4, where it no longer closes.
 * - Greatest lift: the program's times 0.8 at Re 3.6e5 and 7e5, where SAND80-2114 (Sheldahl and Klimas 1981) prints 0.98
 *   and 1.07 for NACA 0012, 0.96 and 1.05 for NACA 0015; the program's own at Re 1e4; a power law through these.
 * Mach number: Prandtl and Glauert's rule for the slope, 1 / (1 + 1.4 M^2) for the greatest lift (the program's), Lock's
 * fourth power for the drag above the section's critical Mach number, levelling off at 0.12 (from memory).
 * A rough skin, as built-up full-scale blades have it, trips the layer at the nose: C_d0 = 0.0017 + 0.91 / log10(Re)^2.58,
 * the survey's line for tripped tests. A step of 0.1 mm trips it from about Re 4e5 on a 60 mm chord (600 = U k / nu).
 *
 * @param thickness thickness over chord, 0.12 to 0.15 (to 0.1 and 0.18 within 10 %)
 * @param surface smooth by default
 * @returns the section; units: plain numbers, slope per rad. Errors: slope 4 %, greatest lift 10 %, drag 10 % above
 * Re 1e5 and 20 % below, past stall 20 %; flow from behind is taken as a flat plate's.
 * Source: as above; the section test in NACA TN 626 (1937) and SAND80-2114 check it.
 */
export function symmetricSection(thickness: number, surface: Surface = "smooth"): Section {
  const thick = (thickness - 0.12) / 0.03;
  const laminar = 4.498 + 0.689 * thick;
  const turbulent = 0.0292 + 0.0127 * thick;
  const decay = 0.0906 + 0.0205 * thick;
  const rise = 0.71 - 0.14 * thick;
  const critical = 0.87 - thickness - 0.108;
  return {
    name: `symmetric ${Math.round(thickness * 100)} %`,
    coefficients(reynolds, mach, out, at) {
      const re = Math.max(reynolds, 1);
      const log = Math.log(re);
      const decades = (log - logMillion) / Math.LN10;
      const bridge = (log - logBridge) / 1.1;
      const fall = 7500 / re;
      const m = mach < linearised ? mach : linearised + 0.1 * Math.tanh((mach - linearised) / 0.1);
      const straight = 5.87 - 0.05 * thick + 0.28 * Math.max(decades, -2) + 0.6 * Math.exp(-bridge * bridge);
      const closed = leastSlope + (1 - leastSlope) / (1 + fall * fall * fall);
      const a = (straight * closed) / Math.sqrt(1 - m * m);
      const most = (0.68 * Math.exp(0.135 * (log - logTenThousand))) / (1 + 1.4 * mach * mach);
      const stall = Math.min((1.32 * most) / a, 0.5);
      out[at] = a;
      out[at + 1] = 1 / most;
      out[at + 2] = 1 / (stall * stall);
      const skin = (laminar / Math.sqrt(re)) ** 4;
      const full = (turbulent * Math.exp(-decay * log)) ** 4;
      const clean = Math.sqrt(Math.sqrt(Math.sqrt(skin * skin + full * full)));
      const tripped = (0.0017 + 0.91 * Math.exp(-2.58 * Math.log(Math.max(log / Math.LN10, 2)))) * (1 + 0.07 * thick);
      const over = mach > critical ? mach - critical : 0;
      const wave = 20 * over ** 4;
      out[at + 3] = (surface === "rough" ? Math.max(clean, tripped) : clean) + wave / (1 + wave / mostWave);
      const fickle = Math.exp(2.5 * (logFickle - log));
      const k = rise * Math.exp(-0.65 * Math.log(1 + re / 3.5e5)) + (2 * fickle) / (1 + fickle);
      out[at + 4] = k;
      out[at + 5] = plateDrag - k;
    },
  };
}

/** Share of the lift slope that is left where the laminar layer never closes: the program's at Re 5e3. */
const leastSlope = 0.35;
/** Wave drag of a section about Mach 1, from memory. */
const mostWave = 0.12;
const logMillion = Math.log(1e6);
const logBridge = Math.log(8e4);
const logTenThousand = Math.log(1e4);
const logFickle = Math.log(1.4e4);

/** The two sections a machine may have. NACA 0012 and NACA 0015 stand for all symmetric sections that thick. */
export const sections: Readonly<Record<"symmetric-12" | "symmetric-15", Section>> = {
  "symmetric-12": symmetricSection(0.12),
  "symmetric-15": symmetricSection(0.15),
};

/** Lift and drag at one angle. */
export interface Polar {
  readonly lift: number;
  readonly drag: number;
  /** Share of separated flow, 0 to 1. */
  readonly separated: number;
}

/**
 * Lift, drag and separated share of a section at one angle, for plots and checks.
 *
 * @param section the section
 * @param angle angle of attack, rad
 * @param reynolds Reynolds number on the chord
 * @param mach Mach number
 * @returns coefficients on the chord, no unit. Source: as `symmetricSection`.
 */
export function polarAt(section: Section, angle: number, reynolds: number, mach: number): Polar {
  const c = new Float64Array(sectionCoefficients);
  section.coefficients(reynolds, mach, c, 0);
  const [s, cosine] = [Math.sin(angle), Math.cos(angle)];
  return { lift: liftAt(c, 0, s, cosine), drag: dragAt(c, 0, s, cosine), separated: separatedShare(c, 0, s, cosine) };
}
