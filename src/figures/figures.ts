/** All that the model says of a machine, worked out when it is asked for and kept. */
import type { Machine } from "#machine/machine";
import { catalogue, type QuantityName, quantityNames } from "./catalogue.ts";
import { type ModelDoubt, type Rig, rigOf } from "./rig.ts";
import { type Bearings, bearingsOf, type Value, values } from "./values.ts";
import type { Warning } from "./warning.ts";
import { warningsOf } from "./warnings.ts";

export interface Figures {
  readonly machine: Machine;
  readonly rig: Rig;
  readonly bearings: Bearings;
  /** A figure in the unit of the catalogue, or null where it has none. `mode` counts where each mode has its own. */
  value(name: QuantityName, mode?: number): Value;
  /** The same for a figure that is a number. */
  number(name: QuantityName, mode?: number): number | null;
  readonly warnings: readonly Warning[];
}

class LazyFigures implements Figures {
  readonly machine: Machine;
  readonly rig: Rig;
  readonly bearings: Bearings;
  /** By name, for each mode; one for all of them where they don't differ. */
  readonly #known = new Map<QuantityName, (Value | undefined)[]>();
  #warnings: readonly Warning[] | null = null;

  constructor(machine: Machine, doubt: ModelDoubt = {}) {
    this.machine = machine;
    this.rig = rigOf(machine, doubt);
    this.bearings = bearingsOf(this.rig);
  }

  value(name: QuantityName, mode = 0): Value {
    let known = this.#known.get(name);
    if (!known) {
      known = [];
      this.#known.set(name, known);
    }
    const place = catalogue[name].perMode ? mode : 0;
    let value = known[place];
    if (value === undefined) {
      value = values[name](this.bearings, mode);
      // Whatever went past a relation's range is no figure; it must never be shown as one.
      if (typeof value === "number" && !Number.isFinite(value)) value = null;
      known[place] = value;
    }
    return value;
  }

  number(name: QuantityName, mode = 0): number | null {
    const value = this.value(name, mode);
    return typeof value === "number" ? value : null;
  }

  get warnings(): readonly Warning[] {
    this.#warnings ??= warningsOf(this);
    return this.#warnings;
  }
}

const made = new WeakMap<Machine, Figures>();

/** The figures of a machine. The same record gives the same figures again. Units: those of the catalogue. Source: definition. */
export function figuresOf(machine: Machine): Figures {
  let figures = made.get(machine);
  if (!figures) {
    figures = new LazyFigures(machine);
    made.set(machine, figures);
  }
  return figures;
}

/** The figures of a machine under a doubt, about its parts or about the model itself: not kept. Units, source: as `figuresOf`. */
export const doubtedFigures = (machine: Machine, doubt: ModelDoubt): Figures => new LazyFigures(machine, doubt);

/** Every figure of a machine in the order of the catalogue, those of the modes once each. */
export function everyQuantity(figures: Figures): { name: QuantityName; mode: number | null }[] {
  return quantityNames.flatMap((name): { name: QuantityName; mode: number | null }[] =>
    catalogue[name].perMode ? figures.machine.modes.map((_, mode) => ({ name, mode })) : [{ name, mode: null }],
  );
}
