import { describe, expect, it } from "vitest";
import { mode, modes, place } from "#machine/fields/flying";

describe("place and flight modes", () => {
  // ISO 2533 is used up to 5,000 m here.
  it("stay where the atmosphere's formula holds", () => {
    expect(place.entries.elevationM.max).toBe(5000);
    expect(place.entries.humidityPercent).toMatchObject({ min: 0, max: 100 });
  });

  it("are one to six, three at first, the slowest in front", () => {
    expect([modes.fewest, modes.most]).toEqual([1, 6]);
    const speeds = modes.default.map((each) => (each as { headRpm: number }).headRpm);
    expect(speeds).toEqual([1850, 2100, 2450]);
  });

  it("take negative and positive collective", () => {
    expect(mode.entries.collectiveMinDeg.default).toBeLessThan(0);
    expect(mode.entries.collectiveMaxDeg.default).toBeGreaterThan(0);
  });
});
