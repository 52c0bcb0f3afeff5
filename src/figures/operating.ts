/**
 * Steady operating points: a load of a mode, held by the chain at any charge, with all of its power accounted for. What
 * the pack gives is what the air takes, what is raised, and what stays on board as heat.
 */
import { fieldAt } from "#machine/fields";
import { rpm } from "#model/constants";
import { chargeForVoltage, endurance } from "#model/endurance";
import { discArea, figureOfMerit, idealHoverPower } from "#model/momentum";
import { dutyAsked, type OperatingPoint, operatingPoint, type Powertrain, voltageToHold } from "#model/powertrain";
import type { LoadTorque } from "#model/rotor-load";
import { ceilingAt, type SteadySpeed } from "#model/steady";
import {
  type Asked,
  askedIn,
  fastAirspeed,
  type Nearest,
  type NotAsked,
  type RotorPower,
  type RotorProblem,
  type SteadyLoad,
} from "./asked.ts";
import { keeper } from "./kept.ts";
import { tabulated } from "./loads.ts";
import { chainWithCells, mostCells } from "./other-parts.ts";
import type { Rig } from "./rig.ts";

/** Heat that stays on board, W. */
export interface BoardHeat {
  /** In the cells. */
  readonly pack: number;
  /** In leads and plugs. */
  readonly lead: number;
  readonly controller: number;
  /** In the motor's winding. */
  readonly copper: number;
  /** In the motor's iron and bearings. */
  readonly noLoad: number;
  readonly gears: number;
}

/** Where all the power goes, W: `source` is the sum of all the rest. */
export interface PowerBalance {
  /** What the cells give before their own resistance. */
  readonly source: number;
  readonly heat: BoardHeat;
  /** What reaches the main shaft. */
  readonly shaft: number;
  readonly rotors: RotorPower;
}

/** Power out over power in of each link, 0 to 1. */
export interface Efficiencies {
  readonly pack: number;
  readonly lead: number;
  readonly controller: number;
  readonly motor: number;
  readonly gears: number;
  /** Main shaft over cells. */
  readonly chain: number;
  /** Ideal induced power over the main rotor's power; only where the machine hovers. */
  readonly merit: number | null;
}

/** A load that is held. SI; charge, duty and efficiencies 0 to 1. */
export interface Operating {
  readonly ok: true;
  readonly load: SteadyLoad;
  readonly mode: number;
  readonly charge: number;
  readonly asked: Asked;
  /** Duty, currents, voltage, speeds. */
  readonly point: OperatingPoint;
  readonly balance: PowerBalance;
  readonly efficiencies: Efficiencies;
}

export type OperatingProblem = RotorProblem | "not enough duty" | "not enough power";

/** A load that isn't, and the nearest thing that would be. */
export interface NotOperating {
  readonly ok: false;
  readonly load: SteadyLoad;
  readonly mode: number;
  readonly charge: number;
  readonly why: OperatingProblem;
  readonly nearest: Nearest;
}

/** What may differ from the machine as it stands. */
export interface OperatingOptions {
  /** 0 to 1; default the machine's own. */
  readonly charge?: number;
  /** m/s, for level flight; default `fastAirspeed`. */
  readonly airspeed?: number;
}

const known = keeper<Asked | NotAsked>(24);

/**
 * The operating point of a load: `asked` by the rotors at the mode's set speed, given by the chain. Units: SI. Errors:
 * `NotOperating` where rotors or chain can't do it. Power in is power out and heat to 1e-9 of the whole, tested.
 * Source: energy balance, by definition; `askedIn`, `operatingPoint`.
 */
export function operatingOf(
  rig: Rig,
  load: SteadyLoad,
  mode: number,
  { charge = rig.parts.pack.charge, airspeed = fastAirspeed(rig, mode) }: OperatingOptions = {},
): Operating | NotOperating {
  const speed = rig.parts.modes[mode]?.headSpeed ?? 0;
  const { mainRotor, tailRotor, airframe, place, gears } = rig.machine;
  const parts = [mainRotor, tailRotor, airframe, place, gears.tailRatio, rig.rotorTorque, load, speed];
  const own = load === "forward" ? airspeed : load === "hover" ? 0 : rig.parts.modes[mode]?.collectiveMax;
  const asked = known([...parts, own], () => askedIn(rig, load, mode, speed, airspeed));
  const is = { load, mode, charge };
  if (!asked.ok) return { ...is, ...asked };
  const train = rig.trainAt(charge);
  const torque = asked.total / speed;
  const point = operatingPoint(train, speed, torque);
  if (!point) {
    const enough = dutyAsked(train, speed, torque) !== null;
    const why = enough ? "not enough duty" : "not enough power";
    return { ok: false, ...is, why, nearest: nearest(rig, load, mode, charge, torque, airspeed) };
  }
  const { leadResistance } = rig.parts.pack;
  const lead = point.packCurrent ** 2 * leadResistance;
  const heat: BoardHeat = {
    pack: point.packHeat - lead,
    lead,
    controller: point.controllerHeat,
    copper: point.copperHeat,
    noLoad: point.noLoadHeat,
    gears: point.meshHeat,
  };
  const balance = { source: point.sourcePower, heat, shaft: asked.total, rotors: asked.power };
  return { ok: true, ...is, asked, point, balance, efficiencies: efficienciesOf(rig, load, asked, balance, point) };
}

