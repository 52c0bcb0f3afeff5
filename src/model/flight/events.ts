/** What happened in a flight, and how it ended, in words. */
import { rpm, zeroCelsius } from "../constants.ts";
import type { FlightMachine } from "./machine.ts";
import type { End, Flight } from "./run.ts";
import type { Kind, Span } from "./watch.ts";

/** One thing that happened: when (s), the figure that says how far (`unit` beside it), and a sentence. */
export interface FlightEvent {
  readonly kind: Kind | "recovery";
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly level: number;
  readonly unit: "rpm" | "%" | "A" | "°C" | "s";
  readonly words: string;
}

const seconds = (time: number): string => `${time.toFixed(time < 10 ? 2 : 1)} s`;
const whole = (value: number): string => value.toFixed(0);
const during = (s: Span): string =>
  s.ended ? `from ${seconds(s.from)} to ${seconds(s.to)}` : `from ${seconds(s.from)} to the end`;

/** Value and limit of a stretch in the unit that its words use. */
const shown: Readonly<Record<Kind, { readonly unit: FlightEvent["unit"]; readonly of: (si: number) => number }>> = {
  "duty-at-limit": { unit: "%", of: (v) => v * 100 },
  "speed-low": { unit: "rpm", of: (v) => v / rpm },
  "speed-high": { unit: "rpm", of: (v) => v / rpm },
  "motor-over-limit": { unit: "rpm", of: (v) => v / rpm },
  "electrical-over-limit": { unit: "rpm", of: (v) => v / rpm },
  "blades-over-limit": { unit: "rpm", of: (v) => v / rpm },
  "current-over-limit": { unit: "A", of: (v) => v },
  "winding-over-limit": { unit: "°C", of: (v) => v - zeroCelsius },
  "controller-over-limit": { unit: "°C", of: (v) => v - zeroCelsius },
  overrunning: { unit: "rpm", of: (v) => v / rpm },
  hunting: { unit: "%", of: (v) => v * 100 },
  "charge-low": { unit: "%", of: (v) => v * 100 },
};

const sentences: Readonly<Record<Kind, (span: Span, value: number, level: number) => string>> = {
  "duty-at-limit": (s) => `Duty at its limit ${during(s)}: the controller has no more to give.`,
  "speed-low": (s, value, level) =>
    s.ended
      ? `Head speed low ${during(s)}: down to ${whole(value)} rpm at ${seconds(s.at)}, ${whole(level - value)} rpm below the set speed; within 1 % again after ${seconds(s.to - s.from)}.`
      : `Head speed low ${during(s)}: down to ${whole(value)} rpm at ${seconds(s.at)}, ${whole(level - value)} rpm below the set speed, and not back by the end.`,
  "speed-high": (s, value, level) =>
    `Overspeed ${during(s)}: up to ${whole(value)} rpm at ${seconds(s.at)}, ${whole(value - level)} rpm above the set speed, for ${seconds(s.to - s.from)}.`,
  "motor-over-limit": (s, value, level) => over("The motor turns faster than it is rated for", s, value, level, "rpm"),
  "electrical-over-limit": (s, value, level) =>
    over("The electrical speed is above the controller's limit", s, value, level, "rpm"),
  "blades-over-limit": (s, value, level) =>
    over("The head turns faster than the blades' maker allows", s, value, level, "rpm"),
  "current-over-limit": (s, value, level) => over("The pack gives more current than it should", s, value, level, "A"),
  "winding-over-limit": (s, value, level) => over("The motor's winding is too hot", s, value, level, "°C"),
  "controller-over-limit": (s, value, level) => over("The controller is too hot", s, value, level, "°C"),
  overrunning: (s) => `The rotor runs ahead of the motor ${during(s)}: the one-way clutch is loose.`,
  hunting: (s, value, level) =>
    `The governor hunts ${during(s)}: the head speed swings by up to ${value.toFixed(1)} % about the set speed, ${level.toFixed(1)} times a second.`,
  "charge-low": (s) => `The pack is below 20 % from ${seconds(s.from)}: land.`,
};

const over = (what: string, s: Span, value: number, level: number, unit: string): string =>
  `${what} ${during(s)}: ${whole(value)} ${unit} at ${seconds(s.at)}, the limit is ${whole(level)} ${unit}.`;

/**
 * What happened in a flight, in order: each with its figures (rpm, %, A, degrees C; times in s) and a sentence. Short
 * stretches of a loose clutch are many in a hard flight: at most `most` of each kind are told, the longest ones.
 * Source: definition.
 */
export function flightEvents(flight: Flight, most = 12): FlightEvent[] {
  const told = new Set<Span>();
  for (const kind of new Set(flight.spans.map((s) => s.kind))) {
    const ofKind = flight.spans.filter((s) => s.kind === kind);
    for (const s of ofKind.toSorted((a, b) => b.to - b.from - (a.to - a.from)).slice(0, most)) told.add(s);
  }
  return flight.spans
    .filter((s) => told.has(s))
    .map((s) => {
      const { unit, of } = shown[s.kind];
      const value = of(s.value);
      // A hunt's level counts swings in a second; all other levels have the value's unit.
      const level = s.kind === "hunting" ? s.level : of(s.level);
      return { kind: s.kind, from: s.from, to: s.to, value, level, unit, words: sentences[s.kind](s, value, level) };
    });
}

/**
 * How a flight ended, in a sentence, or null when it was flown to its end. Units in the words: s, m/s, rpm. Source: definition.
 */
export function endWords(end: End, machine: FlightMachine): string | null {
  const when = seconds(end.time);
  switch (end.why) {
    case "flown":
      return null;
    case "pack-empty":
      return `The pack is empty at ${when}: the motor stops.`;
    case "ground":
      return end.value < -2
        ? `The machine hits the ground at ${when}, sinking at ${(-end.value).toFixed(1)} m/s.`
        : `The machine is on the ground at ${when}.`;
    case "clutch-chatters":
      return `The one-way clutch takes and lets go without end at ${when}: no real machine would stand it. Lower the gains.`;
    case "ran-away":
      return `The head runs away at ${when}: ${whole(end.value / rpm)} rpm, four times the learned reference.`;
    case "not-a-number":
      return `The computation left the numbers at ${when}: with these figures no machine moves.`;
    case "too-quick":
      return `This machine can't be followed: something in it settles within ${(end.value * 1e6).toPrecision(2)} µs. Look at the motor's inertia and resistance (${(machine.motor.inertia * 1e7).toPrecision(2)} g cm²).`;
    case "too-long":
      return end.time > 0
        ? `The computation was stopped at ${when}: this machine wants steps so short that nobody would wait for the rest.`
        : "The flight is too long to be computed at this loop rate.";
    case "no-curve":
      return "The rotor's map, the tail's or the pack's curve gives no figure for this machine: most often the tail rotor is far too small, or the learned reference far too low.";
    case "impossible-machine":
      return Number.isFinite(end.value)
        ? `No flight is possible: the ${end.what} is ${Number(end.value.toPrecision(3))}.`
        : `No flight is possible: the ${end.what} is not a number.`;
  }
}
