/** Everything that stands against a machine, by name: the figure, its limit, and the reason in words. */
import { shapeAt } from "#machine/fields";
import { inSentence } from "#machine/words";
import { rpm } from "#model/constants";
import { reserveCharge } from "#model/endurance";
import { bandPlace, staleChange } from "#model/reference";
import { contactWith } from "./contact.ts";
import { drawnNow } from "./drawn.ts";
import type { Figures } from "./figures.ts";
import { biggerPinion, helpFor } from "./help.ts";
import {
  contactLimit,
  currentRateLimit,
  fastestAllowed,
  isOver,
  machLimit,
  packCurrentLimit,
  tooFastAt,
} from "./limits.ts";
import { modeName } from "./mode-name.ts";
import type { LoadName } from "./rig.ts";
import type { Found, ModeCheck, Warning } from "./warning.ts";
import { learningTooFast, makersChecks, tailTooFast } from "./warnings-speeds.ts";
import { tailShort } from "./warnings-tail.ts";
import { obstacle } from "./why.ts";
import { carryWords, fasterWords, helpWords, type Obstacle, warningWords } from "./words.ts";

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
  const change = 100 * staleChange(ratioThen, rig.ratio);
  const parts = differing.map((key) =>
    inSentence((shapeAt(`controller.learned.fittedWith.${key}`)?.name ?? key).replace(/ while it learned$/, "")),
  );
  return {
    name: "stale-reference",
    value: change,
    limit: 0,
    unit: "percent",
    words: warningWords.stale(parts, change),
  };
}

/** More pitch than the mode's highest, asked for by the hover alone. */
function hoverPitchShort(figures: Figures, mode: number): Found {
  const { bearings } = figures;
  const limit = figures.machine.modes[mode]?.collectiveMaxDeg ?? 0;
  // More pitch asks for more torque, from flat pitch on: both are known already, the pitch has to be solved for.
  const lifts = limit > 0 && (bearings.torque("hover", mode) ?? 0) <= (bearings.torque("full-pitch", mode) ?? 0);
  if (lifts) return null;
  const value = figures.number("hover-collective", mode);
  if (value === null || !isOver(value, limit)) return null;
  const words = warningWords.hoverPitch(nameOf(figures, mode), value, limit, liftsFaster(figures, mode));
  return { name: "hover-pitch-short", value, limit, unit: "deg", words };
}

/** Whether the mode's full pitch would lift the machine at the fastest head speed that there is and that the makers allow. */
function liftsFaster({ machine, rig, bearings }: Figures, mode: number): boolean {
  const speed = Math.min(bearings.ceiling("full-pitch", mode) ?? 0, fastestAllowed(machine, rig.ratio) * rpm);
  const { headSpeed = 0, collectiveMax: collective = 0 } = rig.parts.modes[mode] ?? {};
  return speed > headSpeed && rig.main.thrustAt({ speed, collective }) >= rig.weight;
}

function poorMesh(figures: Figures): Found {
  const { pinionTeeth } = figures.rig.parts.gears;
  const contact = contactWith(figures, pinionTeeth) ?? 0;
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
  const name = nameOf(figures, mode);
  const limit = above ? high : low;
  const words = above
    ? warningWords.aboveBand(name, throttle, high, pinionHelps(figures, mode))
    : warningWords.belowBand(name, throttle, low, waysUp(figures, mode, low / throttle));
  return { name: above ? "above-usable-band" : "below-usable-band", value: throttle, limit, unit: "percent", words };
}

/** Whether a mode above the band may be brought into it by teeth: by none that lead to a speed that a maker forbids. */
function pinionHelps(figures: Figures, mode: number): boolean {
  if (tooFastAt(figures.machine, figures.number("set-head-speed", mode) ?? 0, figures.rig.ratio)) return false;
  const held = obstacle(figures, "hover", mode) === null && obstacle(figures, "full-pitch", mode) === null;
  return (held ? biggerPinion(figures, mode, false) : helpFor(figures, mode).pinion) !== null;
}

/** Ways into the band from below it, by a factor on the motor's speed: those on which no maker's limit lies. */
function waysUp(figures: Figures, mode: number, factor: number): { readonly smaller: boolean; readonly more: boolean } {
  const set = figures.number("set-head-speed", mode) ?? 0;
  const { machine, rig } = figures;
  return {
    smaller: tooFastAt(machine, set, rig.ratio * factor) === null,
    more: tooFastAt(machine, set * factor, rig.ratio) === null,
  };
}

/** Reasons that a higher head speed takes away, not a lower one. */
const tooSlow: readonly Obstacle[] = ["too slow", "blades stall"];

function waysOut(figures: Figures, load: LoadName, mode: number, why: Obstacle): string {
  if (tooSlow.includes(why)) return fasterWords(carriesFaster(figures, load, mode));
  const ways = helpFor(figures, mode);
  const none = Object.values(ways).every((way) => way === null);
  if (none && why === "rotor cannot carry it") return carryWords;
  const set = figures.number("set-head-speed", mode) ?? 0;
  return helpWords(ways, tooFastAt(figures.machine, set, figures.rig.ratio) === null);
}

/** Whether a rotor that turns too slowly for its load carries it at the fastest speed that the makers allow. */
function carriesFaster({ machine, rig, bearings }: Figures, load: LoadName, mode: number): boolean {
  const steady = bearings.steady(load, mode);
  const most = Math.min(fastestAllowed(machine, rig.ratio) * rpm, steady.ok ? steady.speed : 0);
  return most > (rig.parts.modes[mode]?.headSpeed ?? 0) && rig.load(load, mode)(most) !== null;
}

function headroom(figures: Figures, mode: number): Found {
  const set = figures.number("set-head-speed", mode) ?? 0;
  for (const load of ["hover", "full-pitch"] as const) {
    const why = obstacle(figures, load, mode);
    if (why === null) continue;
    const [name, at] = [nameOf(figures, mode), warningWords.loads[load]];
    const help = waysOut(figures, load, mode, why);
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

/** The larger of the currents in hover and at full pitch; at full duty where the mode isn't held. */
function packCurrentHigh(figures: Figures, mode: number): Found {
  const [hover, full] = [drawnNow(figures, "hover", mode), drawnNow(figures, "full-pitch", mode)];
  const more = (hover?.current ?? 0) > (full?.current ?? 0);
  const most = more ? hover : full;
  const limit = packCurrentLimit(figures.machine);
  if (most === null || !isOver(most.current, limit)) return null;
  const { current, fullDuty } = most;
  const words = warningWords.packCurrent(
    nameOf(figures, mode),
    { load: more ? "hover" : "full-pitch", current, fullDuty },
    limit,
    currentRateLimit,
  );
  return { name: "pack-current-high", value: current, limit, unit: "A", words };
}

/** A hover that ends before the reserve, because the sinking pack no longer holds it. */
function hoverLost(figures: Figures, mode: number): Found {
  const found = figures.bearings.ends("hover", mode);
  if (found?.because !== "speed lost") return null;
  const [value, limit] = [100 * found.end, 100 * reserveCharge];
  return {
    name: "hover-speed-lost",
    value,
    limit,
    unit: "percent",
    words: warningWords.hoverLost(nameOf(figures, mode), value, limit),
  };
}

const modeChecks: readonly ModeCheck[] = [
  band,
  headroom,
  hoverLost,
  hoverPitchShort,
  ...makersChecks,
  tipMachHigh,
  packCurrentHigh,
  tailShort,
  tailTooFast,
];
