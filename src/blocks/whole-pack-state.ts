/** A whole pack in every mode: what is flown, and what it says. Plain data and words. */
import { modeName } from "#figures/mode-name";
import { type FlightRequest, type FlightResult, knownFlight } from "#flights/flight";
import type { PackMix } from "#flights/scenarios";
import { type PackOutcome, packOutcome, packRequest, reservePercent } from "#flights/whole-pack";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { formatValue } from "#view/format";
import { enWholePack } from "#view/words/en-whole-pack";
import type { FactsState } from "./facts-table.ts";

const en = enWholePack.modes;

export interface PackRow {
  readonly name: string;
  readonly mode: number;
  readonly which: "now" | "what-if" | "pinned";
  readonly request: FlightRequest;
}

export interface WholePackState {
  readonly rows: readonly PackRow[];
  /** The mode that the reader has guessed, and the charge at which it is lost, %; 0: held to the end; null: no guess. */
  readonly asked: number;
  readonly guess: number | null;
  /** The reader has guessed, or wants to be shown. */
  readonly go: boolean;
}

/** Guesses within so many per cent of charge count as right. */
const NEAR = 6;

/** A pack with no more than this left, %, was flown to its end; the longest flights are broken off before. */
const EMPTY = 1;

/** The answer that keeps the guess for a mix and a mode. */
export const guessId = (mix: PackMix, mode: number): string => `whole-pack-${mix}-${mode}`;

/** Whether the packs of a mix may be shown: one mode has been guessed, or 'show me' was pressed. */
export const guessed = (mix: PackMix, answers: Answers): boolean =>
  Object.keys(answers).some((id) => id.startsWith(`whole-pack-${mix}-`));

/** Every mode of the machine, and of the what-if, flown from full to empty. */
export function wholePackState(
  machine: Machine,
  whatIf: Machine | null,
  answers: Answers,
  mode: number,
  mix: PackMix,
): WholePackState {
  const rowsOf = (of: Machine, which: PackRow["which"]): PackRow[] =>
    of.modes.map((_, i) => ({ name: modeName(of, i), mode: i, which, request: packRequest(of, i, mix) }));
  const guess = answers[guessId(mix, mode)];
  return {
    // A mode and its what-if one below the other.
    rows: [...rowsOf(machine, "now"), ...(whatIf ? rowsOf(whatIf, "what-if") : [])].sort((a, b) => a.mode - b.mode),
    asked: mode,
    guess: typeof guess === "number" ? guess : null,
    go: guessed(mix, answers),
  };
}

/** A state with a result for each of its rows. */
interface KnownPacks {
  readonly state: WholePackState;
  readonly results: readonly FlightResult[];
}

/** What is known already; null while a flight is missing. Those of the pinned machine come along once all of them are there. */
export function knownPacks(state: WholePackState): KnownPacks | null {
  const all = state.rows.map((row) => ({ row, result: knownFlight(row.request) }));
  const own = all.filter(({ row }) => row.which !== "pinned");
  const found = all.every(({ result }) => result) ? all : own;
  const results = found.flatMap(({ result }) => result ?? []);
  if (results.length < found.length) return null;
  return { state: { ...state, rows: found.map(({ row }) => row) }, results };
}

/** The rows that come first, or those of the pinned machine, in the order to be flown: the mode that is looked at last, since another figure may be flying it. */
export const toFly = ({ rows, asked }: WholePackState, pinned: boolean): FlightRequest[] =>
  rows
    .filter(({ which, request }) => (which === "pinned") === pinned && !knownFlight(request))
    .sort((a, b) => Number(a.mode === asked) - Number(b.mode === asked))
    .map(({ request }) => request);

const charge = (percent: number): string => formatValue(percent, "percent", { decimals: 0 });
const minutes = (value: number): string => formatValue(value, "min", { decimals: 1 });

/** A time as a timer shows it: minutes and seconds. */
const timerText = (seconds: number): string => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;

