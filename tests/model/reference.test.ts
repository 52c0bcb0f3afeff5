import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bandPlace,
  differingParts,
  type FittedParts,
  learnedReference,
  learning,
  setSpeed,
  staleChange,
  throttleEntered,
  throttleForSpeed,
  usableBand,
} from "#model/reference";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a learned reference", () => {
  it("goes both ways", () => {
    // By definition: 21,000 rpm at 70 % is 30,000 rpm; 80 % over 10:1 asks for 2400 rpm; 2130 rpm needs 71 %.
    const reference = learnedReference({ motorSpeed: 21000, throttle: 0.7 });
    expect(reference).toBeCloseTo(30000, 9);
    expect(setSpeed({ throttle: 0.8, reference, gearRatio: 10 })).toBeCloseTo(2400, 9);
    expect(throttleForSpeed({ headSpeed: 2130, reference, gearRatio: 10 })).toBeCloseTo(0.71, 11);
  });

  it("gives head speeds in proportion to throttle", () => {
    // Common practice, no source: 1,900 rpm at 66.7 % and 2,500 rpm at 87.8 % belong to one reference.
    const gearRatio = 9.2;
    const reference = learnedReference({ motorSpeed: 1900 * gearRatio, throttle: 0.667 });
    expect(throttleForSpeed({ headSpeed: 2500, reference, gearRatio })).toBeCloseTo(0.878, 3);
    expect(reference / learnedReference({ motorSpeed: 2500 * gearRatio, throttle: 0.878 })).toBeCloseTo(1, 3);
  });

  it("throttle and speed undo each other", () => {
    fc.assert(
      fc.property(number(0, 1), number(5000, 60000), number(3, 20), (throttle, reference, gearRatio) => {
        const headSpeed = setSpeed({ throttle, reference, gearRatio });
        expect(throttleForSpeed({ headSpeed, reference, gearRatio })).toBeCloseTo(throttle, 12);
      }),
    );
  });

  it("is learned at half throttle in 15 to 20 s, and used from 60 to 90 % (common practice, no source)", () => {
    expect(learning).toEqual({ throttle: 0.5, secondsLow: 15, secondsHigh: 20 });
    expect(usableBand).toEqual({ low: 0.6, high: 0.9 });
  });
});

describe("a throttle that a transmitter takes", () => {
  it("is the nearest step, and gives another speed", () => {
    // Arithmetic: 2155 rpm of 30,000 over 10 is 71.83 %: 72 % in whole and in half per cent, 2160 rpm.
    const exact = throttleForSpeed({ headSpeed: 2155, reference: 30000, gearRatio: 10 });
    expect(throttleEntered(exact)).toBe(0.72);
    expect(throttleEntered(exact, 200)).toBe(0.72);
    expect(setSpeed({ throttle: 0.72, reference: 30000, gearRatio: 10 })).toBeCloseTo(2160, 9);
    expect(throttleEntered(0.7161, 200)).toBe(0.715);
  });

  it("is never more than half a step away", () => {
    fc.assert(
      fc.property(number(0, 1), fc.constantFrom(100, 200, 1000), (exact, steps) => {
        expect(Math.abs(throttleEntered(exact, steps)! - exact)).toBeLessThanOrEqual(0.5 / steps + 1e-12);
      }),
    );
  });

  it("doesn't exist beyond the stick", () => {
    expect([throttleEntered(1.02), throttleEntered(-0.02), throttleEntered(Number.NaN)]).toEqual([null, null, null]);
    expect(throttleEntered(1.004)).toBe(1);
  });
});

describe("the usable band", () => {
  it("has ends that belong to it", () => {
    expect([0.59, 0.6, 0.75, 0.9, 0.91].map((t) => bandPlace(t))).toEqual([
      "below",
      "inside",
      "inside",
      "inside",
      "above",
    ]);
    expect(bandPlace(0.55, 0.5, 0.8)).toBe("inside");
    expect(bandPlace(0.9 + 1e-13)).toBe("inside");
  });
});

describe("other parts than those learned with", () => {
  const then: FittedParts = {
    cells: 6,
    chemistry: "lipo",
    speedConstant: 1100,
    pinionTeeth: 12,
    mainTeeth: 120,
    bladeCount: 2,
    diameter: 1.4,
    chord: 0.06,
    secondStage: { driverTeeth: 20, drivenTeeth: 24 },
  };

  it("are named", () => {
    expect(differingParts(then, then)).toEqual([]);
    expect(differingParts({ ...then, diameter: 1.4 * (1 + 1e-12) }, then)).toEqual([]);
    for (const key of Object.keys(then) as (keyof FittedParts)[]) {
      const special = { chemistry: "lihv", secondStage: { driverTeeth: 20, drivenTeeth: 18 } } as const;
      const other = key === "chemistry" || key === "secondStage" ? special[key] : (then[key] as number) * 1.1;
      expect(differingParts({ ...then, [key]: other }, then)).toEqual([key]);
    }
  });

  it("are a second stage that came or went too, but none that nobody knows of", () => {
    const stage = (now: FittedParts["secondStage"], before: FittedParts["secondStage"]) =>
      differingParts({ ...then, secondStage: now }, { ...then, secondStage: before });
    const fitted = { driverTeeth: 20, drivenTeeth: 24 };
    expect([stage(null, fitted), stage(fitted, null)]).toEqual([["secondStage"], ["secondStage"]]);
    expect([stage(null, null), stage({ ...fitted }, fitted)]).toEqual([[], []]);
    expect(stage({ ...fitted, driverTeeth: 19 }, fitted)).toEqual(["secondStage"]);
    expect(stage({ ...fitted, drivenTeeth: 25 }, fitted)).toEqual(["secondStage"]);
    expect([stage(fitted, undefined), stage(null, undefined)]).toEqual([[], []]);
  });

  it("of the gears move every mode by the same share", () => {
    // By definition: with 13 teeth in place of 12, 2600 in place of 2400 rpm, 8.33333 % more.
    expect(Math.abs(100 * staleChange(120 / 12, 120 / 13) - 8.33333)).toBeLessThan(1e-5);
    fc.assert(
      fc.property(number(0.1, 1), number(3, 20), number(3, 20), (throttle, a, b) => {
        const speed = (gearRatio: number) => setSpeed({ throttle, reference: 30000, gearRatio });
        expect(speed(b) / speed(a) - 1).toBeCloseTo(staleChange(a, b), 10);
      }),
    );
  });
});
