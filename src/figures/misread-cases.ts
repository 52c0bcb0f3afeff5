/** Cases to puzzle over: readings as one fault would give them, for a machine of the reader's own. */
import type { Figures } from "./figures.ts";
import { explain, type Reading } from "./misread.ts";
import { type Cause, type CauseKey, causesOf, type Setting } from "./misread-causes.ts";

/** Readings that a fault would give, with small errors of reading, for a case to puzzle over. */
export interface Planted {
  /** Its place among the cases; the next one has the next place. */
  readonly place: number;
  readonly key: CauseKey;
  readonly sizes: Cause["sizes"];
  readonly reading: Reading;
}

/** The faults of the cases, in their order, with how the rotor is read. */
const cases: readonly (Omit<Setting, "modes"> & { readonly key: CauseKey; readonly open?: number })[] = [
  { key: "teeth", instrument: "optical", load: "hover" },
  { key: "poles", instrument: "display", load: "hover" },
  { key: "ceiling", instrument: "optical", load: "full-pitch" },
  { key: "low-end", instrument: "optical", load: "hover", open: 0.09 },
  { key: "blades", instrument: "optical", load: "hover" },
  { key: "flicker", instrument: "optical", load: "flat" },
  { key: "pack-then", instrument: "display", load: "hover" },
];

/** Errors of single readings, as multiples of their standard uncertainty: fixed, so that a case is the same again. */
const errors = [0.4, -0.5, 0.3, -0.2, 0.5, -0.3];
/** How sure the readings of a case are. */
const CASE_SURE = 0.004;

/**
 * The case of a number from 0 up: a fault with readings in every mode that the ranking itself lays at this fault's door.
 * Cases that this machine can't tell apart are passed over; null when it can tell none. Units: rpm. Source: ours.
 */
export function plantedCase(figures: Figures, number: number): Planted | null {
  for (let step = 0; step < cases.length; step++) {
    const place = (number + step) % cases.length;
    const planted = plant(figures, place);
    if (planted) return { ...planted, place };
  }
  return null;
}

type Puzzle = Omit<Planted, "place">;

function plant(figures: Figures, place: number): Puzzle | null {
  const chosen = cases[place];
  if (!chosen) return null;
  const { key, instrument, load, open = 0 } = chosen;
  const modes = figures.machine.modes.map((_, mode) => mode);
  // Of all sizes those first that are easy to see and still believable.
  const sizes = causesOf(figures, { instrument, load, modes })
    .filter((cause) => cause.key === key)
    .map((cause) => readingOf(cause, chosen, modes, open));
  for (const planted of sizes.sort((a, b) => strayOf(figures, a) - strayOf(figures, b)).slice(0, 6)) {
    const [first] = explain(figures, planted.reading);
    if (first?.key === key && first.fits && first.weight > 0.6) return planted;
  }
  return null;
}

/** How far the readings lie from a stray of seven per cent in the mode that strays most: enough to see, and believable. */
function strayOf(figures: Figures, { reading }: Puzzle): number {
  const strays = reading.rows.map(({ mode, measured }) =>
    Math.abs(measured / (figures.number("set-head-speed", mode) ?? measured) - 1),
  );
  return Math.abs(Math.max(...strays) - 0.07);
}

function readingOf(
  { key, sizes, reads, open }: Cause,
  { instrument, load }: Omit<Setting, "modes">,
  modes: readonly number[],
  share: number,
): Puzzle {
  const rows = modes.map((mode, i) => {
    const speed = (reads[i] ?? 0) * (1 + share * (open.shares[i] ?? 0));
    return { mode, measured: Math.round(speed * (1 + CASE_SURE * (errors[i % errors.length] ?? 0))) };
  });
  return { key, sizes, reading: { instrument, load, sure: CASE_SURE, rows } };
}
