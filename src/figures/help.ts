/** What would help a mode that can't be held: a lower speed, another pinion, more cells. Each is tried on the model. */

import { rpm } from "#model/constants";
import { openCellVoltage } from "#model/ocv";
import { ceilingAt } from "#model/steady";
import type { Figures } from "./figures.ts";
import type { LoadName } from "./rig.ts";

export interface Help {
  /** rpm, a round figure below the ceiling; null when the usable band holds none. */
  readonly slower: number | null;
  /** Teeth of the smallest pinion that holds it after learning again. */
  readonly pinion: number | null;
  readonly cells: number | null;
}

const MORE_TEETH = 4;
const MORE_CELLS = 2;
const ROUND_RPM = 10;

/** What would help a mode at a load. Units: rpm, teeth, cells. Errors: null for a way that doesn't help. Source: `ceilingAt`. */
export function helpFor(figures: Figures, load: LoadName, mode: number): Help {
  const { rig } = figures;
  const { train, parts } = rig;
  const set = parts.modes[mode]?.headSpeed ?? 0;
  const torque = rig.load(load, mode);
  const holds = (other: Partial<typeof train>): boolean => {
    const found = ceilingAt({ ...train, ...other }, torque, set);
    return found.ok && found.speed >= set;
  };
  const ceiling = figures.number(load === "hover" ? "ceiling-hover" : "ceiling-full-pitch", mode);
  const slowest = figures.number("usable-low-head-speed") ?? 0;
  const below = ceiling === null ? null : Math.floor(ceiling / ROUND_RPM) * ROUND_RPM;
  const { pinionTeeth } = parts.gears;
  let pinion: number | null = null;
  for (let more = 1; more <= MORE_TEETH && pinion === null; more++) {
    if (holds({ gearRatio: (train.gearRatio * pinionTeeth) / (pinionTeeth + more) })) pinion = pinionTeeth + more;
  }
  const { cells, chemistry, charge, cellResistance } = parts.pack;
  const cell = openCellVoltage(chemistry, charge) ?? 0;
  let moreCells: number | null = null;
  for (let more = 1; more <= MORE_CELLS && moreCells === null; more++) {
    const packResistance = train.packResistance + more * cellResistance;
    if (holds({ openVoltage: train.openVoltage + more * cell, packResistance })) moreCells = cells + more;
  }
  return {
    slower: below !== null && below >= slowest && below * rpm < set ? below : null,
    pinion,
    cells: moreCells,
  };
}
