/** Draws exercises: the numbers of a seed, looked over so that every slip can be told from the answer and the others. */
import type { Machine } from "#machine/machine";
import { amount, inWords } from "./amount.ts";
import type { Drawn, Exercise, Recipe } from "./exercise.ts";
import { handFor, rounded } from "./hand.ts";
import { type Slip, type Target, toldApart } from "./mark.ts";

/** How often numbers are drawn anew before a slip that can't be told apart is left out. */
const tries = 24;

/** The slips that can be told from the answer and from those before them. */
function apart({ answer, slips }: Drawn, tolerance: Pick<Target, "relative" | "absolute">): Slip[] {
  const kept: Slip[] = [];
  for (const slip of slips) {
    const others = [answer.value, ...kept.map(({ value }) => value)];
    if (Number.isFinite(slip.value) && others.every((other) => toldApart(slip.value, other, tolerance)))
      kept.push(slip);
  }
  return kept;
}

/** The answer with the figures that marking asks for, four at most: a reader who types it is right. */
function answerText({ answer }: Drawn): string {
  return inWords(amount(rounded(answer.value, 4), answer.unit));
}

/**
 * An exercise with the numbers of a seed, near those of a machine; null where this machine gives it none.
 * The same seed, machine and id give the same exercise. Units: its own. Source: the relations that it is worked out by.
 */
export function drawExercise(recipe: Recipe, machine: Machine, seed: number): Exercise | null {
  let best: { drawn: Drawn; slips: Slip[]; target: Target } | null = null;
  for (let again = 0; again < tries; again++) {
    const drawn = recipe.draw(handFor(`${recipe.id} ${seed} ${again}`), machine);
    if (drawn === null || !Number.isFinite(drawn.answer.value)) continue;
    const { relative = 0.01, absolute = 0 } = drawn;
    const slips = apart(drawn, { relative, absolute });
    const target: Target = { value: drawn.answer.value, unit: drawn.answer.unit, relative, absolute, slips };
    if (best === null || slips.length > best.slips.length) best = { drawn, slips, target };
    if (slips.length === drawn.slips.length) break;
  }
  if (best === null) return null;
  const { drawn, target } = best;
  const formulas = drawn.steps.map((step) => step.formula);
  const solution = { formulas, because: drawn.because };
  return { id: recipe.id, question: drawn.question, target, answer: answerText(drawn), solution };
}
