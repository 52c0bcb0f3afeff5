/** What every notebook gets from outside, by name. */
import type { Figures } from "#figures/figures";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";

export interface Given {
  /** The machine on the bench. */
  readonly machine: Machine;
  /** The second machine on the bench, if there is one. */
  readonly whatIf: Machine | null;
  /** What the model computes for `machine`. */
  readonly figures: Figures;
  /** The same for `whatIf`. */
  readonly whatIfFigures: Figures | null;
  /** What the reader has answered. */
  readonly answers: Answers;
}

const names: Record<keyof Given, true> = {
  machine: true,
  whatIf: true,
  figures: true,
  whatIfFigures: true,
  answers: true,
};

export const givenNames: readonly string[] = Object.keys(names);
