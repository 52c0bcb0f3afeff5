import { describe, expect, it } from "vitest";
import { bufferCurrent, chargeUsed, currentForPower, loadedVoltage, resistiveHeat } from "#model/currents";
import { flightTime } from "#model/endurance";

describe("what a current does on its way", () => {
  it("costs voltage", () => {
    // OpenStax College Physics, ch. 23, problems on back emf: 120 V, 7.00 A, 0.720 ohm leave 115 V.
    expect(Math.abs(loadedVoltage({ openVoltage: 120, current: 7, resistance: 0.72 }) - 115)).toBeLessThan(0.5);
  });

  it("leaves heat", () => {
    // Modelica Standard Library, DC_PermanentMagnet: 100 A in 0.05 ohm are 500 W.
    expect(resistiveHeat({ current: 100, resistance: 0.05 })).toBeCloseTo(500, 9);
  });

  it("carries power", () => {
    // The same machine takes 10,000 W (9500 W shaft, 500 W copper) at 100 V: 100 A.
    expect(currentForPower({ power: 10_000, voltage: 100 })).toBeCloseTo(100, 9);
  });

  it("takes charge, as the flight time counts it", () => {
    // Charge count, by definition: 40 A for 360 s take 80 % of 5000 mAh.
    expect(chargeUsed({ current: 40, time: 360, capacity: 18_000 })).toBeCloseTo(0.8, 12);
    expect(flightTime({ capacity: 18_000, used: 0.8, current: 40 })).toBeCloseTo(360, 9);
  });

  it("is chopped, and the capacitor carries what the pack doesn't", () => {
    // By definition of the root mean square: a train of pulses of 20 A, 3/10 of the time, less its mean, summed by hand.
    const pulses = Array.from({ length: 1000 }, (_, i) => (i % 10 < 3 ? 20 : 0) - 6);
    const rms = Math.sqrt(pulses.reduce((sum, each) => sum + each * each, 0) / pulses.length);
    expect(bufferCurrent({ current: 20, duty: 0.3 })).toBeCloseTo(rms, 9);
    // Data sheets of step-down converters: at most half the load's current, at a duty of 50 % ("worst case").
    expect(bufferCurrent({ current: 20, duty: 0.5 })).toBeCloseTo(10, 12);
    expect(bufferCurrent({ current: 20, duty: 0.45 })).toBeLessThan(10);
    expect(bufferCurrent({ current: 20, duty: 1 })).toBe(0);
  });
});
