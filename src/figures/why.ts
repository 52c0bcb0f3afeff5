/** Why a mode can't be held, and why a figure has no value: looked up in what the model itself said. */
import type { QuantityName } from "./catalogue.ts";
import type { Figures } from "./figures.ts";
import type { LoadName } from "./rig.ts";
import { noValueWords, type Obstacle, obstacleWords } from "./words.ts";

/** Share of a speed or a limit by which two ways of working it out may differ. */
export const rounding = 1e-9;

/** What keeps a mode's set speed from being held at a load; null where it is held. Units: none. Source: `ceilingAt`. */
export function obstacle({ bearings, rig }: Figures, load: LoadName, mode: number): Obstacle | null {
  const set = rig.parts.modes[mode]?.headSpeed ?? 0;
  const steady = bearings.steady(load, mode);
  if (!steady.ok) return steady.why;
  // At the ceiling itself full duty holds, whatever rounding says.
  if (steady.speed < set * (1 - rounding)) return "too fast";
  if (bearings.torque(load, mode) === null) return "blades stall";
  return bearings.point(load, mode) === null ? "too slow" : null;
}

/** Figures of a mode that follow from one load. */
const hover: readonly QuantityName[] = [
  "ceiling-hover",
  "speed-headroom-hover",
  "duty-hover",
  "hover-collective",
  "hover-power",
  "hover-motor-current",
  "hover-pack-current",
  "hover-duration",
  "hover-board-heat",
  "hover-efficiency",
];
const fullPitch: readonly QuantityName[] = [
  "ceiling-full-pitch",
  "speed-headroom-full-pitch",
  "duty-full-pitch",
  "full-pitch-pack-current",
  "full-pitch-motor-current",
  "full-pitch-board-heat",
  "full-pitch-efficiency",
  "full-pitch-duration",
];

/** A sentence that says why a figure has no value. Units: none. Errors: none. Source: that of the figure. */
export function whyNone(figures: Figures, name: QuantityName, mode = 0): string {
  if (name === "hover-collective" || name === "hover-power") return obstacleWords["blades stall"];
  if (name === "lowest-charge") return noValueWords.lowestCharge;
  const load = hover.includes(name) ? "hover" : fullPitch.includes(name) ? "full-pitch" : null;
  const found = load && obstacle(figures, load, mode);
  if (found) return obstacleWords[found];
  if (name === "no-load-head-speed") return obstacleWords["motor does not turn"];
  const learnedNothing = name === "learning-head-speed" || figures.bearings.reference().motorSpeed === null;
  return learnedNothing ? noValueWords.noReference : noValueWords.other;
}
