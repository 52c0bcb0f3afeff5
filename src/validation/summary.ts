/** All published rotors at once: how far off the model is on them. */
import { reynoldsNumber } from "#model/rotor/blade";
import { type CheckedSet, checkSet, quantile, testAir } from "./check.ts";
import { type TestSet, testSets } from "./published.ts";

let checked: readonly CheckedSet[] | null = null;

/** The model on every published rotor: worked out when it is first asked for, and kept. Units, errors: as `checkSet`. */
export function everyRotor(): readonly CheckedSet[] {
  checked ??= testSets.map(checkSet);
  return checked;
}

/** Errors of many figures, without sign, as shares of the measured value. */
export interface Overall {
  readonly count: number;
  readonly median: number;
  readonly ninetieth: number;
  readonly worst: number;
}

/** The errors of all judged figures of these sets together. Source: definition. */
export function overall(sets: readonly CheckedSet[]): Overall {
  const sizes = sets.flatMap(({ rows }) => rows.flatMap((row) => (row.judged ? [Math.abs(row.error)] : [])));
  return {
    count: sizes.length,
    median: quantile(sizes, 0.5),
    ninetieth: quantile(sizes, 0.9),
    worst: Math.max(...sizes),
  };
}

/** Tip Reynolds number of a published rotor, on the tip's chord, at the middle of its tip speeds. Source: definition. */
export function tipReynoldsOf({ geometry, rows }: TestSet): number {
  const speeds = rows.map((row) => row.tipSpeed);
  return reynoldsNumber(testAir, quantile(speeds, 0.5), geometry.chordTip);
}
