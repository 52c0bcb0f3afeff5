import { describe, expect, it } from "vitest";
import { cells, chemistry, motor, pack } from "#machine/fields/electric";

describe("pack and motor", () => {
  // Common practice, no source: full cells of the three chemistries, as they are charged.
  it("offer the three chemistries, with the voltage that tells them apart", () => {
    expect(chemistry.choices.map((choice) => choice.value)).toEqual(["lipo", "lihv", "life"]);
    for (const volts of ["4.2 V", "4.35 V", "3.6 V"]) expect(chemistry.read).toContain(volts);
  });

  it("count cells and magnets, magnets in pairs", () => {
    expect(cells).toMatchObject({ kind: "integer", min: 1 });
    expect(motor.entries.poles).toMatchObject({ kind: "integer", wholeEven: true, min: 2 });
  });

  // No resistance of zero: a current is a voltage divided by the sum of the resistances.
  it("leave no way for all resistance to vanish", () => {
    expect(motor.entries.resistanceMilliohm.min).toBeGreaterThan(0);
    expect(pack.entries.cellResistanceMilliohm.min).toBeGreaterThan(0);
    expect(motor.entries.rotorInertiaGcm2.min).toBeGreaterThan(0);
  });
});
