/** What goes into a rotor model and what comes out of it. */

/** How a rotor is flown. */
export interface RotorState {
  /** Speed omega, rad/s. */
  readonly speed: number;
  /** Collective pitch at the geometry's pitch station, rad. */
  readonly collective: number;
  /** Speed along the axis, m/s; climb positive. Default 0. */
  readonly climb?: number;
}

/** How finely and with which wake a rotor is worked out. */
export interface RotorOptions {
  /** Annuli. Default 16. */
  readonly count?: number;
  /** Speed of the far wake over that in the disc, in hover. Default 1.64, as smoke shows; momentum theory has 2. */
  readonly wake?: number;
}

/** What a rotor does in one state. SI; coefficients on rho pi R^2 (omega R)^2. */
export interface RotorResult {
  /** N, along the axis, up positive. */
  readonly thrust: number;
  /** N m at the shaft. */
  readonly torque: number;
  /** W; climb, induced and profile power add up to it. */
  readonly power: number;
  readonly climbPower: number;
  readonly inducedPower: number;
  readonly profilePower: number;
  /** Mean over the disc of the axial induced velocity, m/s; down positive. */
  readonly inducedVelocity: number;
  /** Ideal over real power in hover; null where no thrust is made, or in climb and descent. */
  readonly figureOfMerit: number | null;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
  /** Blade area over disc area, thrust weighted. */
  readonly solidity: number;
  readonly tipSpeed: number;
  readonly tipMach: number;
  /** On the tip's speed and chord. */
  readonly tipReynolds: number;
  /** Share of the blade, weighted with radius squared, on which the flow has separated: 0 to 1. */
  readonly stalledShare: number;
}

/** One annulus, for plots. Angles in rad, per-metre figures per metre of radius. */
export interface Annulus {
  readonly radius: number;
  readonly chord: number;
  readonly pitch: number;
  readonly inflow: number;
  readonly attack: number;
  readonly lift: number;
  readonly drag: number;
  readonly reynolds: number;
  readonly mach: number;
  readonly inducedVelocity: number;
  readonly swirlVelocity: number;
  readonly thrustPerMetre: number;
  readonly torquePerMetre: number;
  readonly separated: number;
}
