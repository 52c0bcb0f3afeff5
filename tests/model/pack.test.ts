import { describe, expect, it } from "vitest";
import { fromCelsius } from "#model/constants";
import { openVoltage, packResistance, resistanceFactor, slowSag } from "#model/pack";

describe("pack resistance", () => {
  it("adds cells and leads", () => {
    const parts = { cells: 6, cellResistance: 0.003, temperatureFactor: 1, leadResistance: 0.002 };
    expect(packResistance(parts)).toBeCloseTo(0.02, 15);
    expect(packResistance({ ...parts, temperatureFactor: 2 })).toBeCloseTo(0.038, 15);
    expect(openVoltage({ cells: 6, cellVoltage: 3.7 })).toBeCloseTo(22.2, 12);
  });

  it("is that of the label at 25 degC, about twice it at freezing point, and falls all the way", () => {
    // From memory: an activation energy of 12 to 28 kJ/mol gives 1.6 to 2.8 at 0 degC.
    expect(resistanceFactor(fromCelsius(25))).toBe(1);
    expect(resistanceFactor(fromCelsius(0))).toBeGreaterThan(1.6);
    expect(resistanceFactor(fromCelsius(0))).toBeLessThan(2.8);
    for (let t = -10; t < 60; t++) {
      expect(resistanceFactor(fromCelsius(t + 1))).toBeLessThan(resistanceFactor(fromCelsius(t)));
    }
  });
});

describe("the slow part of the sag", () => {
  it("has the share and the time of a published polymer cell", () => {
    // Chen and Rincon-Mora (2006), eqs. (3)-(5) at 80 % charge.
    const s = 0.8;
    const series = 0.1562 * Math.exp(-24.37 * s) + 0.07446;
    const short = 0.3208 * Math.exp(-29.14 * s) + 0.04669;
    const capacitance = -752.9 * Math.exp(-13.51 * s) + 703.6;
    expect(slowSag.share).toBeCloseTo(short / series, 3);
    expect(slowSag.time / (short * capacitance)).toBeCloseTo(1, 3);
  });
});
