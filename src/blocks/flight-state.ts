/** What a flight on a page is: which runs, drawn how, and what the reader has drawn before it. Plain data. */
import { type FlightRequest, type FlightResult, flightOf, knownFlight, sizeOf } from "#flights/flight";
import { type LaneName, laneAt } from "#flights/lanes";
import { flightWords, flightWordsInShort } from "#flights/told";
import type { Ink } from "#plots/state";
import { formatValue } from "#view/format";
import { capital, firstAndRest } from "#view/text";
import { enFlights as en } from "#view/words/en-flights";
import { timeOf } from "./flight-curve.ts";

export interface FlightRun {
  readonly key: string;
  readonly label: string;
  /** What it is called in sentences, where that is more than its label. */
  readonly named?: string;
  readonly ink: Ink;
  readonly request: FlightRequest;
}

/** What the reader draws: the head speed that is expected, in pencil, or the collective that is flown. */
export interface Drawing {
  readonly what: "head-speed" | "collective";
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly unit: string;
  readonly values: readonly number[];
  /** False while nothing has been drawn: the values are where a curve begins. */
  readonly drawn: boolean;
}

export interface FlightState {
  /** Its stable name in kebab-case (`data-plot`), and the answer that says that it was run. */
  readonly id: string;
  readonly title: string;
  readonly lanes: readonly LaneName[];
  /** Length of the time axis, s. */
  readonly seconds: number;
  readonly runs: readonly FlightRun[];
  /** The same flight of the pinned machine: flown after the others, drawn and told beside them. */
  readonly pinned?: FlightRun;
  readonly drawing: Drawing | null;
  /** The reader has said go, or nobody needs to. */
  readonly go: boolean;
  /** There is something to draw or to press before it is flown. */
  readonly asks: boolean;
  /** Flown off the page's own thread. */
  readonly long: boolean;
  /** Said while it isn't flown, in place of what fits most flights. */
  readonly wait?: string;
  /** The answers that make it go. */
  readonly options: readonly { readonly key: string }[];
}

/** More steps of the simulator than this are no matter of one frame: the flight goes to the worker. */
const LONG = 12_000;

/** Whether these flights take longer than a frame. */
export const takesLong = (requests: readonly FlightRequest[]): boolean =>
  requests.reduce((sum, request) => sum + (sizeOf(request)?.ticks ?? 0), 0) > LONG;

/** When the last of some flights ends, s. */
export const endOf = (results: readonly FlightResult[]): number =>
  Math.max(0, ...results.map((result) => (result.ok ? result.end.time : 0)));

/** The flights of a state: flown here when they are short; null while a long one is not known yet. */
export function resultsOf(state: FlightState): readonly FlightResult[] | null {
  if (!state.go) return null;
  const results = state.runs.map(({ request }) => (state.long ? knownFlight(request) : flightOf(request)));
  return results.every((result) => result !== null) ? results : null;
}

/** The pinned machine's flight: flown here where all of them are short; null while it isn't known, or where there is none. */
export function pinnedResult({ go, runs, pinned }: FlightState): FlightResult | null {
  if (!go || !pinned) return null;
  const known = knownFlight(pinned.request);
  if (known) return known;
  return takesLong([...runs, pinned].map(({ request }) => request)) ? null : flightOf(pinned.request);
}

/** A state and the results of its runs, one for each; none while it isn't flown. */
export interface Flights {
  readonly state: FlightState;
  readonly results: readonly FlightResult[];
}

/** The flights with the pinned machine's as the last, once it is flown. */
export function withPinned({ state, results }: Flights, then: FlightResult | null): Flights {
  const [first, ...rest] = state.runs;
  if (!first || !state.pinned || !then || results.length === 0) return { state, results };
  const runs = [{ ...first, label: first.label || en.runs.now }, ...rest, state.pinned];
  return { state: { ...state, runs }, results: [...results, then] };
}

/** Whether one of the machine's own runs is dashed. */
export const hasDashed = ({ runs }: FlightState): boolean => runs.some(({ ink }) => ink === "pinned-now");

