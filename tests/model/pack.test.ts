import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromCelsius } from "#model/constants";
import { dischargeEnergy, openVoltage, packResistance, resistanceFactor, slowSag, slowSagAfter } from "#model/pack";

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
  it("rises and relaxes by the closed form", () => {
    // Plett, Battery Management Systems vol. 1 (2015), section 2: 10 A, 0.010 ohm, 2000 F, 20 s on and 20 s off.
    const on = slowSagAfter(0, 10, 0.01, 20, 20);
    expect(on).toBeCloseTo(0.0632120558829, 12);
    expect(slowSagAfter(on, 0, 0.01, 20, 20)).toBeCloseTo(0.0232544157935, 12);
  });

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

describe("energy of a discharge", () => {
  // Chen and Rincon-Mora (2006), eq. (2).
  const cell = (s: number) => -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s * s + 0.3201 * s ** 3;

  it("is the closed form's", () => {
    // Six such cells, 5 Ah, 12 mohm each, 20 A from full to 20 %: integral in closed form.
    const { chemical, heat } = dischargeEnergy(18000, 20, 0.072, 1, 0.2, (s) => 6 * cell(s));
    expect(Math.abs(chemical / 333979.801045 - 1)).toBeLessThan(1e-9);
    expect(Math.abs(heat / 20736 - 1)).toBeLessThan(1e-12);
  });

  it("has the mean voltage of the closed form over a whole discharge", () => {
    const { chemical } = dischargeEnergy(1, 0, 0, 1, 0, cell);
    expect(chemical).toBeCloseTo(3.80410119048, 5);
  });

  it("balances", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0.3, 1), number(0, 0.3), number(1, 200), number(0, 0.1), (from, to, current, resistance) => {
        const e = dischargeEnergy(18000, current, resistance, from, to, (s) => 6 * cell(s));
        expect(e.delivered + e.heat).toBeCloseTo(e.chemical, 6);
        // Heat is I² R t, with t from the charge that went out.
        const time = (18000 * (from - to)) / current;
        expect(e.heat).toBeCloseTo(current * current * resistance * time, 6);
      }),
    );
  });
});
