import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { speedAfterSurplus, spinGiven, spinTime } from "#model/spin";

describe("what a rotor pays from its spin", () => {
  // OpenStax College Physics, example 10.8 (from memory): a grindstone of 4.352 kg m² takes 64.0 J and turns at 5.42 rad/s.
  const inertia = 4.352;

  it("gives back all the work that a grindstone took, when it stops", () => {
    const stored = 0.5 * inertia * 5.42 ** 2;
    expect(Math.abs(spinGiven({ stored, from: 5.42, to: 0 }) - 64)).toBeLessThan(0.1);
    expect(spinGiven({ stored, from: 5.42, to: 5.42 })).toBe(0);
  });

  it("turns at the grindstone's speed after its work, whatever it had before", () => {
    const before = 0.1 * 5.42;
    const stored = 0.5 * inertia * before ** 2;
    const speed = speedAfterSurplus({ from: before, stored, power: (64 - stored) / 0.5, time: 0.5 });
    expect(Math.abs(speed - 5.42)).toBeLessThan(0.01);
  });

  it("pays for as long as a motor of known power takes to bring it up", () => {
    // OpenStax College Physics, example 10.9: 526 kJ in the blades of a rescue helicopter at 300 rpm (from memory); by the
    // definition of power a missing 100 kW slows it to half its energy in 2.63 s.
    const half = spinGiven({ stored: 526e3, from: 300 * rpm, to: (300 * rpm) / Math.SQRT2 });
    expect(spinTime({ energy: half, power: 100e3 })).toBeCloseTo(2.63, 6);
  });
});
