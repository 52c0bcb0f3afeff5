/** The learning run, rehearsed: what the controller stores, and what it stores when something is not as it should be. */
import { learnedReference, learning } from "../reference.ts";
import type { FlightMachine } from "./machine.ts";
import type { Collective } from "./orders.ts";
import type { RotorMap } from "./rotor-map.ts";
import type { Flight, FlightOrder } from "./run.ts";

export interface LearningRun {
  readonly machine: FlightMachine;
  /** Throttle held while it learns; open loop it is the duty. */
  readonly throttle?: number;
  /** Light pitch, rad. */
  readonly collective?: number;
  /** How far a restless hand moves the pitch up from there and back, over and over, rad. */
  readonly swing?: number;
  /** How long the throttle is held once it is there, s. */
  readonly seconds?: number;
}

/** A restless hand's way up, and as long back, s. Our choice. */
const swingTime = 1.5;
/** Loop rate above which a learning run isn't computed, Hz: without a governor the loop only passes the duty on. */
const learningLoop = 125;

/**
 * Order of a learning run: open loop, from rest over the soft start (s) to a duty equal to the throttle, held for so
 * many seconds, light pitch (rad), on the ground. Source: common practice (half throttle, 15 to 20 s).
 */
export function learningRun(run: LearningRun): FlightOrder {
  const { machine, throttle = learning.throttle, collective = 0, swing = 0, seconds = learning.secondsHigh } = run;
  const ramp = machine.controller.startRamp;
  const duration = ramp + seconds;
  const moves = swing === 0 ? 0 : Math.min(10_000, Math.ceil(duration / swingTime));
  return {
    machine: {
      ...machine,
      controller: { ...machine.controller, loopRate: Math.min(machine.controller.loopRate, learningLoop) },
    },
    start: { speed: 0, collective, height: 0, climb: 0 },
    throttle: [{ from: 0, kind: "duty", duty: throttle, ramp }],
    collective: [
      { from: 0, kind: "hold", collective, over: 0 },
      ...Array.from({ length: moves }, (_, i): Collective => {
        const to = i % 2 === 0 ? collective + swing : collective;
        return { from: i * swingTime, kind: "hold", collective: to, over: swingTime };
      }),
    ],
    duration,
    held: true,
    longestTick: 1 / learningLoop,
    stepShare: 0.6,
  };
}

export type Learned =
  | {
      readonly ok: true;
      /** Motor speed at the end of the run, and the reference that it gives, rad/s. */
      readonly motorSpeed: number;
      readonly reference: number;
      /** Reference over the one that the machine has now, less 1: by this share every mode would be faster. */
      readonly change: number;
    }
  | { readonly ok: false; readonly why: "cut-short" | "not-turning" | "not-flown"; readonly words: string };

/**
 * What a controller stores after a learning run: mean motor speed (rad/s) of the last second over the throttle, or nothing when
 * the throttle was held for less than 15 s. Source: common practice for the time; definition of the reference.
 */
export function learnedBy(flight: Flight, run: LearningRun): Learned {
  const { machine, throttle = learning.throttle, seconds = learning.secondsHigh } = run;
  if (flight.end.why !== "flown")
    return { ok: false, why: "not-flown", words: "The run didn't come to its end: nothing is stored." };
  if (seconds < learning.secondsLow) {
    return {
      ok: false,
      why: "cut-short",
      words: `Held for ${seconds.toFixed(0)} s; it takes ${learning.secondsLow} to ${learning.secondsHigh} s. Nothing is stored: the old reference stays.`,
    };
  }
  const { time, motorSpeed } = flight.trace;
  const end = time[time.length - 1]!;
  let sum = 0;
  let count = 0;
  for (let i = time.length - 1; i >= 0 && time[i]! >= end - 1; i--) {
    sum += motorSpeed[i]!;
    count++;
  }
  const mean = sum / count;
  if (!(mean > 1)) return { ok: false, why: "not-turning", words: "The motor didn't turn: nothing is stored." };
  const reference = learnedReference({ motorSpeed: mean, throttle });
  return { ok: true, motorSpeed: mean, reference, change: reference / machine.controller.reference - 1 };
}

const nothing: RotorMap = { thrust: () => 0, torque: () => 0 };

/**
 * The machine with its blades left off: no load, and of the rotor's inertia (kg m2) the hub's share alone, 3 %: from memory, our guess.
 */
export function withoutBlades(machine: FlightMachine): FlightMachine {
  return { ...machine, tail: null, rotor: { ...machine.rotor, map: nothing, inertia: 0.03 * machine.rotor.inertia } };
}

/** The machine with a pack at another charge (ratio, 0 to 1). Source: definition. */
export function atCharge(machine: FlightMachine, charge: number): FlightMachine {
  return { ...machine, pack: { ...machine.pack, charge } };
}
