import { type Section, sectionCoefficients } from "./section.ts";

/** A rotor as it is built. SI; twist and collective in rad. */
export interface RotorGeometry {
  /** Number of blades, 1 to 8. */
  readonly blades: number;
  /** Radius R to the tip, m. */
  readonly radius: number;
  /** Radius at which the blade's lifting part begins, m. */
  readonly rootCutout: number;
  /** Chord at the cut-out and at the tip, m; straight between them. */
  readonly chordRoot: number;
  readonly chordTip: number;
  /** Pitch at the tip less pitch at the cut-out, rad; straight between them; washout is negative. Default 0. */
  readonly twist?: number;
  /** Radius over R at which the collective is measured. Default 0.75, as published tests do. */
  readonly pitchStation?: number;
  readonly section: Section;
  /** In place of the straight taper: chord in m at radius over R. */
  readonly chordAt?: (x: number) => number;
  /** In place of the straight twist: pitch in rad at radius over R, over the collective. */
  readonly twistAt?: (x: number) => number;
}

/** Air that a rotor turns in. */
export interface RotorAir {
  /** Density, kg/m3. */
  readonly density: number;
  /** Dynamic viscosity, Pa s. */
  readonly viscosity: number;
  /** Speed of sound, m/s. */
  readonly soundSpeed: number;
}

/**
 * Reynolds number of a blade, Re = rho w c / mu, no unit: how little the air sticks to it.
 * Source: definition; White, Fluid Mechanics, ch. 5.
 *
 * @param air density (kg/m3) and viscosity (Pa s)
 * @param flow speed of the air past the blade, m/s
 * @param chord m
 */
export const reynoldsNumber = (
  { density, viscosity }: Pick<RotorAir, "density" | "viscosity">,
  flow: number,
  chord: number,
): number => (density * flow * chord) / viscosity;

/** A blade cut into annuli: everything that does not depend on how it is flown. */
export interface Blade {
  readonly geometry: RotorGeometry;
  readonly count: number;
  /** Radius of each station, m. */
  readonly radius: Float64Array;
  /** Gauss weight of each annulus: its width, m. */
  readonly width: Float64Array;
  readonly chord: Float64Array;
  /** Pitch over the collective, rad. */
  readonly twist: Float64Array;
  /** sigma' / 4: B c / (8 pi r). */
  readonly load: Float64Array;
  /** Exponents of tip and root loss times the sine of the inflow angle. */
  readonly tip: Float64Array;
  readonly root: Float64Array;
  /** Blade area over disc area, weighted with radius squared as thrust is. */
  readonly solidity: number;
  readonly coefficients: Float64Array;
}

/** Annuli by default: thrust and torque are then within 0.15 % of those of 200. */
export const annuli = 16;

/**
 * Nodes and weights of Gauss and Legendre on -1..1 by Newton's method.
 *
 * @param n how many
 * @returns nodes and weights, no unit. Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29.
 */
export function gaussNodes(n: number): { readonly nodes: Float64Array; readonly weights: Float64Array } {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= n; k++) [p, before] = [((2 * k - 1) * x * p - (k - 1) * before) / k, p];
      slope = (n * (x * p - before)) / (x * x - 1);
      const shift = p / slope;
      x -= shift;
      if (Math.abs(shift) < 1e-15) break;
    }
    nodes[n - 1 - i] = x;
    weights[n - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/**
 * Cuts a blade into annuli at Gauss's stations, which lie closer together towards root and tip, where the losses are.
 *
 * @param geometry the rotor, m and rad
 * @param count number of annuli
 * @returns stations and what is known of each, SI. Source: definition.
 */
export function cutBlade(geometry: RotorGeometry, count: number = annuli): Blade {
  const { blades, radius: tipRadius, rootCutout, chordRoot, chordTip, twist = 0, pitchStation = 0.75 } = geometry;
  const rootX = rootCutout / tipRadius;
  const along = (x: number): number => (x - rootX) / (1 - rootX);
  const chordAt = geometry.chordAt ?? ((x: number) => chordRoot + (chordTip - chordRoot) * along(x));
  const twistAt = geometry.twistAt ?? ((x: number) => twist * (along(x) - along(pitchStation)));
  const { nodes, weights } = gaussNodes(count);
  const half = (tipRadius - rootCutout) / 2;
  const radius = nodes.map((x) => rootCutout + half * (1 + x));
  const width = weights.map((w) => w * half);
  const chord = radius.map((r) => chordAt(r / tipRadius));
  let weighted = 0;
  for (let i = 0; i < count; i++) weighted += chord[i]! * radius[i]! ** 2 * width[i]!;
  return {
    geometry,
    count,
    radius,
    width,
    chord,
    twist: radius.map((r) => twistAt(r / tipRadius)),
    load: radius.map((r, i) => (blades * chord[i]!) / (8 * Math.PI * r)),
    tip: radius.map((r) => (blades * (tipRadius - r)) / (2 * r)),
    // A blade that begins on the axis has no root vortex to lose by: its root vortex is the hub's.
    root: radius.map((r) =>
      rootCutout > 0 ? (blades * (r - rootCutout)) / (2 * rootCutout) : Number.POSITIVE_INFINITY,
    ),
    solidity: (3 * blades * weighted) / (Math.PI * tipRadius ** 4),
    coefficients: new Float64Array(count * sectionCoefficients),
  };
}
