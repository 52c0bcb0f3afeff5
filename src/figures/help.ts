/**
 * What would help a mode that can't be held: a fuller pack, a lower speed, another pinion, more cells. Each is tried on the
 * model, in hover and at full pitch, down to the charge at which one lands, and within the makers' limits.
 */
import { rpm } from "#model/constants";
import { endurance, lowestCharge, reserveCharge } from "#model/endurance";
import { operatingPoint, type Powertrain } from "#model/powertrain";
import { bandPlace } from "#model/reference";
import { ceilingAt } from "#model/steady";
import type { Figures } from "./figures.ts";
import { learnedWith } from "./learned-anew.ts";
import { fastestAllowed, isOver, packCurrentLimit, tooFastAt } from "./limits.ts";
import { chainWithCells, chainWithTeeth, mostCells, mostTeeth } from "./other-parts.ts";
import type { LoadName } from "./rig.ts";

/** How long a full pitch is held: so many seconds, down to the reserve, or on what is left where the pack is below that. */
export type Lasting = number | "to the reserve" | "on this charge";

/** A charge or a speed at which a mode is held, and for how long. */
export interface HeldFor {
  /** Whole per cent at which it is lost again, from a full pack; or a round head speed, rpm. */
  readonly to: number;
  readonly lasts: Lasting;
}

/** Each way that helps; null for one that doesn't. */
export interface Help {
  /** Null when it isn't the charge that is missing. */
  readonly charge: HeldFor | null;
  /** Null when the usable band holds no such speed. */
  readonly slower: HeldFor | null;
  /** Teeth of the smallest pinion that does it, once the reference is learned anew. */
  readonly pinion: number | null;
  readonly cells: number | null;
}

const MORE_TEETH = 4;
const MORE_CELLS = 2;
const ROUND_RPM = 10;

/** A full pitch that is held for less than this, s, is no help: our own choice. */
export const leastHold = 10;

/** Whoever can hover wants to climb too, and whoever climbs hovers before. */
const loads: readonly LoadName[] = ["hover", "full-pitch"];

const known = new WeakMap<Figures, Map<number, Help>>();

/**
 * What would help a mode that is too fast, kept with the figures. A speed that a maker forbids is only ever made slower.
 * Units: rpm, teeth, cells, per cent, s. Errors: null for a way that doesn't help. Source: `operatingPoint`, `endurance`.
 */
export function helpFor(figures: Figures, mode: number): Help {
  const kept = known.get(figures) ?? new Map<number, Help>();
  known.set(figures, kept);
  let help = kept.get(mode);
  if (!help) {
    const allowed = tooFastAt(figures.machine, headRpm(figures, mode), figures.rig.ratio) === null;
    help = {
      charge: allowed ? fuller(figures, mode) : null,
      slower: slowerSpeed(figures, mode),
      pinion: allowed ? biggerPinion(figures, mode, true) : null,
      cells: allowed ? moreCells(figures, mode) : null,
    };
    kept.set(mode, help);
  }
  return help;
}

const headRpm = ({ machine }: Figures, mode: number): number => machine.modes[mode]?.headRpm ?? 0;

/** Torques, N m, that hover and full pitch ask for. */
type Torques = readonly [hover: number, full: number];

/** Torques at a head speed in rad/s; null where one of them can't be had. */
function torquesAt({ rig }: Figures, mode: number, speed: number): Torques | null {
  const [hover = null, full = null] = loads.map((load) => rig.load(load, mode)(speed));
  return hover === null || full === null ? null : [hover, full];
}

/** Whether full pitch is more than the hover takes: more pitch asks for more torque. */
const lifts = ([hover, full]: Torques): boolean => hover <= full;

const holds = (train: Powertrain, speed: number, torques: Torques): boolean =>
  torques.every((torque) => operatingPoint(train, speed, torque) !== null);

/** How long all of it is held from a charge on, s. */
function lasts({ rig }: Figures, speed: number, torques: Torques, from: number): number {
  const { capacity } = rig.parts.pack;
  const times = torques.map((torque) => endurance(rig.train, speed, torque, capacity, from, rig.voltageAt)?.time ?? 0);
  return Math.min(...times);
}

/** The charge that every flight is to last to: the reserve, or what is left of it. */
const lastCharge = ({ rig }: Figures): number => Math.min(reserveCharge, rig.parts.pack.charge);

function fuller(figures: Figures, mode: number): HeldFor | null {
  const { train, parts, voltageAt } = figures.rig;
  const speed = headRpm(figures, mode) * rpm;
  const torques = torquesAt(figures, mode, speed);
  const charges = torques?.map((torque) => lowestCharge(train, speed, torque, voltageAt) ?? 2) ?? [2];
  const lowest = Math.max(...charges);
  if (torques === null || lowest > 1 || lowest <= parts.pack.charge) return null;
  const seconds = lasts(figures, speed, torques, 1);
  return seconds < leastHold ? null : { to: Math.ceil(100 * Math.max(lowest, reserveCharge)), lasts: seconds };
}

