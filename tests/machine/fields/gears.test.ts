import { describe, expect, it } from "vitest";
import { gears, mainTeeth, pinionTeeth } from "#machine/fields/gears";

describe("gears", () => {
  it("count teeth", () => {
    expect([pinionTeeth.kind, mainTeeth.kind]).toEqual(["integer", "integer"]);
    expect(gears.entries.secondStage.entries.driverTeeth.kind).toBe("integer");
  });

  // DIN 780 (below 1 mm) and ISO 54, first and second choice, from memory.
  it.each([0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.25, 1.5])("reach the module of %d mm by steps", (module) => {
    const { low, high, step } = gears.entries.moduleMm;
    expect(module).toBeGreaterThanOrEqual(low);
    expect(module).toBeLessThanOrEqual(high);
    const steps = (module - low) / step;
    expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
  });

  it("never give more than they get", () => {
    expect(gears.entries.meshEfficiency.max).toBe(1);
    expect(gears.entries.meshEfficiency.min).toBeGreaterThan(0);
  });
});
