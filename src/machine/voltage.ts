/**
 * The resting voltage of the whole pack: an input of pages that sets the state of charge and follows it. The record
 * holds the charge alone, so that the two can never disagree.
 */
import { chargeAtCellVoltage, openCellVoltage } from "#model/ocv";
import { type Field, fieldAt, voltageField } from "./fields.ts";
import type { Machine } from "./machine.ts";
import { valueAt } from "./paths.ts";
import type { Problem } from "./validate.ts";
import { sentences } from "./words.ts";

export const voltagePath = "pack.voltage";
export const chargePath = "pack.chargePercent";

const cellVoltage = ({ pack }: Machine, charge: number): number => openCellVoltage(pack.chemistry, charge) ?? 0;

/** Resting voltage of the whole pack at its state of charge, V. */
export const packVoltage = (machine: Machine): number =>
  machine.pack.cells * cellVoltage(machine, machine.pack.chargePercent / 100);

/** Resting voltage of this pack when empty and when full, V: all that can be entered. */
export const voltageLimits = (machine: Machine): readonly [number, number] => [
  machine.pack.cells * cellVoltage(machine, 0),
  machine.pack.cells * cellVoltage(machine, 1),
];

/** State of charge, %, of this pack when it rests at a voltage; or, in words, why there is none. */
export function chargePercentAt(
  machine: Machine,
  volts: unknown,
): { ok: true; percent: number } | { ok: false; problem: Problem } {
  const [empty, full] = voltageLimits(machine);
  const refused = {
    ok: false as const,
    problem: { path: voltagePath, value: volts, words: sentences.voltage(volts, empty, full) },
  };
  if (typeof volts !== "number" || !Number.isFinite(volts)) return refused;
  // Full and empty are written with a few decimals: what is as near to an end as these is meant to be the end.
  const near = (end: number) => Math.abs(volts - end) < 0.005;
  if (near(full)) return { ok: true, percent: 100 };
  if (near(empty)) return { ok: true, percent: 0 };
  const answer = chargeAtCellVoltage(machine.pack.chemistry, volts / machine.pack.cells);
  return answer.ok ? { ok: true, percent: answer.charge * 100 } : refused;
}

/** The value that an input of a page shows, in the field's own unit: as `valueAt`, and the pack's voltage as well. */
export const inputValue = (machine: Machine, path: string): unknown =>
  path === voltagePath ? packVoltage(machine) : valueAt(machine, path);

/** The field at a path for an input on this machine: the ends of the pack's voltage follow its cells. */
export function fieldFor(machine: Machine, path: string): Field {
  if (path !== voltagePath) return fieldAt(path);
  const [low, high] = voltageLimits(machine);
  return { ...voltageField, low, high, min: low, max: high };
}
