/** The flights of the pages as plain data, so that a worker can be asked for them, and as orders for the simulator. */
import { atCharge, type LearningRun, learningRun, withoutBlades } from "#model/flight/learning";
import { hoverCollective } from "#model/flight/pilot";
import type { FlightOrder } from "#model/flight/run";
import {
  autorotation,
  drawn,
  hover,
  type Load,
  type Mode,
  pumps,
  punch,
  spoolUp,
  suddenUnload,
  wholePack,
} from "#model/flight/scenarios";
import { learning } from "#model/reference";

const degree = Math.PI / 180;

/** How the reader sets up a learning run. */
export interface LearningSetup {
  readonly chargePercent: number;
  /** Pitch that is held, deg, and how far a restless hand moves it up and back, deg. */
  readonly pitchDeg: number;
  readonly swingDeg: number;
  /** Blades and all else are on the machine. */
  readonly complete: boolean;
  /** How long the throttle is held, s. */
  readonly seconds: number;
}

/** A learning run as it should be: common practice, no source. */
export const properLearning: LearningSetup = {
  chargePercent: 100,
  pitchDeg: 0,
  swingDeg: 0,
  complete: true,
  seconds: learning.secondsHigh,
};

/** Mixes of loads that a pack is flown with. */
export const packMixes = ["gentle", "mixed", "hard"] as const;
export type PackMix = (typeof packMixes)[number];

/** A flight, as plain data. Collectives in degrees, times in s. */
export type Scenario =
  | { readonly kind: "punch"; readonly hold?: number; readonly after?: number }
  | { readonly kind: "hover"; readonly seconds: number }
  | { readonly kind: "pumps" }
  | { readonly kind: "unload" }
  | { readonly kind: "spool-up" }
  | { readonly kind: "autorotation"; readonly bailOut: boolean }
  | { readonly kind: "learning"; readonly setup: LearningSetup; readonly throttlePercent: number }
  | { readonly kind: "whole-pack"; readonly mix: PackMix }
  | { readonly kind: "drawn"; readonly seconds: number; readonly collectivesDeg: readonly number[] };

/** The learning run of a set-up, with the pack at that charge whatever the record says. SI. Source: definition. */
export function learningOf({ machine }: Mode, setup: LearningSetup, throttlePercent: number): LearningRun {
  const charged = atCharge(machine, setup.chargePercent / 100);
  return {
    machine: setup.complete ? charged : withoutBlades(charged),
    throttle: throttlePercent / 100,
    collective: setup.pitchDeg * degree,
    swing: setup.swingDeg * degree,
    seconds: setup.seconds,
  };
}

/** Collective (rad) that hovers, or the highest where none does. Source: definition. */
const hovering = ({ machine, setSpeed }: Mode): number =>
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

/** How long a punch is flown on after the pitch is back, s; less where only the dip is of interest. */
const punchCalm = 2.5;

/** The order of a scenario for the simulator, SI. Source: the scenarios' own files. */
export function orderOf(mode: Mode, scenario: Scenario): FlightOrder {
  const { machine } = mode;
  const { highestCollective: highest, lowestCollective: lowest } = machine.rotor;
  switch (scenario.kind) {
    case "punch": {
      const { hold = 1.2, after = punchCalm } = scenario;
      const whole = punch(mode, { collective: highest, hold });
      return { ...whole, duration: whole.duration - punchCalm + Math.min(after, punchCalm) };
    }
    case "hover":
      return hover(mode, scenario.seconds);
    case "pumps":
      return pumps(mode, { highest, lowest: Math.max(lowest, 2 * hovering(mode) - highest), count: 5, period: 0.8 });
    case "unload":
      return suddenUnload(mode, highest);
    case "spool-up":
      return spoolUp(mode);
    case "autorotation":
      return autorotation(mode, scenario.bailOut ? { bailOut: 2.5 } : {});
    case "learning":
      return learningRun(learningOf(mode, scenario.setup, scenario.throttlePercent));
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
