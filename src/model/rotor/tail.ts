/** The tail rotor: what it has to hold, and what that takes, by the same rotor model. SI. */
import type { Rotor } from "./bemt.ts";
import { collectiveForThrust, type PitchMissing } from "./solve.ts";

/** A tail rotor that holds the machine straight. */
export interface TailHeld {
  readonly ok: true;
  /** N */
  readonly thrust: number;
  /** rad */
  readonly collective: number;
  /** W */
  readonly power: number;
  /** What it adds to the main shaft's torque, N m. */
  readonly shaftTorque: number;
  /** Its power over the main rotor's. */
  readonly share: number;
}

/**
 * Tail rotor from the torque balance: T_t = Q / l, and the collective and power that this takes.
 *
 * @param tail the tail rotor in its air
 * @param task torque (N m) and speed (rad/s) of the main rotor, arm (m) between the shafts, tail turns per main turn
 * @returns thrust (N), collective (rad), power (W), or why it can't hold and how much thrust there is.
 * Left out: the fin, the main rotor's flow over the tail, loss in the tail's gears.
 * Source: definition (torque balance); the rotor's own sources.
 */
export function tailRotor(
  tail: Rotor,
  task: { readonly torque: number; readonly speed: number; readonly arm: number; readonly ratio: number },
): TailHeld | PitchMissing {
  const { torque, speed, arm, ratio } = task;
  const thrust = torque / arm;
  const found = collectiveForThrust(tail.fly(speed * ratio, 0), thrust);
  if (!found.ok) return found;
  const power = tail.torque * speed * ratio;
  return {
    ok: true,
    thrust,
    collective: found.collective,
    power,
    shaftTorque: tail.torque * ratio,
    share: power / (torque * speed),
  };
}
