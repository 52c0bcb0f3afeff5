/** What other gears make of a machine: every figure that a choice of pinion turns on, all else as the machine has it. */
import { tipSpeed } from "#model/blades";
import { rpm } from "#model/constants";
import { endurance } from "#model/endurance";
import { type GearTrain, ratioOf } from "#model/gears";
import { electricalSpeed } from "#model/poles";
import { type OperatingPoint, operatingPoint, type Powertrain } from "#model/powertrain";
import { throttleForSpeed } from "#model/reference";
import { ceilingAt } from "#model/steady";
import type { Figures } from "./figures.ts";
import { learnedWith } from "./learned-anew.ts";
import { isOver } from "./limits.ts";
import type { LoadName, Rig } from "./rig.ts";

/** What a map of gears can show. */
export const gearQuantities = [
  "speed",
  "room",
  "throttle",
  "current",
  "hover-heat",
  "full-heat",
  "duration",
  "tip",
] as const;
export type GearQuantity = (typeof gearQuantities)[number];

export const gearUnits: Readonly<Record<GearQuantity, string>> = {
  speed: "rpm",
  room: "rpm",
  throttle: "percent",
  current: "A",
  "hover-heat": "W",
  "full-heat": "W",
  duration: "min",
  tip: "m/s",
};

/** Whether a mode's head speed is held: at full pitch, in hover only, or not even there. */
export type Held = "full-pitch" | "hover" | "not";

/** W: the current's heat in the controller, and the motor's in copper, iron and bearings. */
export interface Heats {
  readonly controller: number;
  readonly motor: number;
}

/** What one gear ratio makes of one flight mode. Each figure is worked out when it is asked for. */
export interface Gearing {
  readonly ratio: number;
  readonly held: Held;
  /** The motor or the controller's electrical side would turn faster at the set speed than it may. */
  readonly motorTooFast: boolean;
  /** In the unit of `gearUnits`; null where the machine can't do it. */
  readonly number: (quantity: GearQuantity) => number | null;
  /** The chain at the set speed; null where the load isn't held. */
  readonly point: (load: LoadName) => OperatingPoint | null;
  readonly heats: (load: LoadName) => Heats | null;
}

function throttleAt(figures: Figures, full: Powertrain, speed: number): number | null {
  const learned = learnedWith(figures, full);
  return (
    learned && 100 * throttleForSpeed({ headSpeed: speed, reference: learned.reference, gearRatio: full.gearRatio })
  );
}

const heatsOf = (point: OperatingPoint | null): Heats | null =>
  point && { controller: point.controllerHeat, motor: point.copperHeat + point.noLoadHeat };

const sum = (heats: Heats | null): number | null => heats && heats.controller + heats.motor;

const tooFast = ({ parts: { motor, controller } }: Rig, motorSpeed: number): boolean =>
  isOver(motorSpeed, motor.ratedSpeed) ||
  isOver(electricalSpeed({ motorSpeed, poles: motor.poles }), controller.electricalSpeedLimit);

/**
 * A gear ratio in a machine, for one of its modes with the head speed kept. Units: `gearUnits`; `speed`,
 * `room` and `current` (through the motor) at the mode's full pitch, heats are those of motor and controller, `throttle` after
 * learning again, `tip` the fastest that full duty drives the tips at flat pitch. Errors: null where the machine can't do it. Source: the same relations as the figures.
 */
function gearingOf(figures: Figures, mode: number, ratio: number): Gearing {
  const { rig } = figures;
  const { parts } = rig;
  const speed = parts.modes[mode]?.headSpeed ?? 0;
  const train: Powertrain = { ...rig.train, gearRatio: ratio };
  const at = (load: LoadName): OperatingPoint | null => {
    const torque = figures.bearings.torque(load, mode);
    return torque === null ? null : operatingPoint(train, speed, torque);
  };
  const hover = at("hover");
  const full = at("full-pitch");
  const ceiling = (load: Parameters<typeof ceilingAt>[1], near?: number) => {
    const found = ceilingAt(train, load, near);
    return found.ok ? found.speed : null;
  };
  const inRpm = (value: number | null) => (value === null ? null : value / rpm);
  const number = (quantity: GearQuantity): number | null => {
    switch (quantity) {
      case "speed":
        return inRpm(ceiling(rig.load("full-pitch", mode), speed));
      case "room": {
        const most = ceiling(rig.load("full-pitch", mode), speed);
        return most === null ? null : (most - speed) / rpm;
      }
      case "throttle":
        return throttleAt(figures, { ...rig.trainAt(1), gearRatio: ratio }, speed);
      case "current":
        return full?.motorCurrent ?? null;
      case "hover-heat":
        return sum(heatsOf(hover));
      case "full-heat":
        return sum(heatsOf(full));
      case "duration": {
        const { capacity, charge } = parts.pack;
        const lasts = hover && endurance(train, speed, hover.torque, capacity, charge, rig.voltageAt);
        return lasts ? lasts.time / 60 : null;
      }
      case "tip": {
        const fastest = ceiling(rig.flat);
        return fastest === null ? null : tipSpeed({ speed: fastest, radius: parts.mainRotor.radius });
      }
    }
  };
  return {
    ratio,
    held: full && hover ? "full-pitch" : hover ? "hover" : "not",
    motorTooFast: tooFast(rig, speed * ratio),
    number,
    point: (load) => (load === "hover" ? hover : full),
    heats: (load) => heatsOf(load === "hover" ? hover : full),
  };
}

const known = new WeakMap<Figures, Map<string, Gearing>>();

/** A gearing by its teeth, kept with the figures: pairs of one ratio share it. Errors, units, source: as `gearingOf`. */
export function gearingBy(figures: Figures, mode: number, gears: GearTrain): Gearing {
  const kept = known.get(figures) ?? new Map<string, Gearing>();
  known.set(figures, kept);
  const ratio = ratioOf(gears);
  const key = `${mode} ${ratio.toPrecision(12)}`;
  let found = kept.get(key);
  if (!found) {
    found = gearingOf(figures, mode, ratio);
    kept.set(key, found);
  }
  return found;
}
