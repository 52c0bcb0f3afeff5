import { describe, expect, it } from "vitest";
import { bladeCurves, headSpeedForTip, tipSpeedAtLimit } from "#figures/curves-blades";
import { figuresOf } from "#figures/figures";
import { machineWith } from "./machines.ts";

const figures = figuresOf(machineWith({ "modes.0.headRpm": 1680 }));

describe("energy and pull over head speed", () => {
  const { speeds, energies, pulls, limit } = bladeCurves(figures, 0);

  it("pass through the machine's own figures", () => {
    // 2800 rpm is the limit and 36 steps go to 1.2 times that: 1680 rpm is the eighteenth.
    expect(limit).toBe(2800);
    expect(speeds[18]).toBeCloseTo(1680, 9);
    expect(energies[18]).toBeCloseTo(figures.number("rotor-energy", 0)!, 9);
    expect(pulls[18]).toBeCloseTo(figures.number("blade-pull", 0)!, 9);
  });

  it("go with the square of the speed", () => {
    // E = J w²/2 and F = m r w²: OpenStax College Physics, sections 10.4 and 6.3.
    expect(energies[36]! / energies[18]!).toBeCloseTo(4, 9);
    expect(pulls[36]! / pulls[18]!).toBeCloseTo(4, 9);
    expect([energies[0], pulls[0]]).toEqual([0, 0]);
  });

  it("have no energy where the blade can't be, and no limit where none is printed", () => {
    const odd = figuresOf(
      machineWith({ "mainRotor.bladeCentreMm": 480, "mainRotor.rootCutoutMm": 10, "mainRotor.ratedRpm": null }),
    );
    expect(bladeCurves(odd, 0).limit).toBeNull();
    expect(tipSpeedAtLimit(odd)).toBeNull();
    expect(bladeCurves(odd, 0).speeds.at(-1)).toBeCloseTo(1.2 * 1850, 9);
  });
});

describe("head speed for a tip speed", () => {
  it("is the limit again on the same rotor, and twice that on half the diameter", () => {
    const tip = tipSpeedAtLimit(figures)!;
    expect(tip).toBeCloseTo((2800 * 2 * Math.PI * 0.485) / 60, 9);
    expect(headSpeedForTip(tip, 0.97)).toBeCloseTo(2800, 9);
    expect(headSpeedForTip(tip, 0.485)).toBeCloseTo(5600, 9);
  });
});
