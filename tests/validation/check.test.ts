import { describe, expect, it } from "vitest";
import { bounds, checkSet, leastThrust } from "#validation/check";
import { testSets } from "#validation/published";

describe("the model on published rotors", () => {
  const checked = testSets.map(checkSet);

  it("covers NACA TN 626 (2 to 5 blades), NASA TM-81232 and NACA TN 2318 (two rotors), every row", () => {
    expect(testSets.map((set) => [set.rows.length, set.geometry.blades])).toEqual([
      [8, 2],
      [7, 3],
      [13, 4],
      [7, 5],
      [13, 2],
      [20, 2],
      [14, 2],
    ]);
    expect(testSets.every((set) => set.source.length > 10)).toBe(true);
  });

  it("has the solidities that the reports print", () => {
    const solidity = (i: number) => {
      const { blades, chordTip, radius } = testSets[i]!.geometry;
      return (blades * chordTip) / (Math.PI * radius);
    };
    expect([0, 1, 2, 3].map((i) => Number(solidity(i).toFixed(4)))).toEqual([0.0424, 0.0637, 0.0849, 0.1061]);
    expect(solidity(6)).toBeCloseTo(0.076, 3);
  });

  it.each(checked.filter(({ set }) => set.name !== "TM-81232").map((c) => [c.set.name, c] as const))(
    "%s: median within 6 %, nine tenths within 12 %",
    (_, { spreads }) => {
      expect(spreads.length).toBeGreaterThan(0);
      for (const spread of spreads) {
        expect(spread.count).toBeGreaterThanOrEqual(5);
        expect(spread.median).toBeLessThanOrEqual(bounds.median);
        expect(spread.ninetieth).toBeLessThanOrEqual(bounds.ninetieth);
        expect(spread.within).toBe(true);
      }
    },
  );

  it("TM-81232, with a chord of a sixth of the radius, gets a fifth to a third too much thrust: beyond the bound, and said so", () => {
    const { spreads } = checked.find(({ set }) => set.name === "TM-81232")!;
    expect(spreads[0]!.within).toBe(false);
    expect(spreads[0]!.bias).toBeGreaterThan(0.15);
    expect(spreads[0]!.median).toBeLessThan(0.3);
  });

  it("judges no row whose thrust is almost nothing", () => {
    const rows = checked.flatMap((c) => c.rows);
    expect(rows.some((row) => !row.judged)).toBe(true);
    for (const row of rows) expect(row.judged).toBe(row.thrustCoefficient > leastThrust);
    for (const row of rows) expect(row.error).toBeCloseTo(row.model / row.measured - 1, 12);
  });
});
