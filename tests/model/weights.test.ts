import { describe, expect, it } from "vitest";
import { everydayWeights, massOfWeight, weightOfMass } from "#model/weights";

describe("weights", () => {
  // Standard weight of one kilogram: the kilogram-force of CGPM 1901, 9.80665 N.
  it("are masses times standard gravity", () => {
    expect(weightOfMass(1)).toBe(9.80665);
    expect(massOfWeight(9.80665)).toBe(1);
    expect(massOfWeight(weightOfMass(123.4))).toBeCloseTo(123.4, 12);
  });

  it("of everyday things rise from one to the next, far enough apart to tell", () => {
    for (const [i, { mass }] of everydayWeights.entries()) {
      expect(mass).toBeGreaterThan(2 * (everydayWeights[i - 1]?.mass ?? 0));
    }
  });
});
