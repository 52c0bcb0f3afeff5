/** Where the energy of a flight went. */
import { gravity } from "#model/constants";
import type { FlightMachine } from "#model/flight/machine";
import type { Trace } from "#model/flight/trace";

/** Energies of a flight from its start to a sample, J; what was stored is the change since the start. */
export interface Energies {
  /** What the cells' chemistry gave, and of it what came out at the plug. */
  readonly chemical: number;
  readonly delivered: number;
  readonly packHeat: number;
  readonly controllerHeat: number;
  readonly copperHeat: number;
  readonly frictionHeat: number;
  readonly meshHeat: number;
  /** Work of the shaft on the air, main and tail rotor. */
  readonly airWork: number;
  /** Change of what turns: motor and rotor. */
  readonly turning: number;
  /** Change of what the slow part of the sag holds. */
  readonly sag: number;
  /** Work of the thrust on the airframe, and where it went: drag, height, vertical motion. */
  readonly liftWork: number;
  readonly dragWork: number;
  readonly potential: number;
  readonly vertical: number;
  /** What is missing in the chain from the cells to the air, and in the vertical motion: an error of the computation. */
  readonly missing: number;
  readonly missingVertical: number;
}

/**
 * Energy balance of a flight up to sample `i` of its trace: chemical = heats + air work + change of what is stored, all in
 * J. In a flight whose height is held the vertical part has no meaning and is left at nothing. Source: conservation of
 * energy, by definition.
 */
export function energiesAt(machine: FlightMachine, trace: Trace, i: number, held: boolean): Energies {
  const { pack, motor, rotor, mass } = machine;
  const grown = (of: Float64Array): number => of[i]! - of[0]!;
  const squares = (of: Float64Array): number => of[i]! * of[i]! - of[0]! * of[0]!;
  const turning = 0.5 * (motor.inertia * squares(trace.motorSpeed) + rotor.inertia * squares(trace.rotorSpeed));
  const sag = pack.slowResistance > 0 ? (0.5 * pack.slowTime * squares(trace.sag)) / pack.slowResistance : 0;
  const chemical = grown(trace.chemicalEnergy);
  const packHeat = grown(trace.packHeat);
  const controllerHeat = grown(trace.controllerHeat);
  const copperHeat = grown(trace.copperHeat);
  const frictionHeat = grown(trace.frictionHeat);
  const meshHeat = grown(trace.meshHeat);
  const airWork = grown(trace.airWork);
  const liftWork = grown(trace.liftWork);
  const dragWork = grown(trace.dragWork);
  const potential = held ? 0 : mass * gravity * grown(trace.height);
  const vertical = 0.5 * mass * squares(trace.climb);
  const heats = packHeat + controllerHeat + copperHeat + frictionHeat + meshHeat;
  return {
    chemical,
    delivered: chemical - packHeat - sag,
    packHeat,
    controllerHeat,
    copperHeat,
    frictionHeat,
    meshHeat,
    airWork,
    turning,
    sag,
    liftWork,
    dragWork,
    potential,
    vertical,
    missing: chemical - heats - airWork - turning - sag,
    missingVertical: held ? 0 : liftWork - dragWork - potential - vertical,
  };
}
