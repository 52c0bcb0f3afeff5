/** What the controller would learn with other parts. */
import type { Powertrain } from "#model/powertrain";
import { learnedReference } from "#model/reference";
import { learningSpeed } from "#model/steady";
import type { Figures } from "./figures.ts";

/** Measured over expected while it learned: what a fresh reference tells of this machine holds with other gears too. Ratio. */
function learnedFactor({ bearings, rig }: Figures): number {
  const { state, motorSpeed, learning } = bearings.reference();
  if (state !== "fresh" || motorSpeed === null || learning === null) return 1;
  return (motorSpeed * rig.parts.controller.learned.throttle) / (learning * rig.ratio);
}

/** What would be learned anew with other parts: the head speed to expect in the run, and the reference, both rad/s. */
interface LearnedAnew {
  readonly head: number;
  readonly reference: number;
}

/**
 * What a machine would learn with another chain. Units: rad/s. Errors: null where the motor doesn't turn. Source: `learningSpeed`;
 * what a fresh measurement says of this machine is carried along.
 *
 * @param full the other chain, with a full pack
 */
export function learnedWith(figures: Figures, full: Powertrain): LearnedAnew | null {
  const { rig } = figures;
  const { throttle } = rig.parts.controller.learned;
  const found = learningSpeed(full, rig.flat, throttle);
  if (!found.ok) return null;
  const motorSpeed = found.speed * full.gearRatio * learnedFactor(figures);
  return { head: found.speed, reference: learnedReference({ motorSpeed, throttle }) };
}
