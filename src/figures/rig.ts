/**
 * A machine set up for the model: its parts in SI, the air it flies in, its rotors, and its chain at any charge.
 * Made once for a machine; all figures, curves and warnings of it are worked out from here.
 */
import type { Machine } from "#machine/machine";
import { type Parts, partsOf } from "#machine/parts";
import { type Air, airAt } from "#model/air";
import { bladeInertia } from "#model/blades";
import { gravity } from "#model/constants";
import { ratioOf } from "#model/gears";
import { copperResistance, torqueConstant } from "#model/motor";
import { openCellVoltage } from "#model/ocv";
import { openVoltage, packResistance, resistanceFactor } from "#model/pack";
import type { Powertrain } from "#model/powertrain";
import type { LoadTorque, RotorLoad, Tail } from "#model/rotor-load";
import { beside } from "./loads.ts";
import { heldPitch, heldThrust, pitchAlone, rotorsOf, thrustAlone } from "./rotors.ts";

/** Loads that a ceiling, a duty or a current is asked for. */
export type LoadName = "hover" | "full-pitch";

export interface Rig {
  readonly machine: Machine;
  readonly parts: Parts;
  readonly air: Air;
  /** Motor turns for one turn of the main rotor. */
  readonly ratio: number;
  /** N */
  readonly weight: number;
  /** Moment of inertia of one blade, kg m², or null for a blade that can't be. */
  readonly bladeInertia: number | null;
  readonly main: RotorLoad;
  readonly tail: Tail;
  /** Factor on the torque of the rotors: 1 but for a doubt about their model. */
  readonly rotorTorque: number;
  /** Chain at the machine's own charge. */
  readonly train: Powertrain;
  /** Open voltage of the pack, V, at a charge of 0 to 1. */
  readonly voltageAt: (charge: number) => number;
  /** The chain at another charge. */
  readonly trainAt: (charge: number) => Powertrain;
  /** Torque on the main shaft, N m, against its speed: in hover, or at a mode's full pitch before the climb begins. */
  readonly load: (name: LoadName, mode: number) => LoadTorque;
  /** The same with flat pitch: what the learning run has to turn. */
  readonly flat: LoadTorque;
}

/** What is not known of the model itself: for bands. Zero and one where nothing is said. */
export interface ModelDoubt {
  /** Added to the voltage of every cell, V. */
  readonly cellVoltage?: number;
  /** Factor on the torque of the rotors. */
  readonly rotorTorque?: number;
  /** The machine as it is, of which this one is moved by a doubt: its loads are known and save solving those of this one. */
  readonly of?: Rig;
}

/** Sets a machine up. Units: SI throughout. Errors: none; a machine of the record is always whole. Source: definition. */
export function rigOf(machine: Machine, { cellVoltage = 0, rotorTorque = 1, of }: ModelDoubt = {}): Rig {
  const parts = partsOf(machine);
  const { pack, motor, gears } = parts;
  const air = airAt(parts.place);
  const { main, tail } = rotorsOf(machine, parts, air);
  const voltageAt = (charge: number): number =>
    // A charge of 0 to 1 has a voltage in every chemistry.
    openVoltage({ cells: pack.cells, cellVoltage: (openCellVoltage(pack.chemistry, charge) ?? 0) + cellVoltage });
  const train: Powertrain = {
    openVoltage: voltageAt(pack.charge),
    packResistance: packResistance({ ...pack, temperatureFactor: resistanceFactor(pack.temperature) }),
    torqueConstant: torqueConstant(motor),
    motorResistance: copperResistance(motor.resistance, motor.windingTemperature),
    controllerResistance: parts.controller.resistance,
    noLoadCurrent: motor.noLoadCurrent,
    gearRatio: ratioOf(gears),
    // Every pair of gears takes its share.
    meshEfficiency: gears.meshEfficiency ** (gears.secondStage ? 2 : 1),
  };
  const weight = parts.airframe.mass * gravity;
  const doubted = (load: LoadTorque): LoadTorque =>
    rotorTorque === 1
      ? load
      : (speed) => {
          const torque = load(speed);
          return torque === null ? null : torque * rotorTorque;
        };
  // With the same rotors the tables that were made for them serve as they are.
  const same =
    of?.main === main && of.tail.rotor === tail.rotor && of.tail.arm === tail.arm && of.tail.ratio === tail.ratio;
  const pitched = (collective: number, known: LoadTorque | undefined, before: number | undefined): LoadTorque =>
    doubted(
      known && !(same && before === collective)
        ? beside(known, pitchAlone(main, tail, collective))
        : heldPitch(main, tail, collective),
    );
  const hover = doubted(
    of && !(same && of.weight === weight)
      ? beside(of.load("hover", 0), thrustAlone(main, tail, weight))
      : heldThrust(main, tail, weight),
  );
  // Modes often share a pitch: one load then serves them all.
  const loads = new Map<number, LoadTorque>();
  const full = parts.modes.map(({ collectiveMax }, i) => {
    const load =
      loads.get(collectiveMax) ?? pitched(collectiveMax, of?.load("full-pitch", i), of?.parts.modes[i]?.collectiveMax);
    loads.set(collectiveMax, load);
    return load;
  });
  const { bladeMass, rootCutout, radius, bladeCentre } = parts.mainRotor;
  return {
    machine,
    parts,
    air,
    ratio: train.gearRatio,
    weight,
    bladeInertia: bladeInertia({ mass: bladeMass, root: rootCutout, tip: radius, centre: bladeCentre }),
    main,
    tail,
    rotorTorque,
    train,
    voltageAt,
    trainAt: (charge) => ({ ...train, openVoltage: voltageAt(charge) }),
    load: (name, mode) => (name === "hover" ? hover : (full[mode] ?? hover)),
    flat: pitched(0, of?.flat, 0),
  };
}
