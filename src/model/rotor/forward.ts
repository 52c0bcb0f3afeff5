/** Level flight: what the main rotor takes against speed, from its own hover figures. SI. */
import { discArea, idealHoverPower, inducedVelocity } from "../momentum.ts";
import { relation } from "../relation.ts";
import type { Rotor } from "./bemt.ts";
import { polarAt, type Section } from "./section.ts";
import { collectiveForThrust } from "./solve.ts";

/** Growth of profile power with advance ratio squared: Stepniewski and Keys, Rotary-Wing Aerodynamics (4.65 by others). */
const profileGrowth = 4.7;

const airspeedTerm = { name: "airspeed", symbol: "V", unit: "m/s" };
const tipTerm = { name: "tip speed", symbol: "\\Omega R", unit: "m/s" };

/** Airspeed over tip speed. */
export const advanceRatio = relation({
  name: "advance ratio",
  symbol: "\\mu",
  unit: "",
  terms: { airspeed: airspeedTerm, tipSpeed: tipTerm },
  formula: (t) => `\\frac{${t.airspeed}}{${t.tipSpeed}}`,
  of: (v) => v.airspeed / v.tipSpeed,
  assumes: "The disc lies almost flat.",
  source: "definition",
});

/** Mach number of the tip that moves against the wind of flight. */
export const advancingTipMach = relation({
  name: "Mach number of the advancing tip",
  symbol: "M_{at}",
  unit: "",
  terms: {
    tipSpeed: tipTerm,
    airspeed: airspeedTerm,
    soundSpeed: { name: "speed of sound", symbol: "a", unit: "m/s" },
  },
  formula: (t) => `\\frac{${t.tipSpeed} + ${t.airspeed}}{${t.soundSpeed}}`,
  of: (v) => (v.tipSpeed + v.airspeed) / v.soundSpeed,
  assumes: "The disc lies almost flat.",
  source: "definition",
});

/** Induced velocity in level flight, after Glauert. */
export const levelInducedVelocity = relation({
  name: "induced velocity in level flight",
  symbol: "v_i",
  unit: "m/s",
  terms: { hoverVelocity: { name: "induced velocity in hover", symbol: "v_h", unit: "m/s" }, airspeed: airspeedTerm },
  equation: (t, result) => `${result}\\,\\sqrt{${t.airspeed}^2 + ${result}^2} = ${t.hoverVelocity}^2`,
  // Written so that no two large numbers are subtracted in fast flight.
  of: ({ hoverVelocity: h, airspeed: v }) =>
    h === 0 ? 0 : (h * h) / Math.sqrt((v * v) / 2 + Math.sqrt(v ** 4 / 4 + h ** 4)),
  assumes: "The rotor works like a wing of its own span; the disc lies almost flat. Slow flight: 10 % too low.",
  source: "H. Glauert, ARC R&M 1111 (1926)",
});

const dragTerms = {
  density: { name: "air density", symbol: "\\rho", unit: "kg/m³" },
  airspeed: airspeedTerm,
  dragArea: { name: "drag area", symbol: "f", unit: "m²" },
} as const;

/** Drag of all that doesn't lift. */
export const airframeDrag = relation({
  name: "drag of the airframe",
  symbol: "D",
  unit: "N",
  terms: dragTerms,
  formula: (t) => `\\tfrac{1}{2} \\times ${t.density} \\times ${t.airspeed}^2 \\times ${t.dragArea}`,
  of: (v) => 0.5 * v.density * v.airspeed ** 2 * v.dragArea,
  assumes: "The drag area doesn't change with attitude.",
  source: "definition of the drag area",
});

/** Power of that drag. */
export const parasitePower = relation({
  name: "parasite power",
  symbol: "P_p",
  unit: "W",
  terms: dragTerms,
  formula: (t) => `\\tfrac{1}{2} \\times ${t.density} \\times ${t.airspeed}^3 \\times ${t.dragArea}`,
  of: (v) => airframeDrag(v) * v.airspeed,
  assumes: "The drag area doesn't change with attitude.",
  source: "definition of the drag area",
});

