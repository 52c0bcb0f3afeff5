/** Where a flight begins: at rest, or in a steady state with the rotor turning. */
import { inducedVelocity } from "../momentum.ts";
import { copperResistance } from "../motor.ts";
import { dutyAsked } from "../powertrain.ts";
import type { FlightMachine } from "./machine.ts";
import * as at from "./state.ts";

export interface Start {
  /** Rotor speed, rad/s; 0: at rest. */
  readonly speed: number;
  /** rad */
  readonly collective: number;
  /** m above the ground, and m/s up. */
  readonly height: number;
  readonly climb: number;
}

/**
 * State of a machine (SI) that begins with these: inflow and sag settled where they follow from the load, temperatures
 * as the machine says, energies at nothing. Source: steady solutions of the equations in `plant.ts`.
 */
export function startState(machine: FlightMachine, start: Start): Float64Array {
  const y = new Float64Array(at.SIZE);
  y[at.ROTOR] = start.speed;
  y[at.MOTOR] = start.speed * machine.gearRatio;
  y[at.HEIGHT] = start.height;
  y[at.CLIMB] = start.climb;
  y[at.CHARGE] = machine.pack.charge;
  y[at.WINDING] = machine.motor.temperature;
  y[at.CONTROLLER] = machine.controller.temperature;
  if (start.speed > 0) {
    const thrust = machine.rotor.map.thrust(start.speed, start.collective, start.climb);
    y[at.INFLOW] = inducedVelocity(thrust, start.climb, machine.airDensity, Math.PI * machine.rotor.radius ** 2);
  }
  return y;
}

/**
 * Duty that holds the rotor at its starting speed, within the controller's limits; the highest when more would be needed:
 * the flight then begins with a speed that falls. Units: SI. Source: `dutyAsked`.
 */
export function startDuty(machine: FlightMachine, start: Start): number {
  if (!(start.speed > 0)) return 0;
  const { motor, controller, pack, rotor, tail } = machine;
  const main = rotor.map.torque(start.speed, start.collective, start.climb);
  const own = tail ? tail(main, start.speed) : 0;
  const train = {
    openVoltage: pack.openVoltage(pack.charge),
    packResistance: pack.resistance,
    torqueConstant: motor.constant,
    motorResistance: copperResistance(motor.resistance, motor.temperature, motor.resistanceTemperature),
    controllerResistance: controller.resistance,
    noLoadCurrent: motor.noLoadCurrent,
    gearRatio: machine.gearRatio,
    meshEfficiency: machine.meshEfficiency,
  };
  const duty = dutyAsked(train, start.speed, main + (Number.isFinite(own) ? own : 0)) ?? controller.highestDuty;
  return Math.min(controller.highestDuty, Math.max(controller.lowestDuty, duty));
}