/** The state while a collective is being drawn: all fly by it. */
export function drawnBy(state: FlightState, collectivesDeg: readonly number[] | null): FlightState {
  if (!collectivesDeg || state.drawing?.what !== "collective") return state;
  const drawn = (run: FlightRun): FlightRun =>
    run.request.scenario.kind === "drawn"
      ? { ...run, request: { ...run.request, scenario: { ...run.request.scenario, collectivesDeg } } }
      : run;
  return { ...state, runs: state.runs.map(drawn), ...(state.pinned ? { pinned: drawn(state.pinned) } : {}) };
}

/** Values nearer to each other than this share of the larger one lie on each other in any lane. */
const NEAR = 1e-3;

/** Whether two flights lie on each other in all lanes, wherever one looks. */
function sameFlight({ lanes, seconds }: FlightState, a: FlightResult | undefined, b: FlightResult): boolean {
  if (!a?.ok || !b.ok) return false;
  return Array.from({ length: LOOKS }, (_, i) => timeOf(i, seconds, LOOKS)).every((time) =>
    lanes.every((lane) => {
      const [one, other] = [laneAt(a.trace, lane, time), laneAt(b.trace, lane, time)];
      if (one === null || other === null) return one === other;
      return Math.abs(one - other) <= NEAR * Math.max(1, Math.abs(one), Math.abs(other));
    }),
  );
}

const LOOKS = 101;

/** What is told of the pinned machine's flight: its main sentence, or that it is the same. */
function pinnedWords(state: FlightState, { request }: FlightRun, first: FlightResult | undefined, then: FlightResult) {
  if (!then.ok) return then.why;
  if (sameFlight(state, first, then)) return en.samePinned;
  return then.learned ? flightWordsInShort(then) : firstAndRest(flightWords(then, request.scenario))[0];
}

/** How far the guess was off, in words; nothing where none was drawn. */
function gapWords(state: FlightState, first: FlightResult | undefined): string {
  const { drawing, seconds } = state;
  if (!drawing?.drawn || drawing.what !== "head-speed" || !first?.ok) return "";
  let worst = 0;
  let at = 0;
  for (const [i, guess] of drawing.values.entries()) {
    const value = laneAt(first.trace, "head-speed", timeOf(i, seconds));
    if (value === null || Math.abs(guess - value) <= Math.abs(worst)) continue;
    worst = guess - value;
    at = timeOf(i, seconds);
  }
  if (Math.abs(worst) < 2.5 * drawing.step) return en.close;
  return en.gap(formatValue(Math.abs(worst), "rpm"), formatValue(at, "s"));
}

/** What one run says. */
const runWords = ({ request }: FlightRun, result: FlightResult): string =>
  result.ok ? flightWords(result, request.scenario) : result.why;

/** All that a state says, in sentences: what is to be done before it is flown, what happened after. */
export function wordsOf(state: FlightState): string {
  if (!state.go) {
    if (state.wait !== undefined) return state.wait;
    return !state.drawing ? en.waitRun : state.drawing.what === "collective" ? en.waitHand : en.waitGuess;
  }
  const results = resultsOf(state);
  if (!results) return en.soon;
  const all = withPinned({ state, results }, pinnedResult(state));
  return inOne(saidOf(all.state, all.results));
}

/** What is said of one run: what it is called, where others stand beside it, and its sentences. */
export interface Said {
  readonly label: string;
  readonly words: string;
}

/** The same for results that are known, run by run; last, how far the guess was off. */
export function saidOf(state: FlightState, results: readonly FlightResult[]): Said[] {
  const told = state.runs.map((run, i): Said => {
    const result = results[i];
    if (!result) return { label: "", words: "" };
    // The same machine flown otherwise: only what sets it apart.
    const beside = i > 0 && run.ink === "pinned-now";
    const words =
      run === state.pinned
        ? pinnedWords(state, run, results[0], result)
        : result.ok && beside
          ? flightWordsInShort(result)
          : runWords(run, result);
    const name = run.named ?? run.label;
    return { label: state.runs.length > 1 ? `${capital(name)}:` : "", words };
  });
  return [...told, { label: "", words: gapWords(state, results[0]) }].filter(({ words }) => words !== "");
}

/** All of it in one breath. */
export const inOne = (said: readonly Said[]): string =>
  said.map(({ label, words }) => (label === "" ? words : `${label} ${words}`)).join(" ");
