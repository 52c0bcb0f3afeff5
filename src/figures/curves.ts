/** Curves for plots: a figure over a range of one input, all else as the machine has it. */
import { fieldAt } from "#machine/fields";
import { tipSpeed } from "#model/blades";
import { rpm } from "#model/constants";
import { ratioOf } from "#model/gears";
import { ceilingAt } from "#model/steady";
import type { Figures } from "./figures.ts";
import type { LoadName } from "./rig.ts";

/** Charges at which ceilings are worked out: closer together where the voltage of a cell falls fast. */
const charges = [0, 1, 2, 3, 5, 8, 11, 15, 20, 26, 33, 40, 48, 56, 64, 72, 80, 87, 94, 100] as const;

/** A ceiling over the charge of the pack. */
export interface CeilingCurve {
  /** Per cent, rising. */
  readonly charges: readonly number[];
  /** rpm; null where the motor can't turn this rotor. */
  readonly speeds: readonly (number | null)[];
}

const ceilings = new WeakMap<Figures, Map<string, CeilingCurve>>();

/** Ceiling in rpm against charge in per cent, for a load of a mode. Errors: null where there is none. Source: `ceilingAt`. */
export function ceilingCurve(figures: Figures, load: LoadName, mode: number): CeilingCurve {
  let known = ceilings.get(figures);
  if (!known) {
    known = new Map();
    ceilings.set(figures, known);
  }
  const key = `${load} ${load === "hover" ? "" : mode}`;
  let curve = known.get(key);
  if (!curve) {
    const { rig } = figures;
    const torque = rig.load(load, mode);
    let near: number | undefined;
    const speeds = charges.map((charge) => {
      const found = ceilingAt(rig.trainAt(charge / 100), torque, near);
      near = found.ok ? found.speed : undefined;
      return found.ok ? found.speed / rpm : null;
    });
    curve = { charges, speeds };
    known.set(key, curve);
  }
  return curve;
}

/** Tip speeds over the pinion's teeth. */
export interface TipSpeeds {
  readonly pinions: readonly number[];
  /** m/s */
  readonly speeds: readonly number[];
  /** The blade maker's limit as a tip speed, m/s; null where none is printed. */
  readonly limit: number | null;
}

/** At least so many teeth to either side of the pinion that is fitted, and at most twice as many. */
const AROUND = 4;
const { min: FEWEST, max: MOST } = fieldAt("gears.pinionTeeth");

/** The first of the pinions around one. It goes on by whole steps: with each tooth the whole plot would move under the eyes. */
function firstAround(pinionTeeth: number): number {
  const first = AROUND * Math.round(pinionTeeth / AROUND - 1.5);
  return Math.max(FEWEST, Math.min(first, MOST - 3 * AROUND));
}

/**
 * Tip speed, m/s, for pinions around the one fitted, with the mode's throttle left as it is and the reference not learned
 * again: the motor's speed stays, the rotor's goes with the ratio. Source: definition of the set speed.
 */
export function tipSpeedByPinion(figures: Figures, mode: number): TipSpeeds {
  const { rig } = figures;
  const { gears, mainRotor, modes } = rig.parts;
  const first = firstAround(gears.pinionTeeth);
  const pinions = Array.from({ length: 3 * AROUND + 1 }, (_, i) => first + i);
  const speed = modes[mode]?.headSpeed ?? 0;
  return {
    pinions,
    speeds: pinions.map((pinionTeeth) =>
      tipSpeed({ speed: (speed * rig.ratio) / ratioOf({ ...gears, pinionTeeth }), radius: mainRotor.radius }),
    ),
    limit: mainRotor.ratedSpeed === null ? null : tipSpeed({ speed: mainRotor.ratedSpeed, radius: mainRotor.radius }),
  };
}
