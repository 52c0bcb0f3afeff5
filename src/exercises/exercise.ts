/** What an exercise is: a recipe that draws numbers, and the question, answer and solution that come of it. */
import type { Machine } from "#machine/machine";
import type { Amount, Formula, Worked } from "./amount.ts";
import type { Hand } from "./hand.ts";
import type { Slip, Target } from "./mark.ts";

/** One drawing of an exercise, before it is looked over. */
export interface Drawn {
  readonly question: string;
  /** What the model's relations say. */
  readonly answer: Amount;
  /** The way there, formula by formula. */
  readonly steps: readonly Worked[];
  /** One sentence that says it without a formula. */
  readonly because: string;
  readonly slips: readonly Slip[];
  /** Share of the answer that still counts as right; 1 % where nothing is said. */
  readonly relative?: number;
  /** The same as a gap, in the answer's unit: for counts and for answers near zero. */
  readonly absolute?: number;
}

export interface Recipe {
  /** Stable: with the seed it makes the numbers. */
  readonly id: string;
  /** Null where these numbers make no question. */
  readonly draw: (hand: Hand, machine: Machine) => Drawn | null;
}

/** An exercise as it stands on a page: plain data. */
export interface Exercise {
  readonly id: string;
  readonly question: string;
  readonly target: Target;
  /** The true answer in words, rounded to what the marking asks for. */
  readonly answer: string;
  readonly solution: { readonly formulas: readonly Formula[]; readonly because: string };
}

/** A wrong way that people really take. */
export const slip = (name: string, value: number, hint: string): Slip => ({ name, value, hint });
