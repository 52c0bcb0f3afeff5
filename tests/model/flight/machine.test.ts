import { describe, expect, it } from "vitest";
import { impossible } from "#model/flight/machine";
import { sample, withParts } from "./sample.ts";

describe("a machine that can't be flown", () => {
  it("is not the sample", () => {
    expect(impossible(sample)).toBeNull();
  });

  it.each([
    ["motor's inertia", withParts({ motor: { inertia: 0 } })],
    ["rotor's inertia", withParts({ rotor: { inertia: -1 } })],
    ["governor's loop rate", withParts({ controller: { loopRate: Number.POSITIVE_INFINITY } })],
    ["machine's mass", withParts({ mass: 0 })],
    ["gear ratio", withParts({ gearRatio: Number.NaN })],
    ["integral gain", withParts({ controller: { integralGain: Number.NaN } })],
    ["room below full charge", withParts({ pack: { charge: 1.2 } })],
    ["room below full mesh efficiency", withParts({ meshEfficiency: 1.1 })],
    ["resistance of motor and controller", withParts({ motor: { resistance: 0 }, controller: { resistance: 0 } })],
    ["open voltage of the pack", withParts({ pack: { openVoltage: () => 0 } })],
    ["range of duty", withParts({ controller: { lowestDuty: 0.5, highestDuty: 0.5 } })],
  ])("is named by its %s", (what, machine) => {
    expect(impossible(machine)?.what).toBe(what);
  });
});
