/** A machine with another pack state: freshly charged, or an old pack near its end. And what full duty gives with it. */
import { figuresOf } from "#figures/figures";
import type { Machine } from "#machine/machine";

/** The pack that is flown: as the record says, freshly charged, or an old one near its end. */
export const packStates = ["own", "full", "tired"] as const;
export type PackState = (typeof packStates)[number];

/** A tired pack: three tenths left, and cells with 1.6 times their resistance. Our choice. */
const tired = { chargePercent: 30, resistance: 1.6 } as const;

const known: Readonly<Record<Exclude<PackState, "own">, WeakMap<Machine, Machine>>> = {
  full: new WeakMap(),
  tired: new WeakMap(),
};

/** The machine with the pack in that state: the same object for the same machine, so that what was computed serves again. Source: definition. */
export function packedAs(machine: Machine, state: PackState): Machine {
  if (state === "own") return machine;
  const found = known[state].get(machine);
  if (found) return found;
  const { pack } = machine;
  const made: Machine = {
    ...machine,
    pack:
      state === "full"
        ? { ...pack, chargePercent: 100 }
        : {
            ...pack,
            chargePercent: tired.chargePercent,
            cellResistanceMilliohm: tired.resistance * pack.cellResistanceMilliohm,
          },
  };
  known[state].set(machine, made);
  return made;
}

/** Head speeds that full duty gives in hover and at full pitch without climb, rpm; null where there is none. Errors and source: those of the figures. */
export function ceilingsWith(
  machine: Machine,
  mode: number,
  state: PackState,
): { readonly hover: number | null; readonly fullPitch: number | null } {
  const figures = figuresOf(packedAs(machine, state));
  return { hover: figures.number("ceiling-hover", mode), fullPitch: figures.number("ceiling-full-pitch", mode) };
}
