/**
 * What can stand between the head speed that a throttle asks for and the one that is read: faults of the reading, of the
 * throttle, of what was learned, of the parts entered, and of what the machine can hold. Each says what would be read in
 * every mode if it were the only fault.
 */
import type { Figures } from "./figures.ts";
import {
  bladesMade,
  ceilingMade,
  flickerMade,
  type Made,
  packThenMade,
  pitchThenMade,
  polesMade,
  type ReadMachine,
  referenceMade,
  roundingMade,
  spreads,
  teethMade,
  times,
  travelMade,
  turns,
  wrongWholeMade,
} from "./misread-makers.ts";

/** A display counts electrical turns, as a log does; an optical tachometer counts blades that pass. */
export type Instrument = "display" | "optical";

/** What the rotor does while it is read. */
export type ReadingLoad = "flat" | "hover" | "full-pitch";

/** How a head speed is read, the same for all modes. */
export interface Setting {
  readonly instrument: Instrument;
  readonly load: ReadingLoad;
  /** Modes that were read, by their places in the machine's list. */
  readonly modes: readonly number[];
}

export type CauseKey =
  | "nothing"
  | "poles"
  | "display-teeth"
  | "blades"
  | "flicker"
  | "teeth"
  | "reference"
  | "pack-then"
  | "pitch-then"
  | "ceiling"
  | "end-point"
  | "low-end"
  | "offset"
  | "rounding"
  | "wrong-whole";

/** One fault of one size: what it makes of every mode that is read. */
export interface Cause extends Made {
  readonly key: CauseKey;
  /** How likely it is before anything is read, beside the others. */
  readonly before: number;
}

/**
 * How often a fault is met, beside the others: our own judgement of the trade, no source. Sizes share their fault's weight.
 */
const weights: Readonly<Record<CauseKey, number>> = {
  nothing: 2,
  poles: 2,
  "display-teeth": 1,
  blades: 1.5,
  flicker: 1,
  teeth: 1.5,
  reference: 2,
  "pack-then": 1,
  "pitch-then": 0.5,
  ceiling: 1.5,
  "end-point": 0.7,
  "low-end": 0.7,
  offset: 0.7,
  rounding: 1,
  "wrong-whole": 0.5,
};

const makers: Readonly<Record<CauseKey, { readonly by?: Instrument; readonly make: (read: ReadMachine) => Made[] }>> = {
  nothing: { make: (b) => [times(b, 1)] },
  poles: { by: "display", make: polesMade },
  "display-teeth": { by: "display", make: (b) => teethMade(b, times) },
  blades: { by: "optical", make: bladesMade },
  flicker: { by: "optical", make: flickerMade },
  // A display divides by the teeth that it was told: it can't see that others are fitted.
  teeth: { by: "optical", make: (b) => teethMade(b, turns) },
  reference: { make: referenceMade },
  "pack-then": { make: packThenMade },
  "pitch-then": { make: pitchThenMade },
  ceiling: { make: ceilingMade },
  "end-point": { make: (b) => travelMade(b, () => 1) },
  "low-end": { make: (b) => travelMade(b, (throttle) => (1 - throttle) / throttle) },
  offset: { make: (b) => travelMade(b, (throttle) => 1 / throttle, spreads.trim) },
  rounding: { make: roundingMade },
  "wrong-whole": { make: wrongWholeMade },
};

/** Every kind of fault, for lists and words. */
export const causeKeys = Object.keys(makers) as readonly CauseKey[];

/** Whether a fault can come up with an instrument. No unit. Errors: none. Source: how each counts. */
export const canShow = (key: CauseKey, instrument: Instrument): boolean => {
  const { by } = makers[key];
  return by === undefined || by === instrument;
};

/** The most that the rotor can turn under a load, rpm; null where it isn't known. */
function ceilingOf(figures: Figures, load: ReadingLoad, mode: number): number | null {
  if (load === "flat") return figures.number("no-load-head-speed");
  return figures.number(load === "hover" ? "ceiling-hover" : "ceiling-full-pitch", mode);
}

const known = new WeakMap<Figures, Map<string, readonly Cause[]>>();

/**
 * All faults that could be behind readings taken so, one at a time, with what each would make of them. Units: rpm, shares.
 * Errors: a fault that this machine can't have is left out. Source: definitions of throttle, reference, ratio and poles;
 * common practice for how often each is met.
 */
export function causesOf(figures: Figures, setting: Setting): readonly Cause[] {
  const kept = known.get(figures) ?? new Map<string, readonly Cause[]>();
  known.set(figures, kept);
  const key = `${setting.instrument} ${setting.load} ${setting.modes.join()}`;
  const causes = kept.get(key) ?? made(figures, setting);
  kept.set(key, causes);
  return causes;
}

function made(figures: Figures, setting: Setting): Cause[] {
  const asked = setting.modes.map((mode) => figures.number("set-head-speed", mode) ?? 0);
  const throttles = setting.modes.map((mode) => figures.number("throttle", mode));
  const read: ReadMachine = {
    figures,
    modes: setting.modes,
    asked,
    throttles: throttles.every((throttle) => throttle !== null) ? throttles.map((throttle) => throttle! / 100) : null,
    ceilings: setting.modes.map((mode) => ceilingOf(figures, setting.load, mode)),
  };
  return causeKeys
    .filter((key) => canShow(key, setting.instrument))
    .flatMap((key) => {
      const made = makers[key]
        .make(read)
        .filter(({ reads }) => reads.every((speed) => Number.isFinite(speed) && speed > 0));
      return made.map((each): Cause => ({ ...each, key, before: weights[key] / made.length }));
    });
}
