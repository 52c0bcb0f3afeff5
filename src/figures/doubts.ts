/**
 * Which doubt matters: what each input that isn't known exactly adds to the band of a figure, and of the difference between
 * two machines, the largest first; and how much narrower the band gets when some of them are measured.
 */
import type { Machine } from "#machine/machine";
import { same, valueAt } from "#machine/paths";
import { type Band, bandOf, coverage, type Share } from "./bands.ts";
import type { QuantityName } from "./catalogue.ts";
import type { Figures } from "./figures.ts";

/** The machine that an input belongs to; `both` where both have the very same part. */
export type Side = "now" | "what-if" | "both";

/** What one input adds to a band, in the figure's unit. */
export interface Doubt {
  /** Path of the field, or `model.cell-voltage`, `model.rotor`. */
  readonly path: string;
  /** Plain English. */
  readonly name: string;
  readonly side: Side;
  /** How far it alone takes the figure down (0 or less) and up (0 or more), at the coverage of bands. */
  readonly low: number;
  readonly high: number;
  /** Its part of the squares that make up the band, 0 to 1. */
  readonly share: number;
  /** Width of the band if this input were known exactly. */
  readonly leaves: number;
}

export interface Ranking {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** The one that matters most first. */
  readonly doubts: readonly Doubt[];
}

/** What makes two parts the same thing, and which fields then share their doubt. Other fields are compared by themselves. */
const things: readonly { readonly has: readonly string[]; readonly told: readonly string[] }[] = [
  {
    has: ["pack.cells", "pack.chemistry", "pack.capacityMah", "pack.cellResistanceMilliohm"],
    told: ["pack.capacityMah", "pack.cellResistanceMilliohm", "model.cell-voltage"],
  },
  {
    has: [
      "motor.kvRpmPerVolt",
      "motor.resistanceMilliohm",
      "motor.noLoadCurrentA",
      "motor.noLoadVoltageV",
      "motor.poles",
      "motor.rotorInertiaGcm2",
    ],
    told: [
      "motor.kvRpmPerVolt",
      "motor.resistanceMilliohm",
      "motor.noLoadCurrentA",
      "motor.noLoadVoltageV",
      "motor.rotorInertiaGcm2",
    ],
  },
];

/** Whether a doubt is one and the same on two machines: they have the part in common. The rotor model is always common. */
function shared(path: string, a: Machine, b: Machine): boolean {
  const thing = things.find(({ told }) => told.includes(path));
  if (thing) return thing.has.every((each) => valueAt(a, each) === valueAt(b, each));
  return path.startsWith("model.") || same(valueAt(a, path), valueAt(b, path));
}

interface Move {
  readonly path: string;
  readonly name: string;
  readonly side: Side;
  readonly low: number;
  readonly high: number;
}

const reach = ({ path, name, down, up }: Share, side: Side): Move => ({
  path,
  name,
  side,
  low: coverage * Math.min(down, up, 0),
  high: coverage * Math.max(down, up, 0),
});

/** The ends of a band around a value when its moves are added as squares, each side on its own. */
function ends(value: number, moves: readonly Move[]): { low: number; high: number } {
  const down = Math.sqrt(moves.reduce((sum, { low }) => sum + low * low, 0));
  const up = Math.sqrt(moves.reduce((sum, { high }) => sum + high * high, 0));
  return { low: value - down, high: value + up };
}

function ranked(value: number, moves: readonly Move[]): Ranking {
  const squares = moves.reduce((sum, { low, high }) => sum + low * low + high * high, 0);
  const doubts = moves
    .filter(({ low, high }) => low !== 0 || high !== 0)
    .map((move): Doubt => {
      const rest = ends(
        value,
        moves.filter((other) => other !== move),
      );
      return { ...move, share: (move.low ** 2 + move.high ** 2) / squares, leaves: rest.high - rest.low };
    })
    .sort((a, b) => a.leaves - b.leaves);
  return { value, ...ends(value, moves), doubts };
}

const movesOf = (band: Band, side: Side): Move[] => band.shares.map((share) => reach(share, side));

/**
 * What makes up the band of a figure, in the figure's unit, ranked by how much narrower the band would be without each.
 * Null for a figure that is no number. Source: JCGM 100:2008 (GUM), 5.1, sides kept apart.
 */
export function doubtsOf(figures: Figures, name: QuantityName, mode = 0, side: Side = "now"): Ranking | null {
  const value = figures.number(name, mode);
  const band = value === null ? null : bandOf(figures, name, mode);
  return value === null || band === null ? null : ranked(value, movesOf(band, side));
}

/**
 * The difference of a figure between two machines (what-if less now), in the figure's unit, with its own band. A doubt
 * about a part that both have moves both at once and mostly falls out of the difference; parts of their own err on their
 * own. Null where one of them has no such figure. Source: JCGM 100:2008 (GUM), 5.2.2 for inputs in common, 5.1.2 for others.
 */
export function doubtsBetween(now: Figures, whatIf: Figures, name: QuantityName, mode = 0): Ranking | null {
  const [a, b] = [now.number(name, mode), whatIf.number(name, mode)];
  const bandA = a === null ? null : bandOf(now, name, mode);
  const bandB = b === null ? null : bandOf(whatIf, name, mode);
  if (a === null || b === null || !bandA || !bandB) return null;
  const found = new Map<string, { a?: Share; b?: Share }>();
  for (const share of bandA.shares) found.set(share.path, { a: share });
  for (const share of bandB.shares) found.set(share.path, { ...found.get(share.path), b: share });
  const moves: Move[] = [];
  for (const [path, pair] of found) {
    const name = (pair.a ?? pair.b)?.name ?? path;
    const [downA, upA] = [pair.a?.down ?? 0, pair.a?.up ?? 0];
    const [downB, upB] = [pair.b?.down ?? 0, pair.b?.up ?? 0];
    if (shared(path, now.machine, whatIf.machine)) {
      moves.push(reach({ path, name, down: downB - downA, up: upB - upA }, "both"));
      continue;
    }
    moves.push(
      reach({ path, name, down: -downA, up: -upA }, "now"),
      reach({ path, name, down: downB, up: upB }, "what-if"),
    );
  }
  return ranked(b - a, moves);
}

/** The band that is left when some doubts are done away with, in the figure's unit. Errors: none. Source: as `doubtsOf`. */
export const bandWithout = (
  { value, doubts }: Ranking,
  known: (doubt: Doubt) => boolean,
): { low: number; high: number } =>
  ends(
    value,
    doubts.filter((doubt) => !known(doubt)),
  );

/** Whether a difference is larger than its doubt. */
export type Verdict = "same" | "too close" | "lower" | "higher";

/** A difference of less than this share of the figure is none. */
const NONE = 1e-6;

/** What a difference comes to: none, less than its doubt (its band holds zero), or a clear one. No unit. Source: definition. */
export function verdictOf({ value, low, high }: Ranking, figure: number): Verdict {
  if (Math.abs(value) <= NONE * Math.abs(figure) && high - low <= NONE * Math.abs(figure)) return "same";
  if (low <= 0 && high >= 0) return "too close";
  return value < 0 ? "lower" : "higher";
}
