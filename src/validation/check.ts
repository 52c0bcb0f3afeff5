/** Runs the rotor model on the published tests and says how far off it is. */
import { Rotor } from "#model/rotor/bemt";
import { collectiveForThrust } from "#model/rotor/solve";
import type { TestSet } from "./published.ts";

/** Thrust below this coefficient is too near zero for a relative error to mean much; such rows are shown, not judged. */
export const leastThrust = 0.0012;

/** What is asked of every set, in share of the measured value. */
export const bounds = { median: 0.06, ninetieth: 0.12 } as const;

/** One figure of a test, measured and from the model. */
export interface CheckedRow {
  readonly what: "thrust at the collective" | "torque at the thrust";
  readonly collectiveDeg: number | null;
  readonly tipSpeed: number;
  readonly thrustCoefficient: number;
  readonly measured: number;
  readonly model: number;
  /** (model - measured) / measured */
  readonly error: number;
  /** Whether it counts towards the bounds. */
  readonly judged: boolean;
}

/** Errors of one kind in one set, without sign. */
export interface Spread {
  readonly what: CheckedRow["what"];
  readonly count: number;
  readonly median: number;
  readonly ninetieth: number;
  readonly worst: number;
  /** Mean with sign. */
  readonly bias: number;
  readonly within: boolean;
}

/** A set with all its rows and its spreads. */
export interface CheckedSet {
  readonly set: TestSet;
  readonly rows: readonly CheckedRow[];
  readonly spreads: readonly Spread[];
}

/** Air of the tests: sea level, standard. Coefficients hardly depend on it; where a tip Mach number is printed it is met. */
export const testAir = { density: 1.225, viscosity: 1.789e-5, soundSpeed: 340.3 } as const;

/** The value below which the share `q` (0 to 1) lies, between neighbours by proportion; in the unit of the values. Source: definition. */
export function quantile(values: readonly number[], q: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * q;
  const below = sorted[Math.floor(at)]!;
  return below + (sorted[Math.ceil(at)]! - below) * (at % 1);
}

function spread(what: CheckedRow["what"], rows: readonly CheckedRow[]): Spread | null {
  const errors = rows.filter((row) => row.judged && row.what === what).map((row) => row.error);
  if (errors.length === 0) return null;
  const sizes = errors.map(Math.abs);
  const [median, ninetieth] = [quantile(sizes, 0.5), quantile(sizes, 0.9)];
  return {
    what,
    count: errors.length,
    median,
    ninetieth,
    worst: Math.max(...sizes),
    bias: errors.reduce((sum, e) => sum + e, 0) / errors.length,
    within: median <= bounds.median && ninetieth <= bounds.ninetieth,
  };
}

/**
 * The model on one published rotor: thrust at each collective, torque at each measured thrust.
 *
 * @param set a published test
 * @returns its rows with the model's figure and error (fractions), and median, 90th percentile and worst of each kind. A
 * thrust that the model cannot reach counts as an error of 1.
 */
export function checkSet(set: TestSet): CheckedSet {
  const rows: CheckedRow[] = [];
  const { radius } = set.geometry;
  for (const row of set.rows) {
    const { collectiveDeg, tipSpeed, tipMach, thrustCoefficient, torqueCoefficient } = row;
    const soundSpeed = tipMach === null ? testAir.soundSpeed : tipSpeed / tipMach;
    const rotor = new Rotor(set.geometry, { ...testAir, soundSpeed }).fly(tipSpeed / radius, 0);
    const unit = testAir.density * Math.PI * radius ** 2 * tipSpeed ** 2;
    const judged = thrustCoefficient > leastThrust;
    const put = (what: CheckedRow["what"], measured: number, model: number): void => {
      const error = (model - measured) / measured;
      rows.push({ what, collectiveDeg, tipSpeed, thrustCoefficient, measured, model, error, judged });
    };
    if (collectiveDeg !== null && thrustCoefficient > 0) {
      put("thrust at the collective", thrustCoefficient, rotor.pitch((collectiveDeg * Math.PI) / 180) / unit);
    }
    if (torqueCoefficient !== null) {
      const found = collectiveForThrust(rotor, thrustCoefficient * unit);
      put("torque at the thrust", torqueCoefficient, found.ok ? rotor.torque / (unit * radius) : 2 * torqueCoefficient);
    }
  }
  const kinds = ["thrust at the collective", "torque at the thrust"] as const;
  return { set, rows, spreads: kinds.flatMap((what) => spread(what, rows) ?? []) };
}
