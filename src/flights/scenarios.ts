/** The flights of the pages as plain data, so that a worker can be asked for them, and as orders for the simulator. */
import { type LearningRun, learningRun, withoutBlades } from "#model/flight/learning";
import { hoverCollective } from "#model/flight/pilot";
import type { FlightOrder } from "#model/flight/run";
import {
  autorotation,
  drawn,
  type Load,
  type Mode,
  pumps,
  punch,
  spoolUp,
  suddenUnload,
  wholePack,
} from "#model/flight/scenarios";

const degree = Math.PI / 180;

/** What can go otherwise than it should while the reference is learned. */
export const learningConditions = ["right", "half-pack", "pitch", "no-blades", "cut-short"] as const;
export type LearningCondition = (typeof learningConditions)[number];

/** Mixes of loads that a pack is flown with. */
export const packMixes = ["gentle", "mixed", "hard"] as const;
export type PackMix = (typeof packMixes)[number];

/** A flight, as plain data. Collectives in degrees, times in s. */
export type Scenario =
  | { readonly kind: "punch"; readonly hold?: number }
  | { readonly kind: "pumps" }
  | { readonly kind: "unload" }
  | { readonly kind: "spool-up" }
  | { readonly kind: "autorotation"; readonly bailOut: boolean }
  | { readonly kind: "learning"; readonly condition: LearningCondition; readonly throttlePercent: number }
  | { readonly kind: "whole-pack"; readonly mix: PackMix }
  | { readonly kind: "drawn"; readonly seconds: number; readonly collectivesDeg: readonly number[] };

/** A pitch that is no longer light, deg; a run cut short, s; a pack at half. What the pages on learning compare. */
export const learningSlips = { collectiveDeg: 5, seconds: 8, charge: 0.5 } as const;

/** The learning run that a condition makes, for the machine with a full pack unless that is the point. SI. Source: definition. */
export function learningOf({ machine }: Mode, condition: LearningCondition, throttlePercent: number): LearningRun {
  const charge = condition === "half-pack" ? learningSlips.charge : 1;
  const full = { ...machine, pack: { ...machine.pack, charge } };
  return {
    machine: condition === "no-blades" ? withoutBlades(full) : full,
    throttle: throttlePercent / 100,
    collective: condition === "pitch" ? learningSlips.collectiveDeg * degree : 0,
    ...(condition === "cut-short" ? { seconds: learningSlips.seconds } : {}),
  };
}

/** Collective (rad) that hovers, or the highest where none does. Source: definition. */
export const hovering = ({ machine, setSpeed }: Mode): number =>
  hoverCollective(machine, setSpeed) ?? machine.rotor.highestCollective;

/** The loads of a mix for a mode: collectives in rad for so many seconds, over and over. Common practice, no source. */
export function loadsOf(mode: Mode, mix: PackMix): Load[] {
  const hover = hovering(mode);
  const full = mode.machine.rotor.highestCollective;
  const between = (hover + full) / 2;
  if (mix === "gentle") return [{ collective: hover, seconds: 10 }];
  if (mix === "mixed") {
    return [
      { collective: hover, seconds: 6 },
      { collective: between, seconds: 4 },
      { collective: full, seconds: 1.5 },
    ];
  }
  return [
    { collective: full, seconds: 2 },
    { collective: hover, seconds: 1.5 },
    { collective: between, seconds: 3 },
  ];
}

/** The order of a scenario for the simulator, SI. Source: the scenarios' own files. */
export function orderOf(mode: Mode, scenario: Scenario): FlightOrder {
  const { machine } = mode;
  const { highestCollective: highest, lowestCollective: lowest } = machine.rotor;
  switch (scenario.kind) {
    case "punch":
      return punch(mode, { collective: highest, hold: scenario.hold ?? 1.2 });
    case "pumps":
      return pumps(mode, { highest, lowest: Math.max(lowest, -highest), count: 5, period: 0.8 });
    case "unload":
      return suddenUnload(mode, highest);
    case "spool-up":
      return spoolUp(mode);
    case "autorotation":
      return autorotation(mode, scenario.bailOut ? { bailOut: 2.5 } : {});
    case "learning":
      return learningRun(learningOf(mode, scenario.condition, scenario.throttlePercent));
    case "whole-pack":
      return wholePack(mode, loadsOf(mode, scenario.mix));
    case "drawn": {
      const n = Math.max(1, scenario.collectivesDeg.length - 1);
      const times = scenario.collectivesDeg.map((_, i) => (i * scenario.seconds) / n);
      const collectives = scenario.collectivesDeg.map((angle) => angle * degree);
      return drawn(mode, times, collectives, scenario.seconds);
    }
  }
}

/** About how many steps of the controller a flight takes: what its computing costs. Dimensionless. Source: see `fly`. */
export const ticksOf = ({ duration, machine, longestTick }: FlightOrder): number =>
  duration * Math.max(machine.controller.loopRate, 1 / (longestTick ?? 0.002));
