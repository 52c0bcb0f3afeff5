/** What a load draws from the pack now, whether it is held or not. */
import { currentForTorque } from "#model/powertrain";
import type { Figures } from "./figures.ts";
import type { LoadName } from "./rig.ts";

/** Current out of the pack, A. */
export interface Drawn {
  readonly current: number;
  /** The mode's speed isn't held: it is the current of full duty, at the ceiling. */
  readonly fullDuty: boolean;
}

/**
 * Current out of the pack under a load of a mode, A, at the machine's charge: at the set speed, or at full duty where that
 * isn't held. Errors: null where the rotor doesn't turn. Source: `operatingPoint`; at full duty pack and motor share one current.
 */
export function drawnNow({ bearings, rig }: Figures, load: LoadName, mode: number): Drawn | null {
  const held = bearings.point(load, mode);
  if (held) return { current: held.packCurrent, fullDuty: false };
  const ceiling = bearings.steady(load, mode);
  return ceiling.ok ? { current: currentForTorque(rig.train, ceiling.torque), fullDuty: true } : null;
}
