import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert, fromSi, shownUnit, shownValue, toSi, typedValue, type UnitName } from "#machine/units";

describe("units", () => {
  // NIST SP 811 (2008), appendix B.8: exact factors in full, others to the seven digits printed there. From memory.
  it.each<[UnitName, number, number]>([
    ["in", 0.0254, 0],
    ["ft", 0.3048, 0],
    ["ft²", 0.09290304, 0],
    ["oz", 0.02834952, 5e-9],
    ["lb", 0.4535924, 5e-8],
    ["lb/ft³", 16.01846, 5e-6],
    ["mph", 0.44704, 0],
    ["lbf", 4.448222, 5e-7],
    ["ft lbf", 1.355818, 5e-7],
    ["rpm", 0.1047198, 5e-8],
    ["km/h", 0.2777778, 5e-8],
    ["°", 0.01745329, 5e-9],
    ["lbf ft", 1.355818, 5e-7],
    ["lb ft²", 0.04214011, 5e-9],
  ])("take one %s as %d in SI", (unit, factor, error) => {
    expect(Math.abs(toSi(1, unit) - factor)).toBeLessThanOrEqual(error + 1e-15);
  });

  // Fixed points: ice, steam (by the old definition), and where the two scales meet.
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
  ])("take %d °F as %d °C", (fahrenheit, celsius) => {
    expect(convert(fahrenheit, "°F", "°C")).toBeCloseTo(celsius, 10);
  });

  it("take the trade's units as they are defined", () => {
    expect(toSi(1120, "rpm/V")).toBeCloseTo(117.286, 3);
    expect(toSi(1000, "mAh")).toBe(3600);
    expect(toSi(1, "g cm²")).toBe(1e-7);
    expect(toSi(25, "°C")).toBe(298.15);
  });

  it("do not turn one quantity into another", () => {
    expect(convert(1, "mm", "g")).toBeNull();
    expect(convert(25.4, "mm", "in")).toBeCloseTo(1, 12);
  });

  it("show and take back every unit in either system", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("mm", "m", "g", "kg", "°C", "m/s", "N", "J", "m²", "kg/m³", "rpm", "V", "%", "teeth", ""),
        fc.constantFrom("metric" as const, "imperial" as const),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (unit, system, value) => {
          const back = typedValue(shownValue(value, unit, system), unit, system);
          expect(Math.abs(back - value)).toBeLessThan(1e-9 * (Math.abs(value) + 1000));
        },
      ),
    );
    expect(fromSi(toSi(12, "mm"), "mm")).toBeCloseTo(12, 12);
  });

  it("have another unit in the imperial system where people use one", () => {
    expect([shownUnit("mm", "imperial"), shownUnit("mm", "metric"), shownUnit("rpm", "imperial")]).toEqual([
      "in",
      "mm",
      "rpm",
    ]);
    expect(shownUnit("constructor", "imperial")).toBe("constructor");
    expect(shownValue(970, "mm", "imperial")).toBeCloseTo(38.19, 2);
    expect(shownValue(20, "°C", "imperial")).toBeCloseTo(68, 10);
  });
});
