/**
 * How sure a figure is. Every input is moved by its standard uncertainty, up and down, the figure is worked out anew, and
 * the moves are added as squares. Each side is added on its own, so a limit that bends the answer bends its band.
 * Two doubts about the model itself come on top: the scatter between cells, and the rotor model's error.
 */
import { fields } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { valueAt, withValue } from "#machine/paths";
import { rpm } from "#model/constants";
import { cellCurves } from "#model/ocv";
import { reynoldsNumber } from "#model/rotor/blade";
import { expectedError } from "#model/rotor/doubt";
import { catalogue, type QuantityName } from "./catalogue.ts";
import { doubtedFigures, type Figures } from "./figures.ts";
import type { Rig } from "./rig.ts";

/** Standard uncertainties in a band: two of them hold 19 in 20. Source: JCGM 100:2008 (GUM), 6.3.3. */
export const coverage = 2;

/** One input, or one doubt about the model, with the figures at either side of it. */
interface Doubt {
  /** Path of the field, or `model.cell-voltage`, `model.rotor`. */
  readonly path: string;
  readonly name: string;
  readonly down: Figures | null;
  readonly up: Figures | null;
}

/** What one doubt does to a figure, in the figure's unit. */
export interface Share {
  readonly path: string;
  readonly name: string;
  /** Change of the figure when the input goes down and up by its standard uncertainty. */
  readonly down: number;
  readonly up: number;
}

export interface Band {
  readonly low: number;
  readonly high: number;
  /** Standard uncertainty: the mean of both sides. */
  readonly uncertainty: number;
  /** What makes it up, the largest first. */
  readonly shares: readonly Share[];
}

interface Doubts {
  readonly inputs: readonly Doubt[];
  /** The rotor model's, by its size: modes that turn fast enough have the same one. */
  readonly rotor: Map<number, Doubt>;
}

const doubts = new WeakMap<Figures, Doubts>();

function doubtsOf(figures: Figures, name: QuantityName, mode: number): readonly Doubt[] {
  const { machine, rig } = figures;
  const known = doubts.get(figures) ?? { inputs: [...fieldDoubts(machine, rig), cellDoubt(machine)], rotor: new Map() };
  doubts.set(figures, known);
  const size = rotorDoubt(figures, speedFor(figures, name, mode));
  const rotor = known.rotor.get(size) ?? doubtOfRotor(machine, size);
  known.rotor.set(size, rotor);
  return [...known.inputs, rotor];
}

/** Head speed, rad/s, at which the rotors are doubted: the mode's, or that of the learning run for what has no mode. */
function speedFor(figures: Figures, name: QuantityName, mode: number): number {
  const learning = catalogue[name].perMode ? null : figures.number("learning-head-speed");
  return learning === null ? (figures.rig.parts.modes[mode]?.headSpeed ?? 0) : learning * rpm;
}

/**
 * Standard uncertainty of the rotors' torque at a head speed (rad/s), as a share of it: the model's own error to expect, by
 * the Reynolds number of the main rotor's tips. The tail's own, whose tips are smaller, is left out: it takes about a
 * tenth of the power, so that 20 % there would make 6 % into 6.3 %. Source: `expectedError`, which is such an uncertainty.
 */
export function rotorDoubt({ rig: { air, parts } }: Figures, speed: number): number {
  const { radius, chord } = parts.mainRotor;
  return expectedError(reynoldsNumber(air, speed * radius, chord));
}

/** The paths that a pattern with `*` stands for on this machine. */
function pathsOf(machine: Machine, pattern: string): string[] {
  return pattern.includes("*") ? machine.modes.map((_, i) => pattern.replace("*", String(i))) : [pattern];
}

function fieldDoubts(machine: Machine, of: Rig): Doubt[] {
  return fields.flatMap((field) => {
    const { relative = 0, absolute = 0 } = field.tolerance;
    if (relative === 0 && absolute === 0) return [];
    return pathsOf(machine, field.path).flatMap((path) => {
      const value = valueAt(machine, path);
      if (typeof value !== "number") return [];
      const spread = Math.hypot(relative * value, absolute);
      const at = (moved: number): Figures | null =>
        moved < field.min || moved > field.max || moved === value
          ? null
          : doubtedFigures(withValue(machine, path, moved), { of });
      return [{ path, name: field.name, down: at(value - spread), up: at(value + spread) }];
    });
  });
}

