/** What a rehearsed learning run would leave in the controller, and what each flight mode would then really turn. */
import { type Figures, figuresOf } from "#figures/figures";
import type { Machine } from "#machine/machine";
import { gravity, rpm } from "#model/constants";
import { type FlightRequest, flightOf } from "./flight.ts";
import { readyToFly } from "./machine.ts";
import { type LearningSetup, properLearning } from "./scenarios.ts";

/** What a rehearsal stores, against a run with everything as it should be. */
export type Stored =
  | {
      readonly kind: "low" | "same" | "high";
      /** Motor speed at the end of the run, and what is stored as 100 %, rpm. */
      readonly motorRpm: number;
      readonly storedRpm: number;
      /** Stored over what should be stored, less 1. */
      readonly off: number;
    }
  /** Nothing is stored: the old reference stays. */
  | { readonly kind: "nothing"; readonly words: string }
  /** There is no such run on this machine. */
  | { readonly kind: "none"; readonly words: string };

/** A stored reference this near to the right one is right, as a share: some ten rpm. Our choice. */
const nearEnough = 0.005;

/** The mode with the widest pitch upwards: it lets the rehearsal's pitch through. Dimensionless. Source: definition. */
const learningMode = ({ modes }: Machine): number =>
  modes.reduce((best, mode, i) => (mode.collectiveMaxDeg > modes[best]!.collectiveMaxDeg ? i : best), 0);

/** The flight of a rehearsal, as it is asked for. */
export const rehearsal = (machine: Machine, setup: LearningSetup): FlightRequest => ({
  machine,
  mode: learningMode(machine),
  scenario: { kind: "learning", setup, throttlePercent: machine.controller.learned.throttlePercent },
});

/**
 * What a learning run of this set-up would store, and how far off that is (ratio). Speeds in rpm. Errors: words where nothing is
 * stored or nothing turns. Source: `learnedBy`; common practice for how a reference is learned.
 */
export function storedBy(machine: Machine, setup: LearningSetup): Stored {
  const right = flightOf(rehearsal(machine, properLearning));
  if (!right.ok) return { kind: "none", words: right.why };
  const run = flightOf(rehearsal(machine, setup));
  if (!run.ok) return { kind: "none", words: run.why };
  if (!run.learned?.ok) return { kind: "nothing", words: run.learned?.words ?? "" };
  // Without a right one there is nothing to hold it against.
  if (!right.learned?.ok) return { kind: "none", words: right.learned?.words ?? "" };
  const off = run.learned.reference / right.learned.reference - 1;
  return {
    kind: Math.abs(off) < nearEnough ? "same" : off < 0 ? "low" : "high",
    motorRpm: run.learned.motorSpeed / rpm,
    storedRpm: run.learned.reference / rpm,
    off,
  };
}

/**
 * Share of the machine's weight that the rotor lifts at the highest pitch of a run, at the speed that it has at the end (ratio);
 * null where it isn't flown. Above 1 it takes off. Source: the rotor model, hover without ground effect.
 */
export function liftIn(machine: Machine, setup: LearningSetup): number | null {
  const ready = readyToFly(machine, learningMode(machine));
  const run = flightOf(rehearsal(machine, setup));
  if (!ready.ok || !run.ok) return null;
  if (!setup.complete) return 0;
  const { rotor, mass } = ready.mode.machine;
  const pitch = Math.min(rotor.highestCollective, ((setup.pitchDeg + setup.swingDeg) * Math.PI) / 180);
  const speed = run.trace.rotorSpeed[run.trace.rotorSpeed.length - 1]!;
  const lift = rotor.map.thrust(speed, pitch, 0) / (mass * gravity);
  return Number.isFinite(lift) ? Math.max(0, lift) : null;
}

/** One flight mode under a stored reference; rpm. */
export interface StoredMode {
  readonly wanted: number;
  readonly real: number;
  /** Between the speed it really turns and the ceiling at full pitch; null when the motor can't turn it there. */
  readonly room: number | null;
  readonly wantedRoom: number | null;
  /** The blades' limit, when it is passed now and wasn't before. */
  readonly bladeLimit: number | null;
}

/**
 * What each mode would turn with a reference that is off by this share, its throttle set as for the right one: n' = n (1 + off), rpm.
 * Source: definition of the reference.
 */
export function modesWith(machine: Machine, off: number, figures: Figures = figuresOf(machine)): StoredMode[] {
  const limit = machine.mainRotor.ratedRpm;
  return machine.modes.map(({ headRpm: wanted }, i) => {
    const real = wanted * (1 + off);
    const ceiling = figures.number("ceiling-full-pitch", i);
    return {
      wanted,
      real,
      room: ceiling === null ? null : ceiling - real,
      wantedRoom: ceiling === null ? null : ceiling - wanted,
      bladeLimit: limit !== null && real > limit && wanted <= limit ? limit : null,
    };
  });
}
