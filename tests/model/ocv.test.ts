import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Chemistry, cellCurves, chargeAtCellVoltage, fullCellVoltage, openCellVoltage } from "#model/ocv";

const charge = fc.double({ min: 0, max: 1, noNaN: true });
const chemistries = Object.keys(cellCurves) as Chemistry[];
const kind = fc.constantFrom(...chemistries);

describe("open-circuit voltage", () => {
  // Ai et al., J. Electrochem. Soc. 167 (2020) 013512 and Rieger et al., JES 163 (2016) A1566: derived from electrodes.
  it.each([
    ["lipo", 0.2, 3.6953],
    ["lipo", 0.5, 3.7925],
    ["lipo", 0.8, 3.9944],
    ["lipo", 1, 4.2],
    ["lihv", 0.2, 3.7046],
    ["lihv", 0.5, 3.8102],
    ["lihv", 0.8, 4.0618],
    ["lihv", 1, 4.35],
    // Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. 2025: measured at C/32.
    ["life", 0.0885, 3.1942],
    ["life", 0.2972, 3.2772],
    ["life", 0.9833, 3.3511],
    ["life", 1, 3.5981],
  ] as const)("of %s at %f", (chemistry, c, volts) => {
    expect(openCellVoltage(chemistry, c)).toBeCloseTo(volts, 4);
  });

  it("of a polymer cell lies near another published one", () => {
    // Chen and Rincon-Mora, IEEE Trans. Energy Conversion 21 (2006) 504, eq. (2): a polymer cell, low by 0.1 V when full.
    const other = (s: number) => -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s * s + 0.3201 * s ** 3;
    for (let s = 0.05; s <= 1; s += 0.05) expect(Math.abs(openCellVoltage("lipo", s)! - other(s))).toBeLessThan(0.12);
  });

  it("between the points of the iron-phosphate table stays near the straight lines of its authors", () => {
    const { xs, ys } = cellCurves.life.curve;
    for (let i = 2; i < xs.length; i++) {
      const middle = openCellVoltage("life", (xs[i]! + xs[i - 1]!) / 2)!;
      // Between cells of this kind 30 mV from 10 to 95 %; the steep ends bend more than that.
      const within = xs[i - 1]! > 0.08 && xs[i]! < 0.99 ? 0.03 : 0.06;
      expect(Math.abs(middle - (ys[i]! + ys[i - 1]!) / 2)).toBeLessThan(within);
    }
  });

  it("rises with charge and comes back from the voltage", () => {
    fc.assert(
      fc.property(kind, charge, charge, (chemistry, a, b) => {
        const volts = openCellVoltage(chemistry, a)!;
        if (b > a + 1e-6) expect(openCellVoltage(chemistry, b)!).toBeGreaterThan(volts);
        const back = chargeAtCellVoltage(chemistry, volts);
        expect(back.ok).toBe(true);
        if (back.ok) expect(openCellVoltage(chemistry, back.charge)).toBeCloseTo(volts, 12);
      }),
    );
  });

  it("has an answer a last digit away from the ends", () => {
    for (const chemistry of chemistries) {
      for (const c of [1.8318679906315085e-19, 1e-17, 1 - 1.2e-16, 1 - 3e-16]) {
        expect(chargeAtCellVoltage(chemistry, openCellVoltage(chemistry, c)!).ok).toBe(true);
      }
    }
  });

  it("says which end a voltage passed", () => {
    expect(chargeAtCellVoltage("lipo", 4.3)).toEqual({ ok: false, why: "above full", limit: 4.2 });
    expect(chargeAtCellVoltage("lipo", 2.9)).toEqual({ ok: false, why: "below empty", limit: 3 });
    expect(chargeAtCellVoltage("lihv", 4.3)).toMatchObject({ ok: true });
    expect(openCellVoltage("lipo", 1.01)).toBeNull();
    expect(openCellVoltage("lipo", -0.01)).toBeNull();
  });

  it("of a full cell is its charger's end voltage", () => {
    expect(chemistries.map(fullCellVoltage)).toEqual([4.2, 4.35, 3.5981]);
  });

  it("owns up to how sure each table is", () => {
    expect(chemistries.map((c) => cellCurves[c].confidence)).toEqual(["derived", "low", "measured"]);
    // Two measured layered-oxide curves differ by 12 mV; published iron-phosphate cells by 30 mV (Sunil et al. 2025).
    expect(chemistries.map((c) => cellCurves[c].spread)).toEqual([0.012, 0.05, 0.03]);
  });
});
