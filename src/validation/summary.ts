/** All published rotors at once: how far off the model is on them, and what to expect where nothing was published. */
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
  return (testAir.density * quantile(speeds, 0.5) * geometry.chordTip) / testAir.viscosity;
}

/** What we expect: tip Reynolds number, and the error as a share of the true value. Estimates, made before any such test. */
const expected = [
  [1e4, 0.3],
  [3e4, 0.15],
  [1e5, 0.06],
] as const;

/**
 * Error to expect of thrust at a pitch, or torque at a thrust, by tip Reynolds number: 6 % from 1e5 up, 15 % at 3e4, 30 % at
 * 1e4, straight between them in the logarithms of both, and on below. An estimate: no test so small is at hand.
 *
 * @param reynolds tip Reynolds number, above 0
 * @returns a share of the true value. Source: our own judgement of the section data.
 */
export function expectedError(reynolds: number): number {
  const [first, second, last] = expected;
  if (reynolds >= last[0]) return last[1];
  const [a, b] = reynolds < second[0] ? [first, second] : [second, last];
  const way = Math.log(reynolds / a[0]) / Math.log(b[0] / a[0]);
  return a[1] * (b[1] / a[1]) ** way;
}
