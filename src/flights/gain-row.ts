/** The same short punch with one gain after the other: how far the head sinks, and how restless it is before. */
import type { Machine } from "#machine/machine";
import { rpm } from "#model/constants";
import type { FlightRequest, FlightResult } from "./flight.ts";

/** Proportional gains that are flown. */
export const gainsFlown = [0.5, 1, 1.5, 2, 3, 4, 6, 8, 10, 13, 16, 20, 25] as const;

/** The quiet hover that is looked at, and when the pitch comes, s: after the start has settled, before the punch. */
const quiet = [0.4, 1] as const;

/** The flights of a row of gains, at a rate of the governor's loop (Hz). Source: definition. */
export const gainRow = (machine: Machine, mode: number, loopHz: number): FlightRequest[] =>
  gainsFlown.map((proportionalGain) => ({
    machine,
    mode,
    scenario: { kind: "punch", hold: 0.5, after: 0.3 },
    proportionalGain,
    loopHz,
  }));

/** What a gain comes to. */
export interface Grip {
  /** Deepest speed below the one asked for once the pitch has come, rpm. */
  readonly lowRpm: number;
  /** From the lowest to the highest speed in the quiet hover before, rpm. */
  readonly swingRpm: number;
}

/** How a flight of the row held its speed (rpm); null where it could not be flown to its end. Source: definition. */
export function gripOf(result: FlightResult): Grip | null {
  if (!result.ok || result.end.why !== "flown") return null;
  const { time, rotorSpeed } = result.trace;
  let [deepest, low, high] = [result.setSpeed, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < time.length; i++) {
    const speed = rotorSpeed[i]!;
    if (time[i]! >= quiet[1]) deepest = Math.min(deepest, speed);
    else if (time[i]! >= quiet[0]) {
      low = Math.min(low, speed);
      high = Math.max(high, speed);
    }
  }
  return { lowRpm: (result.setSpeed - deepest) / rpm, swingRpm: (high - low) / rpm };
}
