/** A second machine to set beside the first before money is spent: proposals to start the what-if from. */
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { rewoundFor } from "./curves-pack.ts";

const { max: MOST } = fieldAt("pack.cells");

/** Labels and shops give three or four figures; a machine of a proposal has no more. */
const labelled = (value: number): number => Number(value.toPrecision(4));

/** How many cells the proposal has: two more, or two fewer where no pack has more. Unit: none. Source: ours. */
export const cellsProposed = ({ pack: { cells } }: Machine): number => (cells + 2 <= MOST ? cells + 2 : cells - 2);

/**
 * The machine with other cells and the Kv to match: a pack of the same weight, a motor of the same copper, learned anew.
 * Its figures are cut to four places, as a label has them; units: those of the record. Errors: none, but the record's
 * limits may refuse it. Source: `rewoundFor`.
 */
export function matchedMachine(machine: Machine, cells: number): Machine {
  const { pack, motor, controller, ...rest } = rewoundFor(machine, cells);
  return {
    ...rest,
    pack: {
      ...pack,
      capacityMah: labelled(pack.capacityMah),
      cellResistanceMilliohm: labelled(pack.cellResistanceMilliohm),
    },
    motor: {
      ...motor,
      kvRpmPerVolt: labelled(motor.kvRpmPerVolt),
      resistanceMilliohm: labelled(motor.resistanceMilliohm),
      noLoadCurrentA: labelled(motor.noLoadCurrentA),
      noLoadVoltageV: labelled(motor.noLoadVoltageV),
    },
    controller: { ...controller, learned: { ...controller.learned, motorRpm: null, fittedWith: null } },
  };
}