function cellDoubt(machine: Machine): Doubt {
  const { spread } = cellCurves[machine.pack.chemistry];
  return {
    path: "model.cell-voltage",
    name: "scatter between cells",
    down: doubtedFigures(machine, { cellVoltage: -spread }),
    up: doubtedFigures(machine, { cellVoltage: spread }),
  };
}

/** The rotor model off by a factor of one and its error, either way: so no torque falls below none, however large that is. */
function doubtOfRotor(machine: Machine, size: number): Doubt {
  return {
    path: "model.rotor",
    name: "the rotor model itself",
    down: doubtedFigures(machine, { rotorTorque: 1 / (1 + size) }),
    up: doubtedFigures(machine, { rotorTorque: 1 + size }),
  };
}

/** Figures that follow another in proportion once the reader has entered a throttle: rounding anew would make them jump. */
const inProportionTo: Partial<Record<QuantityName, QuantityName>> = {
  "head-speed-entered": "learned-head-speed",
  "stale-head-speed": "learned-head-speed",
};

const percent = [0, 100] as const;
const fromNone = [0, Number.POSITIVE_INFINITY] as const;

/** Figures that can't go further than this, however unsure they are: no charge or power below none, no time before the start. */
const ends: Partial<Record<QuantityName, readonly [number, number]>> = {
  "lowest-charge": percent,
  "duty-hover": percent,
  "duty-full-pitch": percent,
  "hover-efficiency": percent,
  "full-pitch-efficiency": percent,
  "hover-power": fromNone,
  "full-pitch-power": fromNone,
  "hover-motor-current": fromNone,
  "hover-pack-current": fromNone,
  "full-pitch-pack-current": fromNone,
  "full-pitch-motor-current": fromNone,
  "hover-board-heat": fromNone,
  "full-pitch-board-heat": fromNone,
  "hover-duration": fromNone,
  "full-pitch-duration": fromNone,
};

function scaled(value: number, base: number, band: Band): Band {
  const factor = value / base;
  const shares = band.shares.map((share) => ({ ...share, down: share.down * factor, up: share.up * factor }));
  return { low: band.low * factor, high: band.high * factor, uncertainty: band.uncertainty * factor, shares };
}

/** The band of a figure in its own unit; null for a figure that is no number. Source: GUM 5.1, sides kept apart. */
export function bandOf(figures: Figures, name: QuantityName, mode = 0): Band | null {
  const value = figures.number(name, mode);
  if (value === null) return null;
  // What is entered is entered: a whole number without a doubt.
  if (name === "throttle-entered") return { low: value, high: value, uncertainty: 0, shares: [] };
  const other = inProportionTo[name];
  const base = other ? figures.number(other, mode) : null;
  const otherBand = other ? bandOf(figures, other, mode) : null;
  if (base && otherBand) return scaled(value, base, otherBand);
  const change = (moved: Figures | null): number => {
    const other = moved?.number(name, mode) ?? null;
    // Past the point where the figure ends there is nothing to add: the band stops there.
    return other === null ? 0 : other - value;
  };
  let below = 0;
  let above = 0;
  const shares: Share[] = [];
  for (const { path, name: doubt, down, up } of doubtsOf(figures, name, mode)) {
    const share = { path, name: doubt, down: change(down), up: change(up) };
    if (share.down === 0 && share.up === 0) continue;
    below += Math.min(share.down, share.up, 0) ** 2;
    above += Math.max(share.down, share.up, 0) ** 2;
    shares.push(share);
  }
  const [down, up] = [Math.sqrt(below), Math.sqrt(above)];
  const [least, most] = ends[name] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const size = (share: Share) => Math.max(Math.abs(share.down), Math.abs(share.up));
  return {
    low: Math.max(least, value - coverage * down),
    high: Math.min(most, value + coverage * up),
    uncertainty: (down + up) / 2,
    shares: shares.sort((a, b) => size(b) - size(a)),
  };
}
