import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { electricalFrequency, electricalSpeed, motorSpeedLimit, shownSpeed } from "#model/poles";

describe("synchronous speeds", () => {
  // Synchronous speed table of induction motors, rpm at 2, 4, ... 20 poles (rounded there to whole rpm).
  it.each([
    [60, [3600, 1800, 1200, 900, 720, 600, 515, 450, 400, 360]],
    [50, [3000, 1500, 1000, 750, 600, 500, 429, 375, 333, 300]],
  ])("at %i Hz", (hertz, speeds) => {
    speeds.forEach((speed, i) => {
      expect(Math.abs(electricalFrequency(speed * rpm, 2 * (i + 1)) / hertz - 1)).toBeLessThan(1 / speed);
    });
  });
});

describe("electrical speed", () => {
  it("is n p / 120 in hertz", () => {
    // f = n p / 120: 30,000 rpm.
    expect(electricalFrequency(30000 * rpm, 10)).toBeCloseTo(2500, 9);
    expect(electricalFrequency(30000 * rpm, 14)).toBeCloseTo(3500, 9);
    expect(electricalSpeed({ motorSpeed: 30000, poles: 10 })).toBe(150000);
  });

  it("bounds the motor's by the controller's limit", () => {
    expect(motorSpeedLimit({ electricalLimit: 150000, poles: 10 })).toBe(30000);
    const even = fc.integer({ min: 1, max: 20 }).map((pairs) => 2 * pairs);
    fc.assert(
      fc.property(even, fc.double({ min: 1, max: 5000, noNaN: true }), (poles, speed) => {
        expect(motorSpeedLimit({ electricalLimit: electricalSpeed({ motorSpeed: speed, poles }), poles })).toBeCloseTo(
          speed,
          8,
        );
      }),
    );
  });
});

describe("a display told another number of poles", () => {
  // f = n p / 120, and the display's n = 120 f / its own p.
  it.each([
    [10, 14, 30000, 21428.571],
    [10, 8, 2000, 2500],
    [8, 10, 2000, 1600],
    [10, 10, 2000, 2000],
  ])("of %i, told %i", (poles, polesSet, speed, shown) => {
    expect(shownSpeed({ speed, poles, polesSet })).toBeCloseTo(shown, 3);
  });
});
