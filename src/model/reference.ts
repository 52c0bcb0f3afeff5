/**
 * The reference that a controller learns, and the head speeds it makes of throttle settings. A throttle is 0 to 1; any
 * unit of speed will do, as long as it is one and the same.
 */
import { relation } from "./relation.ts";

/** How a reference is learned: common practice, no source. Throttle 0 to 1; seconds. */
export const learning = { throttle: 0.5, secondsLow: 15, secondsHigh: 20 } as const;

/** Throttle range in which a governor can work both ways: common practice, no source. */
export const usableBand = { low: 0.6, high: 0.9 } as const;

const throttle = { name: "throttle", symbol: "\\tau", unit: "" };
const reference = { name: "learned reference", symbol: "n_r", unit: "rad/s" };
const gearRatio = { name: "gear ratio", symbol: "G", unit: "" };

/** Motor speed that the controller takes as full throttle. */
export const learnedReference = relation({
  name: "learned reference",
  symbol: "n_r",
  unit: "rad/s",
  terms: {
    motorSpeed: { name: "motor speed held while it learned", symbol: "n_l", unit: "rad/s" },
    throttle: { name: "throttle held while it learned", symbol: "\\tau_l", unit: "" },
  },
  formula: (t) => `\\frac{${t.motorSpeed}}{${t.throttle}}`,
  of: (v) => v.motorSpeed / v.throttle,
  assumes: "The controller takes speed as proportional to throttle. Learned with light pitch, for 15 to 20 s.",
  source: "definition; common practice",
});

/** Head speed that a throttle asks for. */
export const setSpeed = relation({
  name: "set head speed",
  symbol: "n",
  unit: "rad/s",
  terms: { throttle, reference, gearRatio },
  formula: (t) => `${t.throttle} \\times \\frac{${t.reference}}{${t.gearRatio}}`,
  of: (v) => (v.throttle * v.reference) / v.gearRatio,
  assumes: "The governor holds the speed; whether it can is another question.",
  source: "definition",
});

/** Throttle that asks for a head speed. */
export const throttleForSpeed = relation({
  name: "throttle",
  symbol: "\\tau",
  unit: "",
  terms: { headSpeed: { name: "head speed wanted", symbol: "n", unit: "rad/s" }, reference, gearRatio },
  formula: (t) => `\\frac{${t.headSpeed} \\times ${t.gearRatio}}{${t.reference}}`,
  of: (v) => (v.headSpeed * v.gearRatio) / v.reference,
  assumes: "The reference was learned with the parts that are fitted now.",
  source: "definition",
});

/**
 * The step of a transmitter that lies nearest to a throttle, whether or not it can be entered; a tie goes up. Unit: ratio.
 * Source: definition.
 *
 * @param exact throttle, 0 to 1
 * @param stepsPerWhole how many steps the transmitter has from 0 to 100 % (100: whole per cent)
 */
export const throttleStep = (exact: number, stepsPerWhole = 100): number =>
  Math.round(exact * stepsPerWhole) / stepsPerWhole;

/** The same throttle as a transmitter takes it, in whole per cent; above 100 it can't be entered. */
export const wholeThrottle = relation({
  name: "throttle in whole per cent",
  symbol: "\\tau",
  unit: "",
  terms: throttleForSpeed.terms,
  equation: (t, entered) => `${entered} \\approx \\frac{${t.headSpeed} \\times ${t.gearRatio}}{${t.reference}}`,
  of: (v) => throttleStep(throttleForSpeed(v)),
  assumes: "Rounded to whole per cent. The reference was learned with the parts that are fitted now.",
  source: "definition",
});

/** The same step, or null where it lies outside 0 to 1 and can't be entered. Unit: ratio. Source: definition. */
export function throttleEntered(exact: number, stepsPerWhole = 100): number | null {
  const entered = throttleStep(exact, stepsPerWhole);
  return entered >= 0 && entered <= 1 ? entered : null;
}

export type BandPlace = "below" | "inside" | "above";

/**
 * Where a throttle (ratio, 0 to 1) lies against the usable band; its ends belong to it.
 * Source: common practice for the band of 60 to 90 %.
 */
export function bandPlace(value: number, low: number = usableBand.low, high: number = usableBand.high): BandPlace {
  // A throttle worked out from a rounded speed may miss the band's end by rounding alone.
  if (value < low - 1e-9) return "below";
  return value > high + 1e-9 ? "above" : "inside";
}

/** The parts that a reference depends on. Those of the gears change what a mode does; the others what it can hold. */
export interface FittedParts {
  readonly cells: number;
  readonly chemistry: string;
  /** Speed constant of the motor (Kv), any one unit. */
  readonly speedConstant: number;
  readonly pinionTeeth: number;
  readonly mainTeeth: number;
  readonly bladeCount: number;
  readonly diameter: number;
  readonly chord: number;
  /** Null: none; undefined: nobody knows. */
  readonly secondStage: SecondStage | null | undefined;
}

interface SecondStage {
  readonly driverTeeth: number;
  readonly drivenTeeth: number;
}

/**
 * Which parts differ from those fitted when the controller learned; none: the reference is fresh. Numbers are the same
 * within a millionth (ratio); a part that nobody knows of doesn't differ. Source: definition.
 */
export function differingParts(now: FittedParts, then: FittedParts): (keyof FittedParts)[] {
  const differs = <T>(a: T, b: T): boolean =>
    typeof a === "number" && typeof b === "number" ? Math.abs(a - b) > 1e-6 * Math.abs(b) : a !== b;
  const stageDiffers = (a: FittedParts["secondStage"], b: FittedParts["secondStage"]): boolean => {
    if (a === undefined || b === undefined) return false;
    if (a === null || b === null) return a !== b;
    return differs(a.driverTeeth, b.driverTeeth) || differs(a.drivenTeeth, b.drivenTeeth);
  };
  return (Object.keys(then) as (keyof FittedParts)[]).filter((key) =>
    key === "secondStage" ? stageDiffers(now[key], then[key]) : differs(now[key], then[key]),
  );
}

/**
 * By how much a throttle's head speed changes, as a share, when the gears change under a reference that stays: the
 * controller goes on holding the same motor speed, so the head speed goes with 1 / G. Other parts (motor, pack, blades)
 * leave the set speed as it is and change what can be held. Unit: ratio. Source: definition of the set speed.
 *
 * @param ratioThen gear ratio when it was learned
 * @param ratioNow gear ratio now
 */
export const staleChange = (ratioThen: number, ratioNow: number): number => ratioThen / ratioNow - 1;
