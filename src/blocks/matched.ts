/** What the proposed second machine draws in hover, for the question that comes before it is shown. */
import { figuresOf } from "#figures/figures";
import { cellsProposed, matchedMachine } from "#figures/second-machine";
import type { Machine } from "#machine/machine";

interface Matched {
  readonly cells: number;
  /** Pack current in hover, A; null where it can't be held. */
  readonly current: number | null;
  /** Time in hover over that of the machine itself; null where one of them can't hover. */
  readonly lasts: number | null;
  /** Where a scale for guesses should end, A. */
  readonly scale: number;
}

const known = new WeakMap<Machine, Map<number, Matched>>();

/** The machine with two cells more and the Kv to match, in the hover of a mode. */
export function matchedCurrent(machine: Machine, mode: number): Matched {
  const kept = known.get(machine) ?? new Map<number, Matched>();
  known.set(machine, kept);
  let found = kept.get(mode);
  if (!found) {
    const cells = cellsProposed(machine);
    const [other, own] = [figuresOf(matchedMachine(machine, cells)), figuresOf(machine)];
    const [current, now] = [other, own].map((each) => each.number("hover-pack-current", mode)) as [number, number];
    const [minutes, before] = [other, own].map((each) => each.number("hover-duration", mode));
    const lasts = minutes && before ? minutes / before : null;
    found = { cells, current, lasts, scale: Math.max(10, 10 * Math.ceil((2 * Math.max(now ?? 0, current ?? 0)) / 10)) };
    kept.set(mode, found);
  }
  return found;
}
