/** What the bench gives to every notebook. Figures are computed once for each machine, however often they are asked for. */
import { type Figures, figuresOf } from "#figures/figures";
import type { BenchState } from "#machine/bench";
import type { Machine } from "#machine/machine";
import type { Given } from "#notebook/given";
import { answersNow } from "#view/answers";

/** Remembers the figures of the last machine that it was asked for. */
function lastFigures(): (machine: Machine) => Figures {
  let last: { machine: Machine; figures: Figures } | null = null;
  return (machine) => {
    if (last?.machine !== machine) last = { machine, figures: figuresOf(machine) };
    return last.figures;
  };
}

/** Makes the given of one page from the bench, again and again. */
export function giver(): (bench: BenchState) => Given {
  const figuresNow = lastFigures();
  const figuresThen = lastFigures();
  return ({ now, whatIf }) => ({
    machine: now,
    whatIf,
    figures: figuresNow(now),
    whatIfFigures: whatIf && figuresThen(whatIf),
    answers: answersNow(),
  });
}
