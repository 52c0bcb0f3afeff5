/** The exercises of a page as a reader gets them, and the key to them. */
import type { Machine } from "#machine/machine";
import { drawExercise } from "./draw.ts";
import type { Exercise } from "./exercise.ts";
import { type ExercisePage, recipes } from "./pages.ts";

/**
 * The exercises of a page, all with the numbers of one seed. `seedOf` may give an exercise another one.
 * One that this machine gives no numbers to is left out.
 */
export function exercisesOn(
  page: ExercisePage,
  machine: Machine,
  seed: number,
  seedOf: (id: string) => number = () => seed,
): Exercise[] {
  return recipes[page].flatMap((recipe) => drawExercise(recipe, machine, seedOf(recipe.id)) ?? []);
}

/** One line of the key: the question, the answer in words, and the way there. */
export interface KeyLine {
  readonly question: string;
  readonly answer: string;
  readonly solution: Exercise["solution"];
}

/** The key to a page's exercises, for whoever teaches from it. Same machine and seed, same numbers as the page's. */
export const answerSheet = (page: ExercisePage, machine: Machine, seed: number): KeyLine[] =>
  exercisesOn(page, machine, seed).map(({ question, answer, solution }) => ({ question, answer, solution }));
