/** What the simulator of a flight needs to know of a machine: plain SI numbers and a few functions. */
import type { RotorMap, TailTorque } from "./rotor-map.ts";

export interface FlightPack {
  /** Open voltage of the whole pack at a charge from 0 to 1, V. */
  readonly openVoltage: (charge: number) => number;
  /** Charge of the full pack, C. */
  readonly capacity: number;
  /** Series resistance at once after a step, leads included, ohm. */
  readonly resistance: number;
  /** Resistance (ohm) and time constant (s) of the slow part of the sag. */
  readonly slowResistance: number;
  readonly slowTime: number;
  /** Charge at the start, 0 to 1. */
  readonly charge: number;
}

/** A part that warms up, to first order. */
export interface Warming {
  /** J/K */
  readonly heatCapacity: number;
  /** Heat given to the air for each kelvin above it, W/K. */
  readonly cooling: number;
  /** Temperature at the start, K. */
  readonly temperature: number;
}

export interface FlightMotor extends Warming {
  /** Torque constant, N m/A. */
  readonly constant: number;
  /** Winding resistance, ohm, at `resistanceTemperature`, K. */
  readonly resistance: number;
  readonly resistanceTemperature: number;
  /** A */
  readonly noLoadCurrent: number;
  /** kg m2 */
  readonly inertia: number;
  /** Magnets, even. */
  readonly poles: number;
}

export interface FlightController extends Warming {
  /** ohm */
  readonly resistance: number;
  /** Steps from no duty to full. */
  readonly dutySteps: number;
  /** Corrections in a second, Hz. */
  readonly loopRate: number;
  /** Duty for each unit of relative speed error (of the reference). */
  readonly proportionalGain: number;
  /** Duty for each second of unit relative speed error, 1/s. */
  readonly integralGain: number;
  readonly antiWindup: "none" | "clamping" | "back-calculation";
  /** Gain of the back-calculation, dimensionless: error taken back for each unit of duty beyond the limit. */
  readonly backGain: number;
  readonly lowestDuty: number;
  readonly highestDuty: number;
  /** Motor speed that 100 % throttle asks for, rad/s. */
  readonly reference: number;
  /** Time from rest to the set speed, s; and from the motor's speed to the set speed in a bail-out, s. */
  readonly startRamp: number;
  readonly bailOutRamp: number;
  /** Smallest step of the clock that times the commutation, s. */
  readonly clockStep: number;
}

/** Limits that a flight is held against; null where none is known. */
export interface FlightLimits {
  /** rad/s */
  readonly motorSpeed: number | null;
  /** Electrical speed (motor speed x poles / 2), rad/s. */
  readonly electricalSpeed: number | null;
  /** Blade maker's limit, rad/s. */
  readonly rotorSpeed: number | null;
  /** A */
  readonly packCurrent: number | null;
  /** K */
  readonly windingTemperature: number | null;
  readonly controllerTemperature: number | null;
}

export interface FlightMachine {
  readonly pack: FlightPack;
  readonly motor: FlightMotor;
  readonly controller: FlightController;
  /** Motor turns per rotor turn, and the share of the power that the gears pass on. */
  readonly gearRatio: number;
  readonly meshEfficiency: number;
  readonly rotor: {
    readonly map: RotorMap;
    /** m */
    readonly radius: number;
    /** Blades, hub and what turns with them, kg m2. */
    readonly inertia: number;
    /** Range of collective that the machine's links allow, rad. */
    readonly lowestCollective: number;
    readonly highestCollective: number;
  };
  readonly tail: TailTorque | null;
  /** kg */
  readonly mass: number;
  /**
   * Drag area against climb and fall, m2. A machine of the record brings that of forward flight, for want of another: seen
   * from above most have more, so climb and fall come out a little too fast.
   */
  readonly dragArea: number;
  /** kg/m3 */
  readonly airDensity: number;
  /** K */
  readonly airTemperature: number;
  readonly limits: FlightLimits;
}

/** Why a machine can't be flown, and the figure that says so. */
export interface Impossible {
  readonly what: string;
  readonly value: number;
}

/** The named numbers that must be above nothing; with those in `orZero` nothing itself will do. */
function figures(m: FlightMachine): {
  readonly above: Record<string, number>;
  readonly orZero: Record<string, number>;
} {
  const { pack, motor, controller, rotor } = m;
  return {
    above: {
      "pack's capacity": pack.capacity,
      "time constant of the sag": pack.slowTime,
      "motor's torque constant": motor.constant,
      "motor's inertia": motor.inertia,
      "motor's heat capacity": motor.heatCapacity,
      "motor's poles": motor.poles,
      "winding temperature": motor.temperature,
      "temperature of the resistance": motor.resistanceTemperature,
      "controller's heat capacity": controller.heatCapacity,
      "controller's temperature": controller.temperature,
      "governor's loop rate": controller.loopRate,
      "controller's duty steps": controller.dutySteps,
      "controller's clock step": controller.clockStep,
      "learned reference": controller.reference,
      "gear ratio": m.gearRatio,
      "mesh efficiency": m.meshEfficiency,
      "rotor radius": rotor.radius,
      "rotor's inertia": rotor.inertia,
      "machine's mass": m.mass,
      "air density": m.airDensity,
      "air temperature": m.airTemperature,
      "resistance of motor and controller": motor.resistance + controller.resistance,
      "open voltage of the pack": pack.openVoltage(Math.min(1, Math.max(0, pack.charge))),
      "range of duty": controller.highestDuty - controller.lowestDuty,
    },
    orZero: {
      "winding resistance": motor.resistance,
      "controller's resistance": controller.resistance,
      "pack's resistance": pack.resistance,
      "resistance of the sag": pack.slowResistance,
      "charge at the start": pack.charge,
      "no-load current": motor.noLoadCurrent,
      "motor's cooling": motor.cooling,
      "controller's cooling": controller.cooling,
      "proportional gain": controller.proportionalGain,
      "integral gain": controller.integralGain,
      "gain of the back-calculation": controller.backGain,
      "start ramp": controller.startRamp,
      "bail-out ramp": controller.bailOutRamp,
      "lowest duty": controller.lowestDuty,
      "drag area": m.dragArea,
      "room below full mesh efficiency": 1 - m.meshEfficiency,
      "room below full charge": 1 - pack.charge,
      "room below full duty": 1 - controller.highestDuty,
    },
  };
}

/**
 * The first figure of a machine with which no flight is possible (none, negative or not a number), or null: all SI units,
 * as each stands in `FlightMachine`. Source: definition; the equations of motion divide by these.
 */
export function impossible(machine: FlightMachine): Impossible | null {
  const { above, orZero } = figures(machine);
  for (const [what, value] of Object.entries(above)) {
    if (!(value > 0 && Number.isFinite(value))) return { what, value };
  }
  for (const [what, value] of Object.entries(orZero)) {
    if (!(value >= 0 && Number.isFinite(value))) return { what, value };
  }
  return null;
}
