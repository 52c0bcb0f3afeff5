/**
 * What the rotors ask of the main shaft in each of the five steady loads, and where that power goes. The chain that has
 * to give it stands in `operating.ts`.
 */
import { gravity } from "#model/constants";
import { bracketedRoot } from "#model/root";
import {
  advancingTipMach,
  airframeDrag,
  craftOf,
  levelPower,
  parasitePower,
  retreatingMargin,
} from "#model/rotor/forward";
import { collectiveForThrust } from "#model/rotor/solve";
import { tailThrust } from "#model/rotor-load";
import type { LoadName, Rig } from "./rig.ts";
import { bladesOf, STALLED_PITCH } from "./rotors.ts";

/** Flat pitch on the ground, hover, full pitch before the climb begins, the climb that it settles into, fast level flight. */
export type SteadyLoad = "flat" | LoadName | "climb" | "forward";

export const steadyLoads = ["flat", "hover", "full-pitch", "climb", "forward"] as const satisfies readonly SteadyLoad[];

/** Airspeed that counts as fast, over the tip speed that a mode asks for: our own choice, short of most blades' stall. */
const FAST = 0.25;

/** Tip Mach number at which the sections end: beyond it they are a guess. */
export const mostMach = 0.9;

/** Where the power of both rotors goes, W. */
export interface RotorPower {
  /** Blade drag. */
  readonly profile: number;
  /** Air set moving by the thrust. */
  readonly induced: number;
  readonly tail: number;
  /** Drag of all that doesn't lift. */
  readonly airframe: number;
  /** Weight raised: the only part that can be had back. */
  readonly raising: number;
}

/** A load that the rotors can carry. SI. */
export interface Asked {
  readonly ok: true;
  /** rad; null in level flight, where this model doesn't say it. */
  readonly collective: number | null;
  /** Of the main rotor, N. */
  readonly thrust: number;
  /** m/s */
  readonly climb: number;
  readonly airspeed: number;
  /** Whether the tail can hold the machine straight; where it can't, it is taken to stand stalled. */
  readonly tailHolds: boolean;
  readonly power: RotorPower;
  /** W on the main shaft: the sum of these. */
  readonly total: number;
}

/** What would work in place of a load that can't be carried. SI; angles in rad, charge 0 to 1. */
export type Nearest =
  | { readonly change: "head speed" | "airspeed" | "collective" | "mass" | "charge" | "cells"; readonly to: number }
  | { readonly change: "none" };

export type RotorProblem = "blades stall" | "tips too fast" | "no climb" | "past the stall" | "retreating blades stall";

/** A load that they can't. */
export interface NotAsked {
  readonly ok: false;
  readonly why: RotorProblem;
  readonly nearest: Nearest;
}

const refused = (why: RotorProblem, change: Exclude<Nearest["change"], "none">, to: number): NotAsked => ({
  ok: false,
  why,
  nearest: { change, to },
});

/** Airspeed, m/s, of fast level flight in a mode: a quarter of its tip speed. Source: our own choice. */
export const fastAirspeed = ({ parts }: Rig, mode: number): number =>
  FAST * (parts.modes[mode]?.headSpeed ?? 0) * parts.mainRotor.radius;

type Case = {
  readonly load: SteadyLoad;
  readonly speed: number;
  readonly collective: number;
  readonly airspeed: number;
};

/**
 * What the rotors ask in a load at a head speed, and where it goes. Solved anew, not read from a table, so that the parts
 * add up to the whole. Climb: at the mode's full pitch, at the rate at which thrust is weight and drag, with the drag area
 * of the record. Level flight after Glauert. Units: SI. Errors: `NotAsked` where the blades can't do it, with the nearest
 * thing that would work; figures as those of the rotor model, level flight 15 %. Source: the rotor model.
 *
 * @param speed main rotor, rad/s; default the mode's
 * @param airspeed m/s, for level flight; default `fastAirspeed`
 */
export function askedIn(
  rig: Rig,
  load: SteadyLoad,
  mode: number,
  speed: number = rig.parts.modes[mode]?.headSpeed ?? 0,
  airspeed: number = fastAirspeed(rig, mode),
): Asked | NotAsked {
  const collective = load === "flat" ? 0 : (rig.parts.modes[mode]?.collectiveMax ?? 0);
  return solve(rig, { load, speed, collective, airspeed });
}

function solve(rig: Rig, task: Case): Asked | NotAsked {
  const { load, speed } = task;
  const { radius } = rig.parts.mainRotor;
  const fastest = mostMach * rig.air.soundSpeed;
  if (load === "forward") return inLevelFlight(rig, task);
  if (speed * radius > fastest) return refused("tips too fast", "head speed", fastest / radius);
  const { main } = bladesOf(rig.machine, rig.parts, rig.air);
  if (load === "climb") return climbing(rig, task);
  main.fly(speed, 0);
  if (load === "hover") {
    const found = collectiveForThrust(main, rig.weight);
    if (!found.ok) return stalled(rig, speed);
  } else main.pitch(task.collective);
  return whole(rig, { climb: 0, airspeed: 0, airframe: 0, raising: 0 });
}