/** A lower round speed in the usable band that no maker forbids: one that lasts to the reserve, or else one that lasts at all. */
function slowerSpeed(figures: Figures, mode: number): HeldFor | null {
  const { rig, machine } = figures;
  const { charge } = rig.parts.pack;
  const lowest = Math.ceil((figures.number("usable-low-head-speed") ?? 0) / ROUND_RPM);
  const end = figures.number("usable-high-head-speed") ?? Number.POSITIVE_INFINITY;
  const most = Math.min(fastestAllowed(machine, rig.ratio), end, headRpm(figures, mode) - ROUND_RPM);
  const before = torquesAt(figures, mode, headRpm(figures, mode) * rpm);
  const lifted = before === null || lifts(before);
  const below = (at: number): number | null => {
    const train = rig.trainAt(at);
    const ceilings = loads.map((load) => ceilingAt(train, rig.load(load, mode)));
    const speeds = ceilings.map((found) => (found.ok ? found.speed / rpm : 0));
    const steps = Math.floor(Math.min(most, ...speeds) / ROUND_RPM);
    const speed = steps * ROUND_RPM * rpm;
    const torques = steps < lowest ? null : torquesAt(figures, mode, speed);
    if (!torques || !holds(train, speed, torques)) return null;
    // A mode that lifts off must do so then.
    return !lifted || lifts(torques) ? steps : null;
  };
  const kept = below(lastCharge(figures));
  if (kept !== null)
    return { to: kept * ROUND_RPM, lasts: charge < reserveCharge ? "on this charge" : "to the reserve" };
  const now = below(charge);
  if (now === null) return null;
  const seconds = (steps: number): number => {
    const speed = steps * ROUND_RPM * rpm;
    const torques = torquesAt(figures, mode, speed);
    return torques ? lasts(figures, speed, torques, charge) : 0;
  };
  // The slower, the longer it lasts.
  let [low, high] = [lowest, now];
  if (seconds(high) < leastHold) {
    if (seconds(low) < leastHold) return null;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (seconds(middle) < leastHold) high = middle;
      else low = middle;
    }
    high = low;
  }
  return { to: high * ROUND_RPM, lasts: seconds(high) };
}

/**
 * Whether a mode would lie inside the usable band with another chain, with the reference learned anew, be held down to a charge,
 * and no limit of a maker be passed.
 */
function does(figures: Figures, mode: number, chainAt: (charge: number) => Powertrain, downTo: number): boolean {
  const { machine, rig } = figures;
  const { usableLow, usableHigh } = rig.parts.controller;
  const head = headRpm(figures, mode);
  const speed = head * rpm;
  const full = chainAt(1);
  const learned = learnedWith(figures, full);
  if (!learned || tooFastAt(machine, learned.head / rpm, full.gearRatio)) return false;
  if (tooFastAt(machine, head, full.gearRatio)) return false;
  if (bandPlace((speed * full.gearRatio) / learned.reference, usableLow, usableHigh) !== "inside") return false;
  const torques = torquesAt(figures, mode, speed);
  if (!torques || !holds(chainAt(downTo), speed, torques)) return false;
  const currents = torques.map((torque) => operatingPoint(chainAt(rig.parts.pack.charge), speed, torque)?.packCurrent);
  return currents.every((current) => current !== undefined && !isOver(current, packCurrentLimit(machine)));
}

/** The first count above `now` that does it; null when none of the next few does, or no machine may have it. */
function firstThat(helps: (count: number) => boolean, now: number, more: number, end: number): number | null {
  const most = Math.min(now + more, end);
  for (let count = now + 1; count <= most; count++) if (helps(count)) return count;
  return null;
}

/**
 * Teeth of the smallest larger pinion that brings a mode into the usable band within the makers' limits; with `reserve` one that
 * holds it down to the reserve, else one that holds it now. Errors: null when none of the next few does. Source: `learnedWith`, `operatingPoint`.
 */
export function biggerPinion(figures: Figures, mode: number, reserve: boolean): number | null {
  const { rig } = figures;
  const downTo = reserve ? lastCharge(figures) : rig.parts.pack.charge;
  const helps = (teeth: number) => does(figures, mode, (charge) => chainWithTeeth(rig, teeth, charge), downTo);
  return firstThat(helps, rig.parts.gears.pinionTeeth, MORE_TEETH, mostTeeth);
}

function moreCells(figures: Figures, mode: number): number | null {
  const { rig } = figures;
  const downTo = lastCharge(figures);
  const helps = (cells: number) => does(figures, mode, (charge) => chainWithCells(rig, cells, charge), downTo);
  return firstThat(helps, rig.parts.pack.cells, MORE_CELLS, mostCells);
}
