/** Warnings of parts that turn faster than they may: in a mode and in the learning run. */
import { rpm } from "#model/constants";
import type { Figures } from "./figures.ts";
import { isOver, learningOver, machLimit } from "./limits.ts";
import { modeName } from "./mode-name.ts";
import type { Found, ModeCheck, WarningName } from "./warning.ts";
import { warningWords } from "./words.ts";

/** The learning run against the limits of all that it turns. Units: rpm. Errors: none. Source: `learningOver`. */
export function learningTooFast(figures: Figures): Found {
  const over = learningOver(figures);
  if (!over) return null;
  const words = warningWords.learningRun(over.what, over.value, over.limit);
  return { name: "learning-speed-over-limit", value: over.value, limit: over.limit, unit: "rpm", words };
}

/** A speed of a mode against a limit, both rpm. */
function overSpeed(
  name: WarningName,
  speed: (figures: Figures, mode: number) => number | null,
  limit: (figures: Figures) => number | null,
  say: (mode: string, speed: number, limit: number) => string,
): ModeCheck {
  return (figures, mode) => {
    const value = speed(figures, mode);
    const most = limit(figures);
    if (value === null || most === null || !isOver(value, most)) return null;
    return { name, value, limit: most, unit: "rpm", words: say(modeName(figures.machine, mode), value, most) };
  };
}

const bladeLimit = ({ machine }: Figures) => machine.mainRotor.ratedRpm;
const motorLimit = ({ machine }: Figures) => machine.motor.ratedRpm;
const electricalLimit = ({ machine }: Figures) => machine.controller.electricalRpmLimit;
const { bladeSpeed, motorSpeed, electricalSpeed } = warningWords;

/** Speeds of a mode against what the makers print. */
export const makersChecks: readonly ModeCheck[] = [
  overSpeed("blade-speed-over-limit", (f, mode) => f.number("set-head-speed", mode), bladeLimit, bladeSpeed),
  overSpeed("motor-speed-over-limit", (f, mode) => f.number("motor-speed", mode), motorLimit, motorSpeed),
  overSpeed(
    "electrical-speed-over-limit",
    (f, mode) => f.number("electrical-speed", mode),
    electricalLimit,
    electricalSpeed,
  ),
];

/** The tail's limit is where its tips come to the same Mach number as the main rotor's may. */
export const tailTooFast: ModeCheck = overSpeed(
  "tail-speed-high",
  (f, mode) => f.number("tail-rotor-speed", mode),
  ({ rig }) => (machLimit * rig.air.soundSpeed) / rig.parts.tailRotor.radius / rpm,
  warningWords.tailSpeed,
);
