/** The flight of a whole pack in the mode looked at, and the question before it. */
import { figuresOf } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import type { PackMix } from "#flights/scenarios";
import { packAxis, reservePercent } from "#flights/whole-pack";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { type Shown, show } from "#view/shown";
import { enWholePack as en } from "#view/words/en-whole-pack";
import { flightPlot } from "./flight-plot.ts";
import type { FlightState } from "./flight-state.ts";
import { type EstimateState, estimate } from "./guess.ts";
import { pick, picked } from "./pick.ts";
import { guessed, guessId } from "./whole-pack-state.ts";

const ID = "pack-mix";
/** In the order in which they are offered. */
const mixes = ["mixed", "gentle", "hard"] as const satisfies readonly PackMix[];

/** The mix of loads that the reader flies; circuits until another is picked. */
export const packMix = (answers: Answers): PackMix => picked(answers, ID, [...mixes]);

/** Lets the reader pick the mix of loads. */
export const packMixPick = (answers: Answers) =>
  pick({
    id: ID,
    label: en.pick,
    options: mixes.map((key) => ({ key, says: en.mixes[key] })),
    answers,
  });

/** Asks at which charge the mode looked at is lost with this mix; what is true is flown below. */
export function wholePackGuess(machine: Machine, answers: Answers, mode: number, mix: PackMix): Shown<EstimateState> {
  return estimate({
    id: guessId(mix, mode),
    ask: en.guess.ask(modeName(machine, mode), en.mixes[mix]),
    unit: "%",
    low: 0,
    high: 100,
    step: 5,
    answer: null,
    within: 0,
    reply: en.guess.reply,
    answers,
  });
}

/** Duty that is left at full pitch without climb, %, with a full pack and with a fifth in it; null where full pitch isn't held. */
export function dutyInHand(
  machine: Machine,
  mode: number,
): { readonly full: number | null; readonly fifth: number | null } {
  const left = (chargePercent: number): number | null => {
    const duty = figuresOf({ ...machine, pack: { ...machine.pack, chargePercent } }).number("duty-full-pitch", mode);
    return duty === null ? null : 100 - duty;
  };
  return { full: left(100), fifth: left(reservePercent) };
}

/** Head speed, duty, voltage and charge over a whole pack, now and what if; flown once the reader has guessed. */
export function wholePackFlight(
  machine: Machine,
  whatIf: Machine | null,
  answers: Answers,
  mode: number,
  mix: PackMix,
): Shown<FlightState> {
  const { view, state } = flightPlot({
    id: "whole-pack",
    machine,
    whatIf,
    answers,
    mode,
    pack: "full",
    scenario: { kind: "whole-pack", mix },
    title: en.flight.title(modeName(machine, mode), en.mixes[mix]),
  });
  const seconds = Math.max(...state.runs.map(({ request }) => packAxis(request.machine, request.mode, mix)));
  return show<FlightState>(view, { ...state, seconds, go: guessed(mix, answers), wait: en.flight.wait });
}
