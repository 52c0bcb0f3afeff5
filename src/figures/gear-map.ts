/** Every pinion and main gear around those that are fitted, with one figure each: what a map of gears shows. */
import { fieldAt } from "#machine/fields";
import { tipSpeed } from "#model/blades";
import { pinionFit } from "#model/gears-mesh";
import { bandPlace } from "#model/reference";
import type { Figures } from "./figures.ts";
import { type Gearing, type GearQuantity, gearingBy } from "./gearing.ts";

/**
 * What stands against a pair, the worst first: nobody hovers with it; its tips could be driven past the blades' limit, or its
 * throttle lies above or below the usable band (where these are asked for); its motor turns too fast; full pitch isn't held.
 */
export const gearMarks = ["no-hover", "over-limit", "above-band", "below-band", "motor-fast", "short"] as const;
export type GearMark = (typeof gearMarks)[number];

/** One pair of gears on the map. */
export interface GearCell {
  readonly pinionTeeth: number;
  readonly mainTeeth: number;
  readonly ratio: number;
  /** How far the motor moves away from the main gear, mm; negative: towards it. */
  readonly shiftMm: number;
  /** Whether the mount's slot reaches that far. */
  readonly fits: boolean;
  readonly mark: GearMark | null;
  readonly value: number | null;
}

export interface GearMap {
  readonly pinions: readonly number[];
  readonly mains: readonly number[];
  /** Row by row: a main gear each, pinions along. */
  readonly cells: readonly GearCell[];
}

/** Teeth to either side of the gear that is fitted. */
const AROUND = 4;

function teethAround(path: "gears.pinionTeeth" | "gears.mainTeeth", fitted: number): number[] {
  const { min, max } = fieldAt(path);
  const first = Math.max(min, Math.min(fitted - AROUND, max - 2 * AROUND));
  return Array.from({ length: 2 * AROUND + 1 }, (_, i) => first + i);
}

function markOf(
  { rig }: Figures,
  { held, motorTooFast }: Gearing,
  quantity: GearQuantity,
  value: number | null,
): GearMark | null {
  if (held === "not") return "no-hover";
  const { mainRotor, controller } = rig.parts;
  if (quantity === "tip" && value !== null && mainRotor.ratedSpeed !== null) {
    if (value > tipSpeed({ speed: mainRotor.ratedSpeed, radius: mainRotor.radius })) return "over-limit";
  }
  if (quantity === "throttle" && value !== null) {
    const place = bandPlace(value / 100, controller.usableLow, controller.usableHigh);
    if (place !== "inside") return place === "above" ? "above-band" : "below-band";
  }
  if (motorTooFast) return "motor-fast";
  return held === "hover" ? "short" : null;
}

/**
 * A figure for every pinion and main gear around those that are fitted. `travelMm` is how far the motor's screws let it
 * slide each way, mm. Units: `gearUnits`. Errors: null values where the machine can't do it. Source: `gearingBy`, `pinionFit`.
 */
export function gearMap(figures: Figures, mode: number, quantity: GearQuantity, travelMm: number): GearMap {
  const { gears } = figures.rig.parts;
  const pinions = teethAround("gears.pinionTeeth", gears.pinionTeeth);
  const mains = teethAround("gears.mainTeeth", gears.mainTeeth);
  const together = gears.pinionTeeth + gears.mainTeeth;
  const travel = travelMm / 1000;
  const cells = mains.flatMap((mainTeeth) =>
    pinions.map((pinionTeeth): GearCell => {
      const gearing = gearingBy(figures, mode, { ...gears, pinionTeeth, mainTeeth });
      // A tooth more on either gear moves the shafts apart by the same.
      const { shift, fits } = pinionFit(gears.module, together, pinionTeeth + mainTeeth, travel);
      const value = gearing.number(quantity);
      const mark = markOf(figures, gearing, quantity, value);
      return { pinionTeeth, mainTeeth, ratio: gearing.ratio, shiftMm: 1000 * shift, fits, mark, value };
    }),
  );
  return { pinions, mains, cells };
}
