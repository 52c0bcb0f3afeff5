/** Everything that stands against a machine, by name: the figure, its limit, and the reason in words. */
import { fieldAt } from "#machine/fields";
import { inSentence } from "#machine/words";
import { rpm } from "#model/constants";
import { meshOf } from "#model/gears-mesh";
import { bandPlace } from "#model/reference";
import { tailThrust } from "#model/rotor-load";
import { undercutContactRatio } from "#model/undercut";
import type { Figures } from "./figures.ts";
import { helpFor } from "./help.ts";
import { keeper } from "./kept.ts";
import { isOver, learningOver } from "./limits.ts";
import { modeName } from "./mode-name.ts";
import type { LoadName } from "./rig.ts";
import { obstacle } from "./why.ts";
import { carryWords, fasterWords, helpWords, type Obstacle, warningWords } from "./words.ts";

export type WarningName =
  | "above-usable-band"
  | "below-usable-band"
  | "no-headroom"
  | "stale-reference"
  | "blade-speed-over-limit"
  | "motor-speed-over-limit"
  | "electrical-speed-over-limit"
  | "tip-mach-high"
  | "pack-current-high"
  | "pinion-mesh-poor"
  | "tail-speed-high"
  | "tail-thrust-short"
  | "hover-pitch-short"
  | "learning-speed-over-limit";

export interface Warning {
  readonly name: WarningName;
  /** The flight mode it belongs to; null for the whole machine. */
  readonly mode: number | null;
  readonly value: number | null;
  readonly limit: number;
  readonly unit: string;
  readonly words: string;
}

/** Tip Mach number above which drag climbs steeply on sections of 12 to 15 % at the lift of a hover: from memory. */
export const machLimit = 0.65;

/** Current over capacity, 1/h, that most packs bear for some seconds: common practice, no source. */
export const currentRateLimit = 35;

/** Contact ratio below which a mesh runs rough: any gear handbook (from memory). */
export const contactLimit = 1.2;

type Found = Omit<Warning, "mode"> | null;

/** Every warning of a machine, its modes in order. Units: each says its own. Errors: none. Source: each limit's own. */
export function warningsOf(figures: Figures): Warning[] {
  const whole = [staleReference(figures), learningTooFast(figures), poorMesh(figures)];
  const each = figures.machine.modes.flatMap((_, mode) =>
    modeChecks.map((check) => check(figures, mode)).flatMap((found) => (found ? [{ ...found, mode }] : [])),
  );
  return [...whole.flatMap((found) => (found ? [{ ...found, mode: null }] : [])), ...each];
}

const nameOf = (figures: Figures, mode: number): string => modeName(figures.machine, mode);

function staleReference({ bearings, rig }: Figures): Found {
  const { state, ratioThen, differing } = bearings.reference();
  if (state !== "stale") return null;
  const change = 100 * (ratioThen / rig.ratio - 1);
  const parts = differing.map((key) =>
    inSentence(fieldAt(`controller.learned.fittedWith.${key}`).name.replace(/ while it learned$/, "")),
  );
  return {
    name: "stale-reference",
    value: change,
    limit: 0,
    unit: "percent",
    words: warningWords.stale(parts, change),
  };
}

function learningTooFast(figures: Figures): Found {
  const over = learningOver(figures);
  if (!over) return null;
  const words = warningWords.learningRun(over.what, over.value, over.limit);
  return { name: "learning-speed-over-limit", value: over.value, limit: over.limit, unit: "rpm", words };
}

/** More pitch than the mode's highest, asked for by the hover alone. */
function hoverPitchShort(figures: Figures, mode: number): Found {
  const [hover, full] = (["hover", "full-pitch"] as const).map((load) => figures.bearings.torque(load, mode) ?? 0);
  // More pitch asks for more torque: both are known already, the pitch has to be solved for.
  if ((hover ?? 0) <= (full ?? 0)) return null;
  const value = figures.number("hover-collective", mode);
  const limit = figures.machine.modes[mode]?.collectiveMaxDeg ?? 0;
  if (value === null || !isOver(value, limit)) return null;
  const words = warningWords.hoverPitch(nameOf(figures, mode), value, limit);
  return { name: "hover-pitch-short", value, limit, unit: "deg", words };
}

function poorMesh({ rig }: Figures): Found {
  const { module, pinionTeeth, mainTeeth } = rig.parts.gears;
  const mesh = meshOf({ module, pinionTeeth, mainTeeth });
  const full = mesh?.contactRatio ?? 0;
  const contact = mesh?.undercut ? Math.min(full, undercutContactRatio(pinionTeeth)) : full;
  if (contact >= contactLimit) return null;
  const words = warningWords.mesh(contact, contactLimit, pinionTeeth);
  return { name: "pinion-mesh-poor", value: contact, limit: contactLimit, unit: "1", words };
}

function band(figures: Figures, mode: number): Found {
  const throttle = figures.number("throttle", mode);
  if (throttle === null) return null;
  const { usableLowPercent: low, usableHighPercent: high } = figures.machine.controller;
  const place = bandPlace(throttle / 100, low / 100, high / 100);
  if (place === "inside") return null;
  const above = place === "above";
  const limit = above ? high : low;
  const words = (above ? warningWords.aboveBand : warningWords.belowBand)(nameOf(figures, mode), throttle, limit);
  return { name: above ? "above-usable-band" : "below-usable-band", value: throttle, limit, unit: "percent", words };
}

