/** What the bench gives to every notebook. Figures are computed once for each machine, however often they are asked for. */
import { type Figures, figuresOf } from "#figures/figures";
import type { BenchState } from "#machine/bench";
import type { Machine } from "#machine/machine";
import type { Given } from "#notebook/given";
import { type Answers, answersNow } from "#view/answers";
import { unitsNow } from "#view/units";

/** Remembers the figures of the last machine that it was asked for. */
function lastFigures(): (machine: Machine) => Figures {
  let last: { machine: Machine; figures: Figures } | null = null;
  return (machine) => {
    if (last?.machine !== machine) last = { machine, figures: figuresOf(machine) };
    return last.figures;
  };
}

/**
 * A thing under another identity while it is shown in other units, and the same one each time: cells run again for what
 * they haven't seen, and so say everything anew when the units change.
 */
function seenIn<T extends object>(): (given: T) => T {
  const others = new WeakMap<T, T>();
  return (given) => {
    if (unitsNow() === "metric") return given;
    const other = others.get(given) ?? { ...given };
    others.set(given, other);
    return other;
  };
}

/** Makes the given of one page from the bench, again and again. */
export function giver(): (bench: BenchState) => Given {
  const figuresNow = lastFigures();
  const figuresThen = lastFigures();
  const [machineIn, answersIn] = [seenIn<Machine>(), seenIn<Answers>()];
  return (bench) => {
    const machine = machineIn(bench.now);
    const whatIf = bench.whatIf && machineIn(bench.whatIf);
    return {
      machine,
      whatIf,
      figures: figuresNow(machine),
      whatIfFigures: whatIf && figuresThen(whatIf),
      answers: answersIn(answersNow()),
    };
  };
}
