import { describe, expect, it } from "vitest";
import { startDuty, startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { sample, withParts } from "./sample.ts";

const start = { speed: 220, collective: 0.09, height: 12, climb: 2 };

describe("start of a flight", () => {
  it("has motor and rotor together, the pack as it is, and no energy spent", () => {
    const y = startState(sample, start);
    expect(y[at.MOTOR]).toBe(220 * sample.gearRatio);
    expect([y[at.HEIGHT], y[at.CLIMB], y[at.CHARGE]]).toEqual([12, 2, 1]);
    expect(y.slice(at.ANGLE).every((value) => value === 0)).toBe(true);
  });

  // Momentum theory in a climb: T = 2 rho A v (V + v).
  it("has an inflow that fits the thrust", () => {
    const v = startState(sample, start)[at.INFLOW]!;
    const thrust = 2 * sample.airDensity * Math.PI * 0.25 * v * (v + 2);
    expect(thrust / sample.rotor.map.thrust(220, 0.09, 2)).toBeCloseTo(1, 9);
  });

  it("has the highest duty where no duty holds the speed", () => {
    expect(startDuty(sample, start)).toBeGreaterThan(0.5);
    expect(startDuty(sample, start)).toBeLessThan(1);
    expect(startDuty(sample, { ...start, speed: 400 })).toBe(1);
    expect(startDuty(withParts({ pack: { resistance: 5 } }), { ...start, collective: 0.2 })).toBe(1);
    expect(startDuty(sample, { ...start, speed: 0 })).toBe(0);
  });
});
