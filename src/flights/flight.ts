/** Flies a machine of the record through a scenario. Flights are kept for a while, so that words, plot and table share one. */
import type { Machine } from "#machine/machine";
import { endWords, type FlightEvent, flightEvents } from "#model/flight/events";
import { type Loss, modeLost } from "#model/flight/findings";
import { type Learned, learnedBy } from "#model/flight/learning";
import { type End, type Flight, fly } from "#model/flight/run";
import type { Trace } from "#model/flight/trace";
import type { Span } from "#model/flight/watch";
import { type FlightOptions, readyToFly } from "./machine.ts";
import { learningOf, orderOf, type Scenario, ticksOf } from "./scenarios.ts";

/** What is asked for: plain data, so that it can go to a worker. */
export interface FlightRequest extends FlightOptions {
  readonly machine: Machine;
  /** Place of the flight mode in the machine's list. */
  readonly mode: number;
  readonly scenario: Scenario;
}

/** A flight that was flown, in SI: plain data too. */
export interface Flown {
  readonly ok: true;
  readonly trace: Trace;
  readonly spans: readonly Span[];
  readonly end: End;
  readonly events: readonly FlightEvent[];
  /** How it ended, in words; null when it was flown to its end. */
  readonly endWords: string | null;
  /** Rotor speed of the mode, rad/s. */
  readonly setSpeed: number;
  /** Where a whole pack lost its mode. */
  readonly lost: Loss | null;
  /** What a learning run stored. */
  readonly learned: Learned | null;
}

export type FlightResult = Flown | { readonly ok: false; readonly why: string };

/** Most samples kept of one flight: more than a wide screen has pixels. */
const samples = 2400;
/** All flights of a page: its runs, those beside them, and a row of gains. */
const kept = 32;

const known = new WeakMap<Machine, Map<string, FlightResult>>();

const keyOf = ({ machine: _, ...rest }: FlightRequest): string => JSON.stringify(rest);

/** Whether two lists ask for the very same flights. */
export const sameFlights = (a: readonly FlightRequest[], b: readonly FlightRequest[]): boolean =>
  a.length === b.length && a.every((one, i) => one.machine === b[i]!.machine && keyOf(one) === keyOf(b[i]!));

/** A flight that was flown already, or null. */
export const knownFlight = (request: FlightRequest): FlightResult | null =>
  known.get(request.machine)?.get(keyOf(request)) ?? null;

/** Keeps a flight that was flown elsewhere. */
export function keepFlight(request: FlightRequest, result: FlightResult): void {
  let flights = known.get(request.machine);
  if (!flights) {
    flights = new Map();
    known.set(request.machine, flights);
  }
  if (flights.size >= kept) flights.delete(flights.keys().next().value ?? "");
  flights.set(keyOf(request), result);
}

/**
 * Flies, or gives what was flown before. Times in s, all else SI. Where no flight is possible: why, in words. Never throws for
 * a value of the record. Errors: those of `fly`.
 */
export function flightOf(request: FlightRequest): FlightResult {
  const found = knownFlight(request);
  if (found) return found;
  const result = flown(request);
  keepFlight(request, result);
  return result;
}

function flown({ machine, mode: index, scenario, ...options }: FlightRequest): FlightResult {
  const ready = readyToFly(machine, index, options);
  if (!ready.ok) return ready;
  const { mode } = ready;
  const order = orderOf(mode, scenario);
  const flight: Flight = fly({ ...order, samples });
  const words = endWords(flight.end, order.machine);
  if (flight.trace.time.length < 2) return { ok: false, why: words ?? "This flight ended as it began." };
  const learned =
    scenario.kind === "learning" ? learnedBy(flight, learningOf(mode, scenario.setup, scenario.throttlePercent)) : null;
  return {
    ok: true,
    trace: flight.trace,
    spans: flight.spans,
    end: flight.end,
    events: flightEvents(flight, 4),
    endWords: words,
    setSpeed: mode.setSpeed,
    lost: scenario.kind === "whole-pack" ? modeLost(flight) : null,
    learned,
  };
}

/** How long a flight is meant to last, s, and about how many steps it takes to compute; null where none is possible. */
export function sizeOf({
  machine,
  mode,
  scenario,
  ...options
}: FlightRequest): { seconds: number; ticks: number } | null {
  const ready = readyToFly(machine, mode, options);
  if (!ready.ok) return null;
  const order = orderOf(ready.mode, scenario);
  return { seconds: order.duration, ticks: ticksOf(order) };
}
