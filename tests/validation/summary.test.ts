import { describe, expect, it } from "vitest";
import { expectedError } from "#model/rotor/doubt";
import { leastThrust } from "#validation/check";
import { everyRotor, overall, tipReynoldsOf } from "#validation/summary";

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
  it("is the root of the mean square of errors such as the published torques have: 4.3 % where it says 6 %", () => {
    const rows = everyRotor().flatMap(({ set, rows }) => rows.map((row) => ({ ...row, reynolds: tipReynoldsOf(set) })));
    const torques = rows.filter(({ judged, what }) => judged && what === "torque at the thrust");
    const parts = torques.map(({ error, reynolds }) => error / expectedError(reynolds));
    const root = Math.hypot(...parts) / Math.sqrt(parts.length);
    expect(0.06 * root).toBeCloseTo(0.043, 3);
    // Bands of two of them hold 19 in 20. Source: JCGM 100:2008 (GUM), 6.3.3.
    expect(parts.filter((part) => Math.abs(part) <= 2).length / parts.length).toBeGreaterThan(0.95);
  });
});
