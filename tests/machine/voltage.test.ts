import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultMachine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { chargePercentAt, fieldFor, inputValue, packVoltage, voltageLimits } from "#machine/voltage";
import { anyMachine } from "./arbitrary.ts";

const packOf = (cells: number, chemistry: string, chargePercent = 100) =>
  withValue(
    withValue(withValue(defaultMachine, "pack.cells", cells), "pack.chemistry", chemistry),
    "pack.chargePercent",
    chargePercent,
  );

describe("the pack's resting voltage", () => {
  // Common practice, no source: full cells of lithium polymer at 4.20 V, high-voltage ones at 4.35 V.
  it.each([
    [6, "lipo", 25.2],
    [3, "lipo", 12.6],
    [6, "lihv", 26.1],
  ])("of %d full cells of %s is %d V, and that voltage means full", (cells, chemistry, volts) => {
    const machine = packOf(cells, chemistry);
    expect(packVoltage(machine)).toBeCloseTo(volts, 6);
    expect(chargePercentAt(machine, volts)).toEqual({ ok: true, percent: 100 });
  });

  it("follows the charge and sets it, everywhere between empty and full", () => {
    fc.assert(
      fc.property(anyMachine, (machine) => {
        const answer = chargePercentAt(machine, packVoltage(machine));
        const error = answer.ok ? Math.abs(answer.percent - machine.pack.chargePercent) : Number.POSITIVE_INFINITY;
        // A voltage within 5 mV of an end is taken for the end.
        expect(error).toBeLessThan(1);
      }),
    );
    const answer = chargePercentAt(packOf(6, "lipo"), packVoltage(packOf(6, "lipo", 55)));
    expect(answer.ok && answer.percent).toBeCloseTo(55, 6);
  });

  it("is refused in words outside what the cells can have", () => {
    for (const volts of [25.3, 0, -1, Number.NaN, "23 V", null, Number.POSITIVE_INFINITY]) {
      const answer = chargePercentAt(defaultMachine, volts);
      expect(answer.ok, String(volts)).toBe(false);
      expect(!answer.ok && answer.problem).toMatchObject({ path: "pack.voltage", value: volts });
      expect(!answer.ok && answer.problem.words).toMatch(
        /Allowed for these cells: a number from \d+(\.\d+)? to 25\.2 V\.$/,
      );
    }
  });

  it("is an input whose ends follow the cells", () => {
    const field = fieldFor(packOf(3, "lipo"), "pack.voltage");
    expect(field).toMatchObject({ path: "pack.voltage", unit: "V" });
    expect([field.low, field.high]).toEqual([...voltageLimits(packOf(3, "lipo"))]);
    expect(field.high).toBeCloseTo(12.6, 6);
    expect(inputValue(defaultMachine, "pack.voltage")).toBeCloseTo(25.2, 6);
    expect(inputValue(defaultMachine, "gears.pinionTeeth")).toBe(13);
    expect(fieldFor(defaultMachine, "modes.0.headRpm").unit).toBe("rpm");
  });
});
