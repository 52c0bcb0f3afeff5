/** What the controller carries at each place of the band: by throttle with the gears as they are, and by the gears at one head speed. */
import { rotorEnergy } from "#model/blades";
import { rpm } from "#model/constants";
import { bufferCurrent } from "#model/currents";
import { commutationPeriod, dutyStepSpeed } from "#model/loop";
import { noLoadSpeed } from "#model/motor";
import { type OperatingPoint, operatingPoint } from "#model/powertrain";
import { pinionsAround } from "./curves-gears.ts";
import { hoverCurve } from "./curves-hover.ts";
import { powerCurves } from "./curves-power.ts";
import type { Figures } from "./figures.ts";
import { gearingBy } from "./gearing.ts";
import { keeper } from "./kept.ts";
import type { LoadName } from "./rig.ts";

/** Currents of the chain in A; all lists are of one length. Null where the load can't be held. */
export interface Carried {
  /** Through the motor and the controller's switches. */
  readonly motor: readonly (number | null)[];
  readonly pack: readonly (number | null)[];
  /** Ripple in the capacitor at the controller's input. */
  readonly buffer: readonly (number | null)[];
  /** W, the motor's current squared times the controller's resistance. */
  readonly controllerHeat: readonly (number | null)[];
}

const carriedBy = (points: readonly (OperatingPoint | null)[]): Carried => ({
  motor: points.map((point) => point?.motorCurrent ?? null),
  pack: points.map((point) => point?.packCurrent ?? null),
  buffer: points.map((point) => point && bufferCurrent({ current: point.motorCurrent, duty: Math.min(1, point.duty) })),
  controllerHeat: points.map((point) => point?.controllerHeat ?? null),
});

export interface CarriedByThrottle extends Carried {
  /** Per cent of the reference. */
  readonly throttles: readonly number[];
}

/** Up to this much of the reference: a little more than a mode can ask for. */
const TOP = 1.05;
/** The curve's end in the logarithm of the speed: rounded up, so that it seldom moves. */
const END = 0.05;

interface Asked {
  /** rpm */
  readonly speeds: readonly number[];
  /** N m */
  readonly torques: readonly (number | null)[];
}

const askings = keeper<Asked>();

/** What full pitch asks for: kept while the rotors, their place and that pitch stay the same. */
function fullPitch(figures: Figures, mode: number, reference: number): Asked {
  const { mainRotor, tailRotor, place, gears, modes } = figures.machine;
  const top = Math.exp(Math.ceil(Math.log(TOP * reference) / END) * END);
  const keys = [mainRotor, tailRotor, place, gears.tailRatio, modes[mode]?.collectiveMaxDeg, top];
  return askings(keys, () => {
    const { speeds, asked } = powerCurves(figures, mode, top);
    return { speeds, torques: asked.map((watts, i) => watts / ((speeds[i] ?? 1) * rpm)) };
  });
}

/**
 * What the chain carries against throttle, A and W, in hover or at a mode's full pitch, with the gears as they are. Null
 * where there is no reference, or no head speed hovers. Source: the rotor model, `operatingPoint`, `bufferCurrent`.
 */
export function carriedByThrottle(figures: Figures, load: LoadName, mode: number): CarriedByThrottle | null {
  const reference = figures.number("learned-head-speed");
  if (reference === null) return null;
  const { train } = figures.rig;
  const asked = load === "hover" ? hoverCurve(figures) : fullPitch(figures, mode, reference);
  if (!asked) return null;
  const kept = asked.speeds.flatMap((speed, i) =>
    speed <= TOP * reference ? [{ speed, torque: asked.torques[i] ?? null }] : [],
  );
  const points = kept.map(({ speed, torque }) => (torque === null ? null : operatingPoint(train, speed * rpm, torque)));
  return { throttles: kept.map(({ speed }) => (100 * speed) / reference), ...carriedBy(points) };
}

/** Where the motor's current is least. */
export interface LeastCurrent {
  /** Per cent. */
  readonly throttle: number;
  /** A */
  readonly current: number;
  /** Whether the current grows again below: not where the curve only begins there. */
  readonly turns: boolean;
}

/** The throttle of the least motor current, per cent and A, to a step of the curve; null where there is none. Source: `carriedByThrottle`. */
export function leastCurrent({ throttles, motor }: CarriedByThrottle): LeastCurrent | null {
  const held = motor.flatMap((current, i) => (current === null ? [] : [{ current, throttle: throttles[i] ?? 0 }]));
  const [first] = held;
  if (!first) return null;
  const least = held.reduce((best, each) => (each.current < best.current ? each : best), first);
  return { ...least, turns: least !== first };
}

export interface CarriedByPinion extends Carried {
  readonly pinions: readonly number[];
  /** Per cent that the mode asks for after learning again; null where the motor doesn't turn. */
  readonly throttles: readonly (number | null)[];
  /** W in copper, iron and bearings. */
  readonly motorHeat: readonly (number | null)[];
}

/** What the chain carries in hover at a mode's head speed, A and W, against the pinion that turns it. Source: `gearingBy`. */
export function carriedByPinion(figures: Figures, mode: number): CarriedByPinion {
  const { gears } = figures.rig.parts;
  const pinions = pinionsAround(gears.pinionTeeth);
  const all = pinions.map((pinionTeeth) => gearingBy(figures, mode, { ...gears, pinionTeeth }));
  return {
    pinions,
    throttles: all.map((gearing) => gearing.number("throttle")),
    motorHeat: all.map((gearing) => gearing.heats("hover")?.motor ?? null),
    ...carriedBy(all.map((gearing) => gearing.point("hover"))),
  };
}

/** How finely a controller doses and how freshly it reads, and what the rotor stores, at one head speed. */
export interface Grip {
  /** Head speed of one duty step, rpm, and as a share of the head speed, per cent. Null where the motor doesn't turn. */
  readonly step: number | null;
  readonly stepShare: number | null;
  /** Time of one electrical turn, ms: how long a reading of the speed takes. */
  readonly reading: number;
  /** Energy in the blades, J; null for a blade that can't be. */
  readonly energy: number | null;
}

/** What the governor has to work with at a head speed in rpm. Units: rpm, per cent, ms, J. Source: `dutyStepSpeed`, `commutationPeriod`. */
export function gripAt({ rig }: Figures, headRpm: number): Grip {
  const { train, parts, bladeInertia, ratio } = rig;
  const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
  const fullSpeed = noLoadSpeed({ ...train, speedConstant: parts.motor.speedConstant, resistance }) / rpm;
  const step = fullSpeed > 0 ? dutyStepSpeed({ fullSpeed, steps: parts.controller.dutySteps }) : null;
  const speed = headRpm * rpm;
  return {
    step,
    stepShare: step === null ? null : (100 * step) / headRpm,
    reading: 1000 * commutationPeriod({ motorSpeed: speed * ratio, poles: parts.motor.poles }),
    energy:
      bladeInertia === null ? null : rotorEnergy({ blades: parts.mainRotor.blades, inertia: bladeInertia, speed }),
  };
}
