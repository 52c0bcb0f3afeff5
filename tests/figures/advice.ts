/** What becomes of a machine whose owner takes the advice: for the tests of what would help. */
import { figuresOf } from "#figures/figures";
import { type Help, helpFor } from "#figures/help";
import type { WarningName } from "#figures/warning";
import type { Machine } from "#machine/machine";
import { learnedAt, machineWith } from "./machines.ts";

export type Changes = Readonly<Record<string, unknown>>;

export const help = (machine: Machine): Help => helpFor(figuresOf(machine), 0);
export const none: Help = { charge: null, slower: null, pinion: null, cells: null };

/** The machine after a change, with the reference learned anew where parts were changed. */
export const anew = (machine: Machine, changes: Changes): Machine =>
  machineWith(changes, learnedAt(null, machine.controller.learned.throttlePercent, machineWith(changes, machine)));

/** What must not be said of a mode that has taken the advice. */
const worse: readonly WarningName[] = [
  "no-headroom",
  "above-usable-band",
  "below-usable-band",
  "blade-speed-over-limit",
  "motor-speed-over-limit",
  "electrical-speed-over-limit",
  "learning-speed-over-limit",
  "hover-pitch-short",
];
export const said = (machine: Machine): string[] =>
  figuresOf(machine)
    .warnings.filter(({ name, mode }) => (mode === 0 || mode === null) && worse.includes(name))
    .map(({ name }) => name);

/** Charges, in per cent, down to which hover and full pitch of the first mode are held. */
export const lowest = (machine: Machine): number => figuresOf(machine).number("lowest-charge", 0) ?? 101;
export const seconds = (machine: Machine): number => 60 * (figuresOf(machine).number("full-pitch-duration", 0) ?? 0);
/** Common practice, no source: one lands with 20 %. */
export const reserve = 20;
export const kept = (machine: Machine): boolean => said(machine).length === 0 && lowest(machine) <= reserve + 1e-6;
export const drawn = (machine: Machine): number =>
  (figuresOf(machine).number("full-pitch-pack-current", 0) ?? 1e9) / (machine.pack.capacityMah / 1000);
