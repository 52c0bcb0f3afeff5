/** One figure of the benchmarks, as `npm run -s bench` prints it. Lower is better; a value over its budget falls short. */
export interface Line {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly budget: number;
  /** The value over the same figure of the hand-written page, both measured in this run. */
  readonly ratio?: number;
}

/** The value below which the share `q` of all values lies. */
export function quantile(values: readonly number[], q: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * q;
  const below = sorted[Math.floor(at)];
  if (below === undefined) throw new Error("Nothing was measured.");
  return below + ((sorted[Math.ceil(at)] ?? below) - below) * (at % 1);
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);
