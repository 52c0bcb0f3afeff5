/** Two spur gears in mesh: how far apart, how many teeth share the load, and whether another pinion fits. Metres, radians. */
import { relation } from "./relation.ts";

/** Pressure angle of nearly all model gears, rad (20 degrees). ISO 53. */
export const pressureAngle = (20 * Math.PI) / 180;

/**
 * Sideways travel that a motor mount with slots commonly gives, m. Common practice, no source: measure your own.
 */
export const usualAdjustment = 1.5e-3;

/** Distance between the axes of two standard gears. */
export const centreDistance = relation({
  name: "centre distance",
  symbol: "a",
  unit: "m",
  terms: {
    module: { name: "module", symbol: "m", unit: "m" },
    pinionTeeth: { name: "teeth of the pinion", symbol: "z_1", unit: "" },
    mainTeeth: { name: "teeth of the main gear", symbol: "z_2", unit: "" },
  },
  formula: (t) => `\\frac{${t.module}\\,(${t.pinionTeeth} + ${t.mainTeeth})}{2}`,
  of: (v) => 0.5 * v.module * (v.pinionTeeth + v.mainTeeth),
  assumes: "Standard gears without profile shift; a touch of backlash comes on top.",
  source: "any gear handbook",
});

/** Whether another pinion can be set up against the same main gear. */
export interface PinionFit {
  /** How far the motor must move away from the main gear, m; negative: towards it. */
  readonly shift: number;
  readonly fits: boolean;
}

/**
 * Will another pinion mesh? The motor moves by m (new - old) / 2, m, which must lie within the mount's travel.
 *
 * @param module m
 * @param fitted teeth of the pinion that meshes now
 * @param wanted teeth of the other one
 * @param outwards travel left away from the main gear, m
 * @param inwards travel left towards it, m
 *
 * Source: centre distance of standard gears, any gear handbook.
 */
export function pinionFit(
  module: number,
  fitted: number,
  wanted: number,
  outwards: number = usualAdjustment / 2,
  inwards: number = outwards,
): PinionFit {
  const shift = 0.5 * module * (wanted - fitted);
  // A hair of tolerance, so that rounding doesn't refuse a shift that uses the travel up exactly.
  return { shift, fits: shift <= outwards + 1e-9 && -shift <= inwards + 1e-9 };
}

/**
 * Smallest tooth count that a rack cutter doesn't undercut, z = 2 / sin²(alpha), dimensionless: 17.1 at 20 degrees.
 * A smaller pinion needs profile shift, or its teeth are weak at the root. Source: any gear handbook.
 *
 * @param angle pressure angle, rad
 */
export const undercutLimit = (angle: number = pressureAngle): number => 2 / Math.sin(angle) ** 2;

/**
 * Involute function tan(a) - a of an angle in rad, dimensionless. Source: ISO 21771.
 */
export const involute = (angle: number): number => Math.tan(angle) - angle;

/**
 * Angle (rad) of an involute, the inverse of `involute`; 0 to 1.4 rad, to rounding. Source: ISO 21771.
 */
export function inverseInvolute(value: number): number {
  // The cube root is exact near zero and above the answer elsewhere, from where Newton's steps fall without overshoot.
  let angle = Math.min(Math.cbrt(3 * value), 1.4);
  for (let i = 0; i < 30; i++) {
    const slope = Math.tan(angle) ** 2;
    if (slope === 0) return angle;
    const step = (involute(angle) - value) / slope;
    angle -= step;
    if (Math.abs(step) < 1e-16) break;
  }
  return angle;
}

/** A pair of spur gears as cut and mounted; lengths in m, angles in rad. */
export interface SpurPair {
  readonly module: number;
  readonly pinionTeeth: number;
  readonly mainTeeth: number;
  /** Profile shift coefficients x1 and x2 (0 = standard gears). */
  readonly pinionShift?: number;
  readonly mainShift?: number;
  /** Tip diameters; default m (z + 2 + 2x). */
  readonly pinionTip?: number;
  readonly mainTip?: number;
  /** Distance of the axes; default the one without backlash. */
  readonly distance?: number;
  readonly angle?: number;
}

/** How a pair of spur gears runs; lengths in m, angles in rad. */
export interface Mesh {
  readonly distance: number;
  readonly workingAngle: number;
  readonly pinionBase: number;
  readonly mainBase: number;
  readonly pinionWorking: number;
  readonly mainWorking: number;
  /** Mean number of tooth pairs in contact; under 1.2 it runs rough. */
  readonly contactRatio: number;
  /** True when the pinion has fewer teeth than its shift allows: the true contact ratio is then lower. */
  readonly undercut: boolean;
}

/**
 * Distance of the axes without backlash of two profile-shifted gears, m.
 * inv(aw) = inv(a) + 2 tan(a) (x1 + x2) / (z1 + z2), then m (z1 + z2) cos(a) / (2 cos(aw)). Source: ISO 21771.
 *
 * @param module m
 * @param teeth z1 + z2
 * @param shift x1 + x2
 * @param angle pressure angle of the cutter, rad
 */
export function shiftedDistance(module: number, teeth: number, shift: number, angle: number = pressureAngle): number {
  const working = inverseInvolute(involute(angle) + (2 * Math.tan(angle) * shift) / teeth);
  return (0.5 * module * teeth * Math.cos(angle)) / Math.cos(working);
}

/**
 * How a pair of gears meshes, in m and rad; null when the axes stand too close or too far for the teeth to meet at all.
 * Contact ratio = [sqrt(ra1² - rb1²) + sqrt(ra2² - rb2²) - a sin(aw)] / (pi m cos(alpha)).
 * Source: ISO 21771; Maitra, Handbook of Gear Design; Bolsover, Profile shifted external spur gears.
 */
export function meshOf(pair: SpurPair): Mesh | null {
  const { module: m, pinionTeeth: z1, mainTeeth: z2, pinionShift: x1 = 0, mainShift: x2 = 0 } = pair;
  const angle = pair.angle ?? pressureAngle;
  const distance = pair.distance ?? shiftedDistance(m, z1 + z2, x1 + x2, angle);
  const cosine = (m * (z1 + z2) * Math.cos(angle)) / (2 * distance);
  const pinionTip = pair.pinionTip ?? m * (z1 + 2 + 2 * x1);
  const mainTip = pair.mainTip ?? m * (z2 + 2 + 2 * x2);
  if (!(cosine > 0 && cosine < 1) || distance >= (pinionTip + mainTip) / 2) return null;
  const workingAngle = Math.acos(cosine);
  const pinionBase = m * z1 * Math.cos(angle);
  const mainBase = m * z2 * Math.cos(angle);
  const approach = Math.sqrt(Math.max(0, pinionTip ** 2 - pinionBase ** 2)) / 2;
  const recess = Math.sqrt(Math.max(0, mainTip ** 2 - mainBase ** 2)) / 2;
  return {
    distance,
    workingAngle,
    pinionBase,
    mainBase,
    pinionWorking: (2 * distance * z1) / (z1 + z2),
    mainWorking: (2 * distance * z2) / (z1 + z2),
    contactRatio: (approach + recess - distance * Math.sin(workingAngle)) / (Math.PI * m * Math.cos(angle)),
    undercut: z1 < undercutLimit(angle) * (1 - x1),
  };
}
