/** What another pinion gives: the most the rotor can turn, and how the teeth share the load. All else as the machine has it. */
import { fieldAt } from "#machine/fields";
import { rpm } from "#model/constants";
import { reserveCharge } from "#model/endurance";
import { ratioOf } from "#model/gears";
import { currentForTorque, type Powertrain } from "#model/powertrain";
import { ceilingAt } from "#model/steady";
import type { Figures } from "./figures.ts";

const FEWEST_TEETH = 6;
const MOST_DRAWN = 26;
/** Steps of a curve over the pinions: each costs a ceiling, and the curve is smooth. */
const STEPS = 14;
const ROUND = 20;
/** The curves go to so many times the teeth that are fitted, and on to the next round count. */
const REACH = 2.5;

/** Pinions to draw: from a small one to about three times the one fitted, as far as there are any. Unit: teeth. Source: definition. */
export function pinionsAround(fitted: number): number[] {
  const first = Math.min(FEWEST_TEETH, fitted);
  // Ends at a round count, so that a step of the pinion seldom moves the end.
  const last = Math.min(
    Math.max(Math.ceil((REACH * fitted) / ROUND) * ROUND, MOST_DRAWN),
    fieldAt("gears.pinionTeeth").max,
  );
  const step = Math.max(1, Math.ceil((last - first) / STEPS));
  const all = Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => first + i * step);
  return [...new Set([...all, fitted])].sort((a, b) => a - b);
}

/** The most the rotor can turn with each pinion, rpm, at the machine's charge. */
export interface PinionCeilings {
  readonly pinions: readonly number[];
  /** Nothing to drive but itself; null where the motor doesn't turn. */
  readonly free: readonly (number | null)[];
  /** null where the motor can't turn the rotor at full pitch. */
  readonly full: readonly (number | null)[];
}

const known = new WeakMap<Figures, Map<number, PinionCeilings>>();

/**
 * No-load head speed and ceilings (rpm) against the pinion, for the full pitch of a mode. Errors: null where there is none.
 * Source: `ceilingAt` and `noLoadSpeed` with another ratio; speeds without load go as one over the ratio.
 */
export function ceilingByPinion(figures: Figures, mode: number): PinionCeilings {
  const kept = known.get(figures) ?? new Map<number, PinionCeilings>();
  known.set(figures, kept);
  const before = kept.get(mode);
  if (before) return before;
  const { rig } = figures;
  const { gears } = rig.parts;
  const pinions = pinionsAround(gears.pinionTeeth);
  const ratios = pinions.map((pinionTeeth) => ratioOf({ ...gears, pinionTeeth }));
  const freeNow = figures.number("no-load-head-speed");
  const torque = rig.load("full-pitch", mode);
  let near: number | undefined;
  const full = ratios.map((gearRatio) => {
    const found = ceilingAt({ ...rig.train, gearRatio }, torque, near);
    near = found.ok ? found.speed : undefined;
    return found.ok ? found.speed / rpm : null;
  });
  const made = {
    pinions,
    free: ratios.map((ratio) => (freeNow === null ? null : (freeNow * rig.ratio) / ratio)),
    full,
  };
  kept.set(mode, made);
  return made;
}

/** Charges of the pack that the ceilings are compared at: full, and what is kept in reserve. */
export const comparedCharges = [1, reserveCharge] as const;

/** The most the rotor can turn at full pitch with each pinion, as the pack empties. */
export interface PinionTurn {
  readonly pinions: readonly number[];
  /** For each charge of `comparedCharges`: rpm; null where the motor can't turn the rotor. */
  readonly speeds: readonly (readonly (number | null)[])[];
  /** For each charge the pinion that makes the rotor fastest; null where that is the largest one that is looked at, or none. */
  readonly best: readonly (number | null)[];
  /** Pack current at the ceiling, A, at the machine's own charge. */
  readonly currents: readonly (number | null)[];
}

const turns = new WeakMap<Figures, Map<number, PinionTurn>>();

/** Where a bigger pinion stops making the rotor faster at a mode's full pitch: rpm, A, teeth. Errors: null where there is none. Source: `ceilingAt`. */
export function pinionTurn(figures: Figures, mode: number): PinionTurn {
  const kept = turns.get(figures) ?? new Map<number, PinionTurn>();
  turns.set(figures, kept);
  const before = kept.get(mode);
  if (before) return before;
  const { rig } = figures;
  const { gears } = rig.parts;
  const pinions = pinionsAround(gears.pinionTeeth);
  const torque = rig.load("full-pitch", mode);
  const ceilings = (train: Powertrain) => {
    let near: number | undefined;
    return (pinionTeeth: number) => {
      const found = ceilingAt({ ...train, gearRatio: ratioOf({ ...gears, pinionTeeth }) }, torque, near);
      near = found.ok ? found.speed : undefined;
      return found.ok ? found : null;
    };
  };
  const trains = comparedCharges.map((charge) => rig.trainAt(charge));
  const speeds = trains.map((train) => pinions.map(ceilings(train)).map((found) => found && found.speed / rpm));
  const best = speeds.map((curve, i) => {
    const found = ceilings(trains[i] ?? rig.train);
    return fastestOf(pinions, curve, (pinionTeeth) => found(pinionTeeth)?.speed ?? null);
  });
  const own = ceilings(rig.train);
  const currents = pinions.map((pinionTeeth) => {
    const found = own(pinionTeeth);
    // At the ceiling the duty is full, and pack and motor share one current.
    const gearRatio = ratioOf({ ...gears, pinionTeeth });
    return found && currentForTorque({ ...rig.train, gearRatio }, found.torque);
  });
  const made = { pinions, speeds, best, currents };
  kept.set(mode, made);
  return made;
}

/** The whole number of teeth at the top of a curve with one summit; null where it still rises at its end, or has no value. */
function fastestOf(
  pinions: readonly number[],
  curve: readonly (number | null)[],
  speedAt: (pinionTeeth: number) => number | null,
): number | null {
  const top = curve.reduce<number>((best, speed, i) => ((speed ?? 0) > (curve[best] ?? 0) ? i : best), 0);
  if (curve[top] == null || top === pinions.length - 1) return null;
  let [fastest, most] = [pinions[top] ?? 0, 0];
  for (let teeth = pinions[top - 1] ?? fastest; teeth <= (pinions[top + 1] ?? fastest); teeth++) {
    const speed = speedAt(teeth) ?? 0;
    if (speed > most) [fastest, most] = [teeth, speed];
  }
  return fastest;
}
