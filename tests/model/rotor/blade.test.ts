import { describe, expect, it } from "vitest";
import { cutBlade, gaussNodes } from "#model/rotor/blade";
import { linearSection } from "../oracle/ideal.ts";

const section = linearSection(5.73, 0.01);
const plain = { blades: 2, radius: 0.762, rootCutout: 0.127, chordRoot: 0.0508, chordTip: 0.0508, section };

describe("a blade cut into annuli", () => {
  it("uses Gauss's nodes and weights (Abramowitz and Stegun, table 25.4, n = 5)", () => {
    const { nodes, weights } = gaussNodes(5);
    expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
    expect(nodes[2]).toBeCloseTo(0, 14);
    expect(weights[4]).toBeCloseTo(0.236926885056189, 14);
    expect(weights.reduce((a, b) => a + b)).toBeCloseTo(2, 13);
  });

  it("spans the lifting part of the blade and no more", () => {
    const blade = cutBlade(plain);
    expect(blade.width.reduce((a, b) => a + b)).toBeCloseTo(0.762 - 0.127, 12);
    expect(blade.radius[0]!).toBeGreaterThan(0.127);
    expect(blade.radius[blade.count - 1]!).toBeLessThan(0.762);
  });

  it("has the solidity that NACA TN 626 prints, 0.0424, but for the cut-out's cube", () => {
    expect(cutBlade(plain).solidity / (1 - (1 / 6) ** 3)).toBeCloseTo(0.0424, 4);
  });

  it("tapers and twists in a straight line, pitch measured at three quarters of the radius", () => {
    const blade = cutBlade({ ...plain, rootCutout: 0, chordRoot: 0.08, chordTip: 0.04, twist: -0.2 });
    for (let i = 0; i < blade.count; i++) {
      const x = blade.radius[i]! / 0.762;
      expect(blade.chord[i]!).toBeCloseTo(0.08 - 0.04 * x, 12);
      expect(blade.twist[i]!).toBeCloseTo(-0.2 * (x - 0.75), 12);
    }
  });

  it("takes any planform and twist by function", () => {
    const blade = cutBlade({ ...plain, chordAt: (x) => 0.05 / x, twistAt: (x) => 0.1 / x });
    expect(blade.chord[3]! * blade.radius[3]!).toBeCloseTo(0.05 * 0.762, 12);
    expect(blade.twist[3]! * blade.radius[3]!).toBeCloseTo(0.1 * 0.762, 12);
  });
});