/** What stands beside a mode's bar. */
export function rowText(outcome: PackOutcome | null): string {
  if (!outcome) return en.none;
  if (!outcome.lost) return outcome.endPercent > EMPTY ? en.heldFor(minutes(outcome.end)) : en.held;
  return outcome.lost.minutes < 0.05
    ? en.lostAtOnce
    : en.lost(charge(outcome.lost.percent), minutes(outcome.lost.minutes));
}

/** A mode's name, and which machine's it is. */
export const fullName = ({ name, which }: PackRow): string =>
  which === "now" ? name : `${name} (${which === "pinned" ? en.pinned : en.whatIf})`;

/** How far the guess was off. */
function gapWords({ rows, asked, guess }: WholePackState, outcomes: readonly (PackOutcome | null)[]): string {
  const outcome = outcomes[rows.findIndex(({ mode, which }) => which === "now" && mode === asked)];
  if (guess === null || !outcome) return "";
  const lost = outcome.lost?.percent ?? 0;
  if (Math.abs(guess - lost) <= NEAR && (guess === 0) === (outcome.lost === null)) return en.gapNear;
  if (!outcome.lost) return guess <= NEAR ? en.gapNear : en.gapHeld(charge(guess));
  if (guess === 0) return en.gapLost;
  return en.gap(charge(guess), charge(Math.abs(guess - lost)), guess > lost ? en.early : en.late);
}

/** All of it in sentences, the mode that was asked about first. */
export function packWords(state: WholePackState, results: readonly FlightResult[]): string {
  const outcomes = results.map(packOutcome);
  const order = [...state.rows.keys()].sort((a, b) => {
    const rank = (i: number) => (state.rows[i]!.mode === state.asked ? 0 : 1);
    return rank(a) - rank(b) || a - b;
  });
  const lost = order.flatMap((i) => {
    const at = outcomes[i]?.lost;
    return at ? [en.sayLost(fullName(state.rows[i]!), charge(at.percent), minutes(at.minutes))] : [];
  });
  const named = (which: (outcome: PackOutcome | null) => boolean) =>
    order.flatMap((i) => (which(outcomes[i] ?? null) ? [fullName(state.rows[i]!)] : [])).join(", ");
  const held = named((outcome) => outcome !== null && outcome.lost === null);
  const none = named((outcome) => outcome === null);
  const asked = outcomes[order[0] ?? 0]?.lost;
  const parts = [held === "" ? "" : en.sayHeld(held), ...lost];
  // The mode that was asked about leads.
  return [
    ...(asked ? parts.slice(1).concat(parts[0] ?? "") : parts),
    none === "" ? "" : en.sayNone(none),
    gapWords(state, outcomes),
  ]
    .filter(Boolean)
    .join(" ");
}

/** The table for the transmitter. */
export function packTable({ rows }: WholePackState, results: readonly FlightResult[] | null): FactsState {
  const { caption, columns, held, none, words, early } = enWholePack.table;
  const outcomes = results?.map(packOutcome) ?? [];
  const soon = rows.flatMap((row, i) => {
    const lost = outcomes[i]?.lost;
    return lost && lost.percent > reservePercent ? [fullName(row)] : [];
  });
  return {
    name: "whole-pack",
    caption,
    columns,
    rows: rows.map((row, i) => {
      const outcome = outcomes[i];
      const cells = outcome
        ? [
            outcome.lost ? charge(outcome.lost.percent) : held,
            outcome.lost ? minutes(outcome.lost.minutes) : none,
            outcome.reserve === null ? none : timerText(Math.floor(60 * outcome.reserve)),
            outcome.timer === null ? none : timerText(outcome.timer),
          ]
        : [none, none, none, none];
      return {
        title: fullName(row),
        cells,
        marked: row.which !== "pinned" && (outcome?.lost?.percent ?? 0) > reservePercent,
      };
    }),
    words: soon.length > 0 ? `${words} ${early(soon.join(", "))}` : words,
  };
}
