/** What another pinion gives: the most the rotor can turn, and how the teeth share the load. All else as the machine has it. */
import { fieldAt } from "#machine/fields";
import { rpm } from "#model/constants";
import { ratioOf } from "#model/gears";
import { meshOf } from "#model/gears-mesh";
import { ceilingAt } from "#model/steady";
import { undercutContactRatio } from "#model/undercut";
import type { Figures } from "./figures.ts";

const FEWEST_TEETH = 6;
const MOST_DRAWN = 26;
/** Steps of a curve over the pinions: each costs a ceiling, and the curve is smooth. */
const STEPS = 14;
const ROUND = 10;

/** Pinions to draw: from a small one to about three times the one fitted, as far as there are any. Unit: teeth. Source: definition. */
function pinionsAround(fitted: number): number[] {
  const first = Math.min(FEWEST_TEETH, fitted);
  // Ends at a round count, so that a step of the pinion seldom moves the end.
  const last = Math.min(
    Math.max(Math.ceil((3 * fitted) / ROUND) * ROUND, MOST_DRAWN),
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

/**
 * Mean number of tooth pairs in contact for a pinion on the machine's main gear, a ratio; an undercut pinion's is what the
 * undercut leaves. Null where there is no mesh. Source: `meshOf`, `undercutContactRatio`.
 */
export function contactWith(figures: Figures, pinionTeeth: number): number | null {
  const { module, mainTeeth } = figures.rig.parts.gears;
  const mesh = meshOf({ module, pinionTeeth, mainTeeth });
  if (!mesh) return null;
  const contact = mesh.undercut ? Math.min(mesh.contactRatio, undercutContactRatio(pinionTeeth)) : mesh.contactRatio;
  return Number.isFinite(contact) ? contact : null;
}