/** Reasons that a higher head speed takes away, not a lower one. */
const tooSlow: readonly Obstacle[] = ["too slow", "blades stall"];

function waysOut(figures: Figures, load: LoadName, mode: number, why: Obstacle): string {
  const ways = helpFor(figures, load, mode);
  const none = Object.values(ways).every((way) => way === null);
  return none && why === "rotor cannot carry it" ? carryWords : helpWords(ways);
}

function headroom(figures: Figures, mode: number): Found {
  const set = figures.number("set-head-speed", mode) ?? 0;
  for (const load of ["hover", "full-pitch"] as const) {
    const why = obstacle(figures, load, mode);
    if (why === null) continue;
    const [name, at] = [nameOf(figures, mode), warningWords.loads[load]];
    const help = tooSlow.includes(why) ? fasterWords : waysOut(figures, load, mode, why);
    const ceiling = figures.number(load === "hover" ? "ceiling-hover" : "ceiling-full-pitch", mode);
    const short = why === "too fast" && ceiling !== null;
    return {
      name: "no-headroom",
      value: short ? ceiling - set : null,
      limit: 0,
      unit: "rpm",
      words: short ? warningWords.short(name, at, set, ceiling, help) : warningWords.noHold(name, at, why, help),
    };
  }
  return null;
}

/** A speed of a mode against a printed limit, both rpm. */
function overSpeed(
  name: WarningName,
  speed: (figures: Figures, mode: number) => number | null,
  limit: (figures: Figures) => number | null,
  say: (mode: string, speed: number, limit: number) => string,
): (figures: Figures, mode: number) => Found {
  return (figures, mode) => {
    const value = speed(figures, mode);
    const most = limit(figures);
    if (value === null || most === null || !isOver(value, most)) return null;
    return { name, value, limit: most, unit: "rpm", words: say(nameOf(figures, mode), value, most) };
  };
}

function tipMachHigh(figures: Figures, mode: number): Found {
  const value = figures.number("tip-mach", mode);
  if (value === null || !isOver(value, machLimit)) return null;
  return {
    name: "tip-mach-high",
    value,
    limit: machLimit,
    unit: "1",
    words: warningWords.tipMach(nameOf(figures, mode), value, machLimit),
  };
}

function packCurrentHigh(figures: Figures, mode: number): Found {
  const value = figures.number("full-pitch-pack-current", mode);
  const limit = (currentRateLimit * figures.machine.pack.capacityMah) / 1000;
  if (value === null || !isOver(value, limit)) return null;
  const words = warningWords.packCurrent(nameOf(figures, mode), value, limit, currentRateLimit);
  return { name: "pack-current-high", value, limit, unit: "A", words };
}

/** What the tail needs and has at a full pitch, N; `most` is null where it has enough. Kept: it takes two rotors to say. */
const tailPushes = keeper<{ readonly needed: number; readonly most: number | null }>(24);

/** Thrust that the tail needs at full pitch, against what its blades can give there. */
function tailShort({ rig, machine }: Figures, mode: number): Found {
  const asked = rig.parts.modes[mode];
  if (!asked) return null;
  const { rotor, arm, ratio } = rig.tail;
  const { headSpeed, collectiveMax } = asked;
  const { needed, most } = tailPushes([rig.main, rotor, arm, ratio, headSpeed, collectiveMax], () => {
    const speed = headSpeed * ratio;
    const thrust = tailThrust(rig.main.torqueAt({ speed: headSpeed, collective: collectiveMax }), arm);
    const holds = rotor.collectiveForThrust({ speed, thrust }) !== null;
    return {
      needed: thrust,
      most: holds ? null : Math.max(...tailPitches.map((collective) => rotor.thrustAt({ speed, collective }))),
    };
  });
  if (most === null) return null;
  const words = warningWords.tailThrust(machine.modes[mode]?.name ?? "", needed, most);
  return { name: "tail-thrust-short", value: needed, limit: most, unit: "N", words };
}

/** Pitches of the tail among which its greatest thrust is looked for, rad: 6 to 20 degrees. */
const tailPitches = Array.from({ length: 15 }, (_, i) => ((6 + i) * Math.PI) / 180);

const modeChecks: readonly ((figures: Figures, mode: number) => Found)[] = [
  band,
  headroom,
  hoverPitchShort,
  overSpeed(
    "blade-speed-over-limit",
    (f, mode) => f.number("set-head-speed", mode),
    (f) => f.machine.mainRotor.ratedRpm,
    warningWords.bladeSpeed,
  ),
  overSpeed(
    "motor-speed-over-limit",
    (f, mode) => f.number("motor-speed", mode),
    (f) => f.machine.motor.ratedRpm,
    warningWords.motorSpeed,
  ),
  overSpeed(
    "electrical-speed-over-limit",
    (f, mode) => f.number("electrical-speed", mode),
    (f) => f.machine.controller.electricalRpmLimit,
    warningWords.electricalSpeed,
  ),
  tipMachHigh,
  packCurrentHigh,
  tailShort,
  overSpeed(
    "tail-speed-high",
    (f, mode) => f.number("tail-rotor-speed", mode),
    // The tail's limit is where its tips come to the same Mach number as the main rotor's may.
    ({ rig }) => (machLimit * rig.air.soundSpeed) / rig.parts.tailRotor.radius / rpm,
    warningWords.tailSpeed,
  ),
];