function efficienciesOf(
  { weight, air, parts }: Rig,
  load: SteadyLoad,
  asked: Asked,
  { source, heat, shaft }: PowerBalance,
  point: OperatingPoint,
): Efficiencies {
  const afterPack = source - heat.pack;
  const afterLead = afterPack - heat.lead;
  const afterController = afterLead - heat.controller;
  const { density } = air;
  const idealPower = idealHoverPower({ thrust: weight, density, area: discArea(parts.mainRotor) });
  return {
    pack: afterPack / source,
    lead: afterLead / afterPack,
    controller: afterController / afterLead,
    motor: point.motorEfficiency,
    gears: shaft / (shaft + heat.gears),
    chain: shaft / source,
    merit: load === "hover" ? figureOfMerit({ idealPower, power: asked.power.profile + asked.power.induced }) : null,
  };
}

const tables = keeper<LoadTorque>(24);

/** Torque on the main shaft, N m, against its speed, rad/s, in a load; null where the rotors can't carry it. Source: `askedIn`. */
function torqueIn(rig: Rig, load: SteadyLoad, mode: number, airspeed: number): LoadTorque {
  if (load === "flat") return rig.flat;
  if (load !== "climb" && load !== "forward") return rig.load(load, mode);
  const { mainRotor, tailRotor, airframe, place, gears } = rig.machine;
  const varying = load === "climb" ? (rig.parts.modes[mode]?.collectiveMax ?? 0) : airspeed;
  const keys = [load, varying, rig.rotorTorque, mainRotor, tailRotor, airframe, place, gears.tailRatio];
  return tables(keys, () =>
    tabulated((speed) => {
      const asked = askedIn(rig, load, mode, speed, airspeed);
      return asked.ok ? asked.total / speed : null;
    }),
  );
}

/** Head speed at full duty in a load, rad/s, or why there is none. Errors: 1e-4 of itself. Source: `ceilingAt`. */
export function ceilingIn(
  rig: Rig,
  load: SteadyLoad,
  mode: number,
  { charge = rig.parts.pack.charge, airspeed = fastAirspeed(rig, mode) }: OperatingOptions = {},
): SteadySpeed {
  const near = rig.parts.modes[mode]?.headSpeed;
  return ceilingAt(rig.trainAt(charge), torqueIn(rig, load, mode, airspeed), near);
}

/** How long an operating point lasts down to the reserve, s; null where it can't be held at the start. Source: `endurance`. */
export function lastsFor(rig: Rig, { point, charge }: Operating): number | null {
  const found = endurance(rig.train, point.speed, point.torque, rig.parts.pack.capacity, charge, rig.voltageAt);
  return found ? found.time : null;
}

/** What would work where the chain gives too little: less airspeed, less head speed, a fuller pack, more cells. */
function nearest(rig: Rig, load: SteadyLoad, mode: number, charge: number, torque: number, airspeed: number): Nearest {
  const speed = rig.parts.modes[mode]?.headSpeed ?? 0;
  const train = rig.trainAt(charge);
  if (load === "forward") {
    const slower = slowerAirspeed(rig, mode, train, speed, airspeed);
    if (slower !== null) return { change: "airspeed", to: slower };
  }
  const ceiling = ceilingIn(rig, load, mode, { charge, airspeed });
  if (ceiling.ok && ceiling.speed < speed && ceiling.speed >= LOWEST)
    return { change: "head speed", to: ceiling.speed };
  const fuller = chargeForVoltage(rig.voltageAt, voltageToHold(train, speed, torque));
  if (fuller !== null) return { change: "charge", to: fuller };
  for (let cells = rig.parts.pack.cells + 1; cells <= mostCells; cells++) {
    if (operatingPoint(chainWithCells(rig, cells, charge), speed, torque)) return { change: "cells", to: cells };
  }
  return { change: "none" };
}

/** The lowest head speed that a mode can ask for, rad/s. */
const LOWEST = fieldAt("modes.0.headRpm").min * rpm;

/** The fastest level flight, m/s, slower than one that asks too much; null when even hovering does. */
function slowerAirspeed(rig: Rig, mode: number, train: Powertrain, speed: number, airspeed: number): number | null {
  const held = (at: number): boolean => {
    const asked = askedIn(rig, "forward", mode, speed, at);
    return asked.ok && operatingPoint(train, speed, asked.total / speed) !== null;
  };
  // Power falls at first and then rises with speed: from above, the first speed that can be held.
  for (let share = 0.9; share > 0.05; share -= 0.1) {
    if (!held(share * airspeed)) continue;
    let [low, high] = [share * airspeed, (share + 0.1) * airspeed];
    for (let i = 0; i < 8; i++) {
      const middle = (low + high) / 2;
      if (held(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
  return null;
}