/** Adds the tail to the main rotor's present state. */
function whole(
  rig: Rig,
  rest: Pick<Asked, "climb" | "airspeed"> & Pick<RotorPower, "airframe" | "raising">,
  level: { profile: number; induced: number; thrust: number } | null = null,
): Asked {
  const { main } = bladesOf(rig.machine, rig.parts, rig.air);
  const { speed, collective } = main;
  const profile = level?.profile ?? main.profilePower;
  const induced = level?.induced ?? main.inducedPower;
  const own = profile + induced + rest.airframe + rest.raising;
  const tail = tailOf(rig, own / speed, speed);
  // A doubt about the rotors' torque is one about all that they lose, not about the weight that is raised.
  const { rotorTorque } = rig;
  const lost = own - rest.raising + tail.power;
  const doubt = rotorTorque === 1 ? 1 : (rotorTorque * (lost + rest.raising) - rest.raising) / lost;
  const power = {
    profile: profile * doubt,
    induced: induced * doubt,
    tail: tail.power * doubt,
    airframe: rest.airframe * doubt,
    raising: rest.raising,
  };
  return {
    ok: true,
    collective: level ? null : collective,
    thrust: level?.thrust ?? main.thrust,
    climb: rest.climb,
    airspeed: rest.airspeed,
    tailHolds: tail.holds,
    power,
    total: power.profile + power.induced + power.tail + power.airframe + power.raising,
  };
}

/** The tail's power, W, against a torque of the main rotor; one that can't hold stands stalled, as in the other figures. */
function tailOf(rig: Rig, torque: number, speed: number): { power: number; holds: boolean } {
  const { arm, ratio } = rig.tail;
  const { tail } = bladesOf(rig.machine, rig.parts, rig.air);
  const turning = speed * ratio;
  const found = collectiveForThrust(tail.fly(turning, 0), tailThrust(torque, arm));
  if (!found.ok) tail.pitch(STALLED_PITCH);
  return { power: tail.torque * turning, holds: found.ok };
}

/** The lowest head speed that carries the machine, or else the mass that this one carries. */
function stalled(rig: Rig, speed: number): NotAsked {
  const { main } = bladesOf(rig.machine, rig.parts, rig.air);
  const highest = (mostMach * rig.air.soundSpeed) / rig.parts.mainRotor.radius;
  let most = 0;
  for (let at = speed, i = 0; i < 8 && at <= highest; i++) {
    const found = collectiveForThrust(main.fly(at, 0), rig.weight);
    if (found.ok) return refused("blades stall", "head speed", at);
    if (i === 0) most = found.most;
    if (!(found.most > 0)) break;
    // Thrust grows with the square of speed, and a little more by its Reynolds number.
    at *= Math.sqrt(rig.weight / found.most) * 1.002;
  }
  return refused("blades stall", "mass", Math.max(0, most) / gravity);
}

function climbing(rig: Rig, { speed, collective }: Case): Asked | NotAsked {
  const { main } = bladesOf(rig.machine, rig.parts, rig.air);
  const { dragArea } = rig.parts.airframe;
  const airAt = (climb: number) => ({ density: rig.air.density, airspeed: climb, dragArea });
  const spare = (climb: number): number =>
    main.fly(speed, climb).pitch(collective) - rig.weight - airframeDrag(airAt(climb));
  const rest = spare(0);
  if (rest <= 0) {
    const found = collectiveForThrust(main.fly(speed, 0), rig.weight);
    if (!found.ok) return stalled(rig, speed);
    // More than the hover's pitch and still no more thrust: the blades are past their stall.
    const past = collective > found.collective;
    return refused(past ? "past the stall" : "no climb", "collective", found.collective);
  }
  // Faster than this every part of the blade meets the air from above.
  const top = speed * rig.parts.mainRotor.radius * Math.tan(Math.min(collective, 1.5));
  const atTop = spare(top);
  const climb = bracketedRoot(spare, 0, top, 1e-12 * top, rest, atTop) ?? top;
  main.fly(speed, climb).pitch(collective);
  const airframe = parasitePower(airAt(climb));
  return whole(rig, { climb, airspeed: 0, airframe, raising: main.thrust * climb - airframe });
}

function inLevelFlight(rig: Rig, { speed, airspeed }: Case): Asked | NotAsked {
  const { parts, air, weight } = rig;
  const { radius } = parts.mainRotor;
  const { main } = bladesOf(rig.machine, parts, air);
  const tipSpeed = speed * radius;
  if (advancingTipMach({ tipSpeed, airspeed, soundSpeed: air.soundSpeed }) > mostMach) {
    const fastest = mostMach * air.soundSpeed;
    return tipSpeed < fastest
      ? refused("tips too fast", "airspeed", fastest - tipSpeed)
      : // At the same share of the tip speed.
        refused("tips too fast", "head speed", fastest / (radius * (1 + airspeed / tipSpeed)));
  }
  const craft = craftOf(main.fly(speed, 0), weight, parts.airframe.dragArea);
  if (!craft) return stalled(rig, speed);
  const { tipReynolds, tipMach, solidity } = main.result();
  const { section } = main.blade.geometry;
  const margin = (at: number): number => {
    const { thrust, advanceRatio } = levelPower(craft, at);
    const unit = air.density * Math.PI * radius ** 2 * tipSpeed ** 2;
    return retreatingMargin(section, { loading: thrust / unit / solidity, advanceRatio, tipReynolds, tipMach }) ?? -1;
  };
  if (margin(airspeed) < 0) {
    // Blades that only just carry the machine have no margin to begin with: they hover, and that is all.
    return refused("retreating blades stall", "airspeed", bracketedRoot(margin, 0, airspeed, 1e-3) ?? 0);
  }
  const { profile, induced, parasite, thrust } = levelPower(craft, airspeed);
  return whole(rig, { climb: 0, airspeed, airframe: parasite, raising: 0 }, { profile, induced, thrust });
}
