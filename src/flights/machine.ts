/** A machine of the record as the simulator of flights takes it. */
import { type Figures, figuresOf } from "#figures/figures";
import { packCurrentLimit } from "#figures/limits";
import type { Machine } from "#machine/machine";
import { rpm, zeroCelsius } from "#model/constants";
import type { AntiWindup } from "#model/flight/governor";
import type { FlightMachine } from "#model/flight/machine";
import { mapOfLoad, type RotorMap, type TailTorque, tailTorqueOf } from "#model/flight/rotor-map";
import type { Mode } from "#model/flight/scenarios";
import { copperReference, torqueConstant } from "#model/motor";
import { slowSag } from "#model/pack";
import { type PackState, packedAs } from "./packs.ts";

/** How a flight departs from the record: what is left out is as the record has it. */
export interface FlightOptions {
  readonly antiWindup?: AntiWindup;
  readonly pack?: PackState;
  /** Head speed asked for, rpm. */
  readonly headRpm?: number;
  readonly proportionalGain?: number;
  /** 1/s */
  readonly integralGain?: number;
  readonly loopHz?: number;
  /** Magnets of the motor. */
  readonly poles?: number;
}

/** The departures among other things, and nothing else: what is left out stays out. Units as in `FlightOptions`. Source: definition. */
export function departures(all: FlightOptions): FlightOptions {
  const { antiWindup, pack, headRpm, proportionalGain, integralGain, loopHz, poles } = all;
  const given = { antiWindup, pack, headRpm, proportionalGain, integralGain, loopHz, poles };
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}

/**
 * What the record doesn't hold. Heat: the motor is a tenth of the machine's mass, the controller a thirtieth, at 450 J/(kg K);
 * half a minute to two minutes to cool. All from memory, for the usual sizes; they move only the temperatures.
 */
const heat = {
  capacity: 450,
  motorShare: 0.1,
  motorSeconds: 100,
  controllerShare: 0.033,
  controllerSeconds: 50,
} as const;
/** Hub, shaft and main gear beside the blades: share of their inertia. From memory. */
const hubShare = 0.03;
/** Clock that times the commutation, s, return to speed after an autorotation, s, and hottest winding and controller, K. Common practice, no source. */
export const clockStep = 5e-7;
const bailOutRamp = 1.5;
const hottest = { winding: 120 + zeroCelsius, controller: 100 + zeroCelsius } as const;

const rotors = new Map<string, { map: RotorMap; tail: TailTorque }>();

/** The rotors of a machine: the same ones again while rotors and air stay, so that the simulator's tables serve again. */
function rotorsFor({ machine, rig }: Figures): { map: RotorMap; tail: TailTorque } {
  const key = JSON.stringify([machine.mainRotor, machine.tailRotor, machine.gears.tailRatio, machine.place]);
  let found = rotors.get(key);
  if (!found) {
    if (rotors.size >= 6) rotors.clear();
    found = { map: mapOfLoad(rig.main), tail: tailTorqueOf(rig.tail) };
    rotors.set(key, found);
  }
  return found;
}

export type ReadyToFly = { readonly ok: true; readonly mode: Mode } | { readonly ok: false; readonly why: string };

/**
 * A machine and one of its modes for the simulator, SI; or why it can't be flown, in words. Values that the record doesn't hold
 * (heat, the governor's clock) are of the usual size: see this file.
 *
 * @param index place of the flight mode in the machine's list
 */
export function readyToFly(machine: Machine, index: number, options: FlightOptions = {}): ReadyToFly {
  const figures = figuresOf(packedAs(machine, options.pack ?? "own"));
  const { parts, bladeInertia, air, train, voltageAt, ratio } = figures.rig;
  const mode = parts.modes[index];
  const reference = figures.number("learned-motor-speed");
  if (!mode) return { ok: false, why: "This machine has no such flight mode." };
  if (reference === null) {
    return { ok: false, why: "There is no reference: at the learning throttle this motor doesn't turn." };
  }
  if (bladeInertia === null) {
    return { ok: false, why: "No blade has its centre of mass there: look at blade centre, root and diameter." };
  }
  const { pack, motor, controller, mainRotor } = parts;
  const { map, tail } = rotorsFor(figures);
  const cells = train.packResistance - pack.leadResistance;
  const motorHeat = heat.capacity * heat.motorShare * parts.airframe.mass;
  const controllerHeat = heat.capacity * heat.controllerShare * parts.airframe.mass;
  const flown: FlightMachine = {
    pack: {
      openVoltage: voltageAt,
      capacity: pack.capacity,
      resistance: train.packResistance,
      slowResistance: slowSag.share * cells,
      slowTime: slowSag.time,
      charge: pack.charge,
    },
    motor: {
      constant: torqueConstant(motor),
      resistance: motor.resistance,
      resistanceTemperature: copperReference,
      noLoadCurrent: motor.noLoadCurrent,
      inertia: motor.rotorInertia,
      poles: options.poles ?? motor.poles,
      heatCapacity: motorHeat,
      cooling: motorHeat / heat.motorSeconds,
      temperature: motor.windingTemperature,
    },
    controller: {
      resistance: controller.resistance,
      dutySteps: controller.dutySteps,
      loopRate: options.loopHz ?? controller.loopRate,
      proportionalGain: options.proportionalGain ?? controller.proportionalGain,
      integralGain: options.integralGain ?? controller.integralGain,
      antiWindup: options.antiWindup ?? "back-calculation",
      backGain: 1,
      lowestDuty: 0,
      highestDuty: 1,
      reference: reference * rpm,
      startRamp: controller.startRamp,
      bailOutRamp,
      clockStep,
      heatCapacity: controllerHeat,
      cooling: controllerHeat / heat.controllerSeconds,
      temperature: air.temperature,
    },
    gearRatio: ratio,
    meshEfficiency: train.meshEfficiency,
    rotor: {
      map,
      radius: mainRotor.radius,
      inertia: (1 + hubShare) * mainRotor.blades * bladeInertia,
      lowestCollective: Math.min(mode.collectiveMin, 0),
      highestCollective: mode.collectiveMax,
    },
    tail,
    mass: parts.airframe.mass,
    dragArea: parts.airframe.dragArea,
    airDensity: air.density,
    airTemperature: air.temperature,
    limits: {
      motorSpeed: motor.ratedSpeed,
      electricalSpeed: controller.electricalSpeedLimit,
      rotorSpeed: mainRotor.ratedSpeed,
      packCurrent: packCurrentLimit(machine),
      windingTemperature: hottest.winding,
      controllerTemperature: hottest.controller,
    },
  };
  const setSpeed = options.headRpm === undefined ? mode.headSpeed : options.headRpm * rpm;
  return { ok: true, mode: { machine: flown, setSpeed } };
}
