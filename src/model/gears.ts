/** Gears as ratios: motor to main rotor to tail rotor, and which teeth meet. SI throughout. */
import { relation } from "./relation.ts";

/** The gear train from the motor to the main rotor. */
export interface GearTrain {
  readonly pinionTeeth: number;
  readonly mainTeeth: number;
  /** A further pair of gears between the two, if there is one. */
  readonly secondStage: { readonly driverTeeth: number; readonly drivenTeeth: number } | null;
}

const pinion = { name: "teeth of the pinion", symbol: "z_1", unit: "" };
const main = { name: "teeth of the main gear", symbol: "z_2", unit: "" };

/** Motor turns for one turn of the rotor, one pair of gears. */
export const gearRatio = relation({
  name: "gear ratio",
  symbol: "G",
  unit: "",
  terms: { pinionTeeth: pinion, mainTeeth: main },
  formula: (t) => `\\frac{${t.mainTeeth}}{${t.pinionTeeth}}`,
  of: (v) => v.mainTeeth / v.pinionTeeth,
  assumes: "Every tooth counted; no belt slip.",
  source: "definition",
});

/** Motor turns for one turn of the rotor, two pairs of gears. */
export const twoStageRatio = relation({
  name: "gear ratio",
  symbol: "G",
  unit: "",
  terms: {
    pinionTeeth: pinion,
    mainTeeth: main,
    driverTeeth: { name: "driving teeth of the second pair", symbol: "z_3", unit: "" },
    drivenTeeth: { name: "driven teeth of the second pair", symbol: "z_4", unit: "" },
  },
  formula: (t) => `\\frac{${t.mainTeeth}}{${t.pinionTeeth}} \\times \\frac{${t.drivenTeeth}}{${t.driverTeeth}}`,
  of: (v) => (v.mainTeeth / v.pinionTeeth) * (v.drivenTeeth / v.driverTeeth),
  assumes: "Every tooth counted; no belt slip.",
  source: "definition",
});

/** Gear ratio of a train of one or two pairs, motor turns per rotor turn (dimensionless). Source: definition. */
export function ratioOf({ pinionTeeth, mainTeeth, secondStage }: GearTrain): number {
  const first = mainTeeth / pinionTeeth;
  return secondStage ? (first * secondStage.drivenTeeth) / secondStage.driverTeeth : first;
}

/** Speed of the tail rotor. */
export const tailSpeed = relation({
  name: "tail rotor speed",
  symbol: "n_t",
  unit: "rad/s",
  terms: {
    headSpeed: { name: "head speed", symbol: "n", unit: "rad/s" },
    tailRatio: { name: "tail turns for one of the main rotor", symbol: "G_t", unit: "" },
  },
  formula: (t) => `${t.headSpeed} \\times ${t.tailRatio}`,
  of: (v) => v.headSpeed * v.tailRatio,
  assumes: "The tail is driven by the main shaft, not by a motor of its own. Any unit of speed will do.",
  source: "definition",
});

/** Speed at which the teeth pass the point where they meet. */
export const pitchLineSpeed = relation({
  name: "pitch-line speed",
  symbol: "v",
  unit: "m/s",
  terms: {
    module: { name: "module", symbol: "m", unit: "m" },
    pinionTeeth: pinion,
    motorSpeed: { name: "motor speed", symbol: "\\omega", unit: "rad/s" },
  },
  formula: (t) => `\\frac{${t.module} \\times ${t.pinionTeeth}}{2} \\times ${t.motorSpeed}`,
  of: (v) => 0.5 * v.module * v.pinionTeeth * v.motorSpeed,
  assumes: "Standard gears on their standard centre distance.",
  source: "v = π d n: any gear handbook",
});

/** How often the same two teeth meet. */
export interface ToothMeeting {
  /** Greatest common divisor of the two counts: 1 = every tooth meets every other (a hunting pair). */
  readonly common: number;
  /** Turns of each gear until the same two teeth meet again. */
  readonly pinionTurns: number;
  readonly gearTurns: number;
}

/**
 * Which teeth meet: after lcm(z1, z2) teeth the same two are in mesh again. Units: turns, dimensionless.
 * Null for tooth counts that aren't whole numbers from 1 up.
 * Source: Foiles, Gear frequencies using the Euclidean algorithm, The Vibration Institute.
 */
export function toothMeeting(pinionTeeth: number, mainTeeth: number): ToothMeeting | null {
  if (!(Number.isInteger(pinionTeeth) && Number.isInteger(mainTeeth) && pinionTeeth > 0 && mainTeeth > 0)) return null;
  let a = pinionTeeth;
  let b = mainTeeth;
  while (b !== 0) [a, b] = [b, a % b];
  return { common: a, pinionTurns: mainTeeth / a, gearTurns: pinionTeeth / a };
}

/** Turns of the main gear until the same two teeth meet again. */
export const meetingTurns = relation({
  name: "turns of the main gear until the same teeth meet",
  symbol: "N",
  unit: "",
  terms: {
    pinionTeeth: pinion,
    common: { name: "greatest number that divides both tooth counts", symbol: "c", unit: "" },
  },
  formula: (t) => `\\frac{${t.pinionTeeth}}{${t.common}}`,
  of: (v) => v.pinionTeeth / v.common,
  assumes: "Both counts are whole numbers.",
  source: "Foiles, Gear frequencies using the Euclidean algorithm, The Vibration Institute",
});
