/** A whole pack in each flight mode: what is flown, and what a pilot takes from it. */
import { figuresOf } from "#figures/figures";
import type { Machine } from "#machine/machine";
import { reserveCharge } from "#model/endurance";
import type { FlightRequest, FlightResult } from "./flight.ts";
import { readyToFly } from "./machine.ts";
import { packedAs } from "./packs.ts";
import { loadsOf, type PackMix } from "./scenarios.ts";

/** A mode that is lost with less charge than this left was held to the pack's own end, as a share. Our choice. */
const ownEnd = 0.01;
/** A timer is set in steps of so many seconds. */
const timerStep = 10;
/** Shortest and longest time axis of a whole pack, s: the simulator flies for twenty minutes at most. */
const shortest = 120;
const longest = 1200;

/** A pack flown from full to empty in a mode, with a mix of loads. */
export const packRequest = (machine: Machine, mode: number, mix: PackMix): FlightRequest => ({
  machine,
  mode,
  scenario: { kind: "whole-pack", mix },
  pack: "full",
});

export interface PackOutcome {
  /** Charge (%) and time (min) at which the mode is lost; null: it is held to the pack's end. */
  readonly lost: { readonly percent: number; readonly minutes: number } | null;
  /** When a fifth is left, min; null when the flight doesn't get there. */
  readonly reserve: number | null;
  /** What a timer would be set to, s: when a fifth is left, in whole tens of seconds. */
  readonly timer: number | null;
  /** Length of the flight, min, and the charge at its end, %. */
  readonly end: number;
  readonly endPercent: number;
}

/** What a flown pack comes to; null where there was no flight, or where it broke off before the mode was lost. Units: min, s, %. A timer to a fifth: common practice, no source. */
export function packOutcome(result: FlightResult | null | undefined): PackOutcome | null {
  if (!result?.ok) return null;
  const { lost, spans, end, trace } = result;
  if (!lost && end.why !== "flown" && end.why !== "pack-empty") return null;
  const from = spans.find((span) => span.kind === "charge-low")?.from ?? null;
  return {
    lost: lost && lost.charge > ownEnd ? { percent: 100 * lost.charge, minutes: lost.time / 60 } : null,
    reserve: from === null ? null : from / 60,
    timer: from === null ? null : timerStep * Math.floor(from / timerStep),
    end: end.time / 60,
    endPercent: 100 * (trace.charge[trace.charge.length - 1] ?? 0),
  };
}

/** Current grows with the way from the hover's pitch to the full one by about this power: steeper at the end. Our choice. */
const steeper = 1.4;

/**
 * A time axis (s) for a whole pack: charge over the mean current of the mix, with a tenth to spare and in whole minutes; twenty at most, as
 * long as the simulator flies. Errors: currents of the full pack's figures, which the flight exceeds. Source: definition.
 */
export function packAxis(machine: Machine, mode: number, mix: PackMix): number {
  const figures = figuresOf(packedAs(machine, "full"));
  const ready = readyToFly(machine, mode, { pack: "full" });
  const hover = figures.number("hover-pack-current", mode);
  if (!ready.ok || hover === null || !(hover > 0)) return longest;
  const full = figures.number("full-pitch-pack-current", mode) ?? 4 * hover;
  const loads = loadsOf(ready.mode, mix);
  const low = Math.min(...loads.map((load) => load.collective));
  const high = ready.mode.machine.rotor.highestCollective;
  const seconds = loads.reduce((sum, load) => sum + load.seconds, 0);
  const charge = loads.reduce((sum, load) => {
    const share = high > low ? (load.collective - low) / (high - low) : 0;
    return sum + load.seconds * (hover + share ** steeper * Math.max(0, full - hover));
  }, 0);
  const whole = (1.1 * 3.6 * machine.pack.capacityMah * seconds) / charge;
  return Math.min(longest, Math.max(shortest, 60 * Math.ceil(whole / 60)));
}

/** The share of charge that stays in, %. */
export const reservePercent = 100 * reserveCharge;