/** A machine in level flight. */
export interface Craft {
  /** N */
  readonly weight: number;
  /** Of the main rotor, m. */
  readonly radius: number;
  /** m/s */
  readonly tipSpeed: number;
  /** Of the air, kg/m3. */
  readonly density: number;
  /** m2 */
  readonly dragArea: number;
  /** Real over ideal induced power, no unit. */
  readonly inducedFactor: number;
  /** Profile power in hover, W. */
  readonly profilePower: number;
}

/** Main rotor power in level flight by its causes, W. */
export interface LevelPower {
  readonly induced: number;
  readonly profile: number;
  readonly parasite: number;
  readonly total: number;
  /** N: weight and drag together. */
  readonly thrust: number;
  readonly advanceRatio: number;
}

/**
 * Main rotor power at an airspeed: kappa T v_i + P_0 (1 + 4.7 mu^2) + rho V^3 f / 2, with v_i by Glauert.
 *
 * @param craft the machine, SI
 * @param airspeed m/s, 0 or more
 * @returns W by causes. Errors: 15 %; too low above mu = 0.35, where blades stall and shocks form.
 * Source: Leishman, Principles of Helicopter Aerodynamics, ch. 5; Stepniewski and Keys, Rotary-Wing Aerodynamics.
 */
export function levelPower(craft: Craft, airspeed: number): LevelPower {
  const { weight, radius, tipSpeed, density, dragArea, inducedFactor, profilePower } = craft;
  const drag = airframeDrag({ density, airspeed, dragArea });
  const thrust = Math.hypot(weight, drag);
  const ratio = advanceRatio({ airspeed, tipSpeed });
  const hoverVelocity = inducedVelocity(thrust, 0, density, discArea({ radius }));
  const induced = inducedFactor * thrust * levelInducedVelocity({ hoverVelocity, airspeed });
  const profile = profilePower * (1 + profileGrowth * ratio * ratio);
  const parasite = parasitePower({ density, airspeed, dragArea });
  return { induced, profile, parasite, total: induced + profile + parasite, thrust, advanceRatio: ratio };
}

/**
 * A machine in level flight from its main rotor in hover: the rotor's own induced factor and profile power.
 *
 * @param rotor main rotor, `fly` called at its head speed without climb
 * @param weight N
 * @param dragArea m2
 * @returns the craft, or null where the rotor cannot hover. Units: SI. Source: definition.
 */
export function craftOf(rotor: Rotor, weight: number, dragArea: number): Craft | null {
  const found = collectiveForThrust(rotor, weight);
  if (!found.ok || !(weight > 0)) return null;
  const { radius } = rotor.blade.geometry;
  const { density } = rotor;
  return {
    weight,
    radius,
    tipSpeed: rotor.speed * radius,
    density,
    dragArea,
    inducedFactor: rotor.inducedPower / idealHoverPower({ thrust: weight, density, area: discArea({ radius }) }),
    profilePower: rotor.profilePower,
  };
}

/**
 * How far the retreating blades are from stall: 1 - C_l / C_l,max, with the mean lift coefficient that the slower side
 * needs to carry its half, C_l = 6 (CT / sigma) / (1 - mu)^3, and the greatest that the section gives at that speed.
 *
 * @param section blade section
 * @param state CT / sigma, advance ratio, and Reynolds and Mach number of the tip in hover, no units
 * @returns 1 far from stall, 0 at its onset, negative beyond; null at mu = 1 and more. Errors: 0.15.
 * Source: from memory of Gessow and Myers, Aerodynamics of the Helicopter; the form is ours.
 */
export function retreatingMargin(
  section: Section,
  state: {
    readonly loading: number;
    readonly advanceRatio: number;
    readonly tipReynolds: number;
    readonly tipMach: number;
  },
): number | null {
  const slower = 1 - state.advanceRatio;
  if (!(slower > 0)) return null;
  const needed = (6 * Math.abs(state.loading)) / slower ** 3;
  let most = 0;
  for (let angle = 0.05; angle < 0.4; angle += 0.005) {
    most = Math.max(most, polarAt(section, angle, state.tipReynolds * slower, state.tipMach * slower).lift);
  }
  return 1 - needed / most;
}
