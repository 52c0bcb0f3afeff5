/** The rotors as a flight takes them: plain numbers in and out, whatever model stands behind. */
import { type RotorLoad, type Tail, tailThrust } from "../rotor-load.ts";

/**
 * A rotor as steady tests show it: thrust (N) and torque (N m) at a rotor speed (rad/s), a collective (rad) and a climb
 * speed (m/s), the inflow already settled. A closed form, a blade element solution or a map of one can stand behind it.
 */
export interface RotorMap {
  thrust(speed: number, collective: number, axialVelocity: number): number;
  torque(speed: number, collective: number, axialVelocity: number): number;
}

/**
 * Torque (N m) on the main rotor's shaft that the tail rotor takes while it holds a main rotor torque (N m) at a main rotor speed
 * (rad/s); not a finite number where it can't hold it.
 */
export type TailTorque = (mainTorque: number, speed: number) => number;

const maps = new WeakMap<RotorLoad, RotorMap>();
const tails = new WeakMap<Tail, TailTorque>();

/**
 * A steady rotor model as a map (N, N m, rad/s, rad, m/s). The same model always gives the same map, so that tables made
 * of it are made once. Source: definition.
 */
export function mapOfLoad(load: RotorLoad): RotorMap {
  const known = maps.get(load);
  if (known) return known;
  const map: RotorMap = {
    thrust: (speed, collective, climb) => load.thrustAt({ speed, collective, climb }),
    torque: (speed, collective, climb) => load.torqueAt({ speed, collective, climb }),
  };
  maps.set(load, map);
  return map;
}

/** What a tail rotor takes from the main shaft, N m: its ratio times its own torque at the thrust Q / arm. Source: definition. */
export function tailTorqueOf(tail: Tail): TailTorque {
  const known = tails.get(tail);
  if (known) return known;
  const torque: TailTorque = (mainTorque, speed) => {
    const thrust = tailThrust(mainTorque, tail.arm);
    const own = tail.rotor.torqueForThrust({ speed: speed * tail.ratio, thrust });
    return own === null ? Number.NaN : tail.ratio * own;
  };
  tails.set(tail, torque);
  return torque;
}
