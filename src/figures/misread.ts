/**
 * Why it reads wrong: ranks what would explain the head speeds that were measured beside those that were asked for. Each
 * cause says what it would make of every mode; the better that fits, and the fewer liberties it needs, the higher it stands.
 */
import type { Figures } from "./figures.ts";
import { type Cause, type CauseKey, causesOf, type Setting } from "./misread-causes.ts";

export interface Reading extends Omit<Setting, "modes"> {
  /** How sure one reading is, as a share: a standard uncertainty. */
  readonly sure: number;
  readonly rows: readonly {
    readonly mode: number;
    /** rpm */
    readonly measured: number;
  }[];
}

/** How well a cause explains a reading. */
export interface Explained {
  readonly key: CauseKey;
  readonly sizes: Cause["sizes"];
  /** What it would make the instrument show, rpm, row by row, with what it leaves open set as it fits best. */
  readonly reads: readonly number[];
  /** What it leaves open, as it fits best: a share. */
  readonly open: number;
  /** Largest gap between measured and explained, as a share. */
  readonly gap: number;
  /** Whether the gaps are such as the doubt of a reading leaves, 19 times in 20. */
  readonly fits: boolean;
  /** How likely it is among all that were weighed, 0 to 1. */
  readonly weight: number;
}

/** 95th percentile of chi-squared for 1 to 6 readings. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4. */
export const chiSquared95 = [3.841, 5.991, 7.815, 9.488, 11.07, 12.592] as const;

interface Fit extends Omit<Explained, "weight"> {
  /** Natural logarithm of how likely the readings are under the cause, times how likely the cause was before. */
  readonly log: number;
}

/**
 * How a cause fits: gaps of the readings from what it predicts, with a covariance of the readings' own doubt and of what the
 * cause leaves open along its shares (Sherman and Morrison, Ann. Math. Stat. 21 (1950) 124, gives its inverse).
 */
function fitOf(cause: Cause, measured: readonly number[], sure: number): Fit {
  const { shares, spread } = cause.open;
  const gaps = measured.map((speed, i) => speed / (cause.reads[i] ?? speed) - 1);
  const noise = sure * sure;
  const along = shares.reduce((sum, share, i) => sum + share * (gaps[i] ?? 0), 0) / noise;
  const length = shares.reduce((sum, share) => sum + share * share, 0) / noise;
  const stretch = 1 + spread * spread * length;
  const open = (spread * spread * along) / stretch;
  const squares = gaps.reduce((sum, gap) => sum + gap * gap, 0) / noise;
  const chi = squares - (spread * spread * along * along) / stretch;
  const reads = cause.reads.map((speed, i) => speed * (1 + open * (shares[i] ?? 0)));
  const left = measured.map((speed, i) => Math.abs(speed / (reads[i] ?? speed) - 1));
  const limit = chiSquared95[Math.min(measured.length, chiSquared95.length) - 1] ?? 0;
  return {
    key: cause.key,
    sizes: cause.sizes,
    reads,
    open,
    gap: Math.max(...left),
    fits: chi <= limit,
    log: -0.5 * (chi + Math.log(stretch)) + Math.log(cause.before),
  };
}

/**
 * What would explain a reading, the best first, each kind of fault once with the size that fits best. Weights of all sizes
 * of a fault are added. Units: rpm, shares. Errors: an empty list where nothing was measured. One fault at a time: two
 * that happen together aren't looked for. Source: Bayes' rule; weights before: our own judgement.
 */
export function explain(figures: Figures, reading: Reading): Explained[] {
  const rows = reading.rows.filter(({ measured }) => measured > 0);
  if (rows.length === 0 || !(reading.sure > 0)) return [];
  const { instrument, load } = reading;
  const causes = causesOf(figures, { instrument, load, modes: rows.map(({ mode }) => mode) });
  const fits = causes.map((cause) =>
    fitOf(
      cause,
      rows.map(({ measured }) => measured),
      reading.sure,
    ),
  );
  const best = Math.max(...fits.map(({ log }) => log));
  const all = fits.reduce((sum, { log }) => sum + Math.exp(log - best), 0);
  const found = new Map<CauseKey, { fit: Fit; weight: number }>();
  for (const fit of fits) {
    const weight = Math.exp(fit.log - best) / all;
    const before = found.get(fit.key);
    const better = !before || fit.log > before.fit.log;
    found.set(fit.key, { fit: better ? fit : before.fit, weight: weight + (before?.weight ?? 0) });
  }
  return [...found.values()]
    .sort((a, b) => b.weight - a.weight || b.fit.log - a.fit.log)
    .map(({ fit: { log: _, ...fit }, weight }) => ({ ...fit, weight }));
}
