/** What a page asks of a flight that was flown: the charge at which a mode is lost, how far a head ran over, what an autorotation spent. */
import type { FlightMachine } from "./machine.ts";
import type { Flight } from "./run.ts";
import { valueAt } from "./trace.ts";
import type { Span } from "./watch.ts";

/** A drop of the speed that lasts longer than this with the duty at its limit is a mode that is lost, not a dip that the governor mends: s. Our choice. */
const lasting = 0.4;

/** When and at what charge a mode was lost. */
export interface Loss {
  /** s */
  readonly time: number;
  /** 0 to 1 */
  readonly charge: number;
  /** Lowest rotor speed of that drop, and the speed asked for, rad/s. */
  readonly lowest: number;
  readonly set: number;
}

/**
 * The first drop of more than 1 % below the set speed for longer than 0.4 s in which the duty stood at its limit for 0.2 s in all, with the
 * charge (ratio) at its beginning; null: the mode was held to the end. Source: definition.
 */
export function modeLost({ spans, trace }: Pick<Flight, "spans" | "trace">): Loss | null {
  const limits = spans.filter((span) => span.kind === "duty-at-limit");
  const atLimit = (low: Span): number =>
    limits.reduce((sum, limit) => sum + Math.max(0, Math.min(limit.to, low.to) - Math.max(limit.from, low.from)), 0);
  const drop = spans.find(
    (low) => low.kind === "speed-low" && low.to - low.from >= lasting && atLimit(low) >= lasting / 2,
  );
  if (!drop) return null;
  return { time: drop.from, charge: valueAt(trace, "charge", drop.from), lowest: drop.value, set: drop.level };
}

/** The worst overspeed of a flight. */
export interface Overspeed {
  /** rad/s */
  readonly highest: number;
  readonly set: number;
  /** When it began and how long it lasted, s. */
  readonly from: number;
  readonly seconds: number;
  /** Highest speed over the limit of the blades, of the motor, of the controller: above 1 it is passed; null: no limit known. */
  readonly ofBladeLimit: number | null;
  readonly ofMotorLimit: number | null;
  readonly ofElectricalLimit: number | null;
}

/** The worst overspeed against the set speed (rad/s) and its share of each limit (ratio); null: there was none. Source: definition. */
export function worstOverspeed(flight: Flight, machine: FlightMachine): Overspeed | null {
  let worst: Span | null = null;
  for (const s of flight.spans) {
    if (s.kind === "speed-high" && (worst === null || s.value - s.level > worst.value - worst.level)) worst = s;
  }
  if (!worst) return null;
  const { limits, motor } = machine;
  // While the rotor runs ahead the motor isn't that fast: its own highest speed counts.
  let motorSpeed = 0;
  for (const speed of flight.trace.motorSpeed) motorSpeed = Math.max(motorSpeed, speed);
  const of = (value: number, limit: number | null): number | null => (limit === null ? null : value / limit);
  return {
    highest: worst.value,
    set: worst.level,
    from: worst.from,
    seconds: worst.to - worst.from,
    ofBladeLimit: of(worst.value, limits.rotorSpeed),
    ofMotorLimit: of(motorSpeed, limits.motorSpeed),
    ofElectricalLimit: of((motorSpeed * motor.poles) / 2, limits.electricalSpeed),
  };
}

/** What the rotor alone paid for while the clutch was loose. */
export interface Spent {
  /** s */
  readonly from: number;
  readonly to: number;
  /** Kinetic energy that the rotor lost, and work that the air took from it, J: the same but for the computation's error. */
  readonly kinetic: number;
  readonly airWork: number;
}

/** The longest stretch in which the rotor ran on its own: energy (J) it lost and work the air took; null: there was none. Source: conservation of energy, by definition. */
export function spentAlone(flight: Flight, machine: FlightMachine): Spent | null {
  const { engaged, time, rotorSpeed, airWork } = flight.trace;
  let best: [number, number] | null = null;
  let from = -1;
  for (let i = 0; i <= engaged.length; i++) {
    const loose = i < engaged.length && engaged[i] === 0;
    if (loose && from < 0) from = i;
    if (!loose && from >= 0) {
      if (!best || i - 1 - from > best[1] - best[0]) best = [from, i - 1];
      from = -1;
    }
  }
  if (!best) return null;
  const [a, b] = best;
  const square = rotorSpeed[a]! ** 2 - rotorSpeed[b]! ** 2;
  return {
    from: time[a]!,
    to: time[b]!,
    kinetic: 0.5 * machine.rotor.inertia * square,
    airWork: airWork[b]! - airWork[a]!,
  };
}
