import { afterEach, describe, expect, it } from "vitest";
import { createBench } from "#machine/bench";
import { giver } from "#shell/given";
import { chooseUnits } from "#view/units";

afterEach(() => chooseUnits("metric"));

describe("what the bench gives to a notebook", () => {
  it("is the bench's own machine, and figures that are computed once for it", () => {
    const bench = createBench();
    const give = giver();
    const first = give(bench);
    expect(first.machine).toBe(bench.now);
    expect(give(bench).figures).toBe(first.figures);
    expect(first).toMatchObject({ whatIf: null, whatIfFigures: null });
    bench.set("gears.pinionTeeth", 14);
    expect(give(bench).figures).not.toBe(first.figures);
  });

  it("is new to every cell when the units change, and the same again when they change back", () => {
    const bench = createBench();
    const give = giver();
    const metric = give(bench);
    chooseUnits("imperial");
    const imperial = give(bench);
    for (const name of ["machine", "figures", "answers"] as const) {
      expect(imperial[name]).not.toBe(metric[name]);
      expect(give(bench)[name]).toBe(imperial[name]);
    }
    expect(imperial.machine).toEqual(metric.machine);
    chooseUnits("metric");
    expect(give(bench).machine).toBe(metric.machine);
  });
});
