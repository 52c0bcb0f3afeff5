/** The chain of a machine with one part changed: to be tried on the model before it is bought. */
import { fieldAt } from "#machine/fields";
import { ratioOf } from "#model/gears";
import { packResistance, resistanceFactor } from "#model/pack";
import type { Powertrain } from "#model/powertrain";
import type { Rig } from "./rig.ts";

/** Ends of the record: no machine has more. */
export const mostTeeth = fieldAt("gears.pinionTeeth").max;
export const mostCells = fieldAt("pack.cells").max;

/** The chain with another pinion at a charge of 0 to 1. Units: SI. Errors: none. Source: `ratioOf`. */
export const chainWithTeeth = (rig: Rig, pinionTeeth: number, charge: number): Powertrain => ({
  ...rig.trainAt(charge),
  gearRatio: ratioOf({ ...rig.parts.gears, pinionTeeth }),
});

/** The chain with another count of the same cells at a charge of 0 to 1. Units: SI. Errors: none. Source: cells in series. */
export function chainWithCells(rig: Rig, cells: number, charge: number): Powertrain {
  const { pack } = rig.parts;
  return {
    ...rig.trainAt(charge),
    openVoltage: (rig.voltageAt(charge) / pack.cells) * cells,
    packResistance: packResistance({ ...pack, cells, temperatureFactor: resistanceFactor(pack.temperature) }),
  };
}
