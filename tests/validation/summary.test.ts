import { describe, expect, it } from "vitest";
import { leastThrust } from "#validation/check";
import { everyRotor, expectedError, overall, tipReynoldsOf } from "#validation/summary";

describe("all published rotors together", () => {
  it("are worked out once, and every judged figure counts once", () => {
    expect(everyRotor()).toBe(everyRotor());
    const judged = everyRotor().flatMap(({ rows }) => rows.filter((row) => row.thrustCoefficient > leastThrust));
    const all = overall(everyRotor());
    expect(all.count).toBe(judged.length);
    expect(all.worst).toBe(Math.max(...judged.map((row) => Math.abs(row.error))));
    const within = (bound: number) => judged.filter((row) => Math.abs(row.error) <= bound + 1e-12).length / all.count;
    expect(within(all.median)).toBeCloseTo(0.5, 1);
    expect(within(all.ninetieth)).toBeCloseTo(0.9, 1);
  });

  it("have the Reynolds numbers that their reports name", () => {
    const at = (name: string) => tipReynoldsOf(everyRotor().find(({ set }) => set.name === name)!.set);
    // NACA TN 626: 242,000 in the air of the test; standard air is a tenth denser.
    expect(at("TN 626, 2 blades") / 242_000).toBeCloseTo(1.1, 1);
    // Caradonna and Tung, NASA TM-81232: 1.92 to 3.93 million.
    expect(at("TM-81232")).toBeGreaterThan(1.92e6);
    expect(at("TM-81232")).toBeLessThan(3.93e6);
  });
});

describe("the error to expect", () => {
  it("is what was written down before any test: 6 % from 1e5 up, 15 % at 3e4, 30 % at 1e4", () => {
    expect([1e4, 3e4, 1e5, 2e6].map(expectedError)).toEqual([0.3, expect.closeTo(0.15, 12), 0.06, 0.06]);
  });

  it("falls all the way, without a jump", () => {
    let before = expectedError(1e3);
    for (let reynolds = 1e3; reynolds < 2e5; reynolds *= 1.01) {
      const now = expectedError(reynolds);
      expect(now).toBeLessThanOrEqual(before);
      expect(now / before).toBeGreaterThan(0.98);
      before = now;
    }
  });
});
