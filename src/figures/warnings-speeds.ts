/** Warnings of parts that turn faster than they may: in a mode, under a stale reference, and in the learning run. */
import { rpm } from "#model/constants";
import { electricalSpeed } from "#model/poles";
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

/** Head speed, rpm, that a mode's old throttle gives; null where that throttle is still right. */
const staleHead = (figures: Figures, mode: number): number | null =>
  figures.bearings.reference().state === "stale" ? figures.number("stale-head-speed", mode) : null;

function staleMotor(figures: Figures, mode: number): number | null {
  const head = staleHead(figures, mode);
  return head === null ? null : head * figures.rig.ratio;
}

function staleElectrical(figures: Figures, mode: number): number | null {
  const motorSpeed = staleMotor(figures, mode);
  return motorSpeed === null ? null : electricalSpeed({ motorSpeed, poles: figures.machine.motor.poles });
}

const bladeLimit = ({ machine }: Figures) => machine.mainRotor.ratedRpm;
const motorLimit = ({ machine }: Figures) => machine.motor.ratedRpm;
const electricalLimit = ({ machine }: Figures) => machine.controller.electricalRpmLimit;
const { bladeSpeed, motorSpeed, electricalSpeed: fieldSpeed, staleSpeeds } = warningWords;

/** Speeds of a mode against what the makers print: as it is set, and as the old throttle makes it. */
export const makersChecks: readonly ModeCheck[] = [
  overSpeed("blade-speed-over-limit", (f, mode) => f.number("set-head-speed", mode), bladeLimit, bladeSpeed),
  overSpeed("blade-speed-over-limit", staleHead, bladeLimit, staleSpeeds.bladeSpeed),
  overSpeed("motor-speed-over-limit", (f, mode) => f.number("motor-speed", mode), motorLimit, motorSpeed),
  overSpeed("motor-speed-over-limit", staleMotor, motorLimit, staleSpeeds.motorSpeed),
  overSpeed(
    "electrical-speed-over-limit",
    (f, mode) => f.number("electrical-speed", mode),
    electricalLimit,
    fieldSpeed,
  ),
  overSpeed("electrical-speed-over-limit", staleElectrical, electricalLimit, staleSpeeds.electricalSpeed),
];

/** The tail's limit is where its tips come to the same Mach number as the main rotor's may. */
export const tailTooFast: ModeCheck = overSpeed(
  "tail-speed-high",
  (f, mode) => f.number("tail-rotor-speed", mode),
  ({ rig }) => (machLimit * rig.air.soundSpeed) / rig.parts.tailRotor.radius / rpm,
  warningWords.tailSpeed,
);
