import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { createGovernor, ERROR, INTERVAL, OUTPUT } from "#model/flight/governor";
import {
  commutationPeriod,
  correctionsPerTurn,
  dutyStepSpeed,
  integralTime,
  proportionalDroop,
  readingStep,
} from "#model/loop";
import { electricalFrequency } from "#model/poles";

describe("times and steps of a governor's loop", () => {
  it("has one electrical turn in a period of the mains at synchronous speed", () => {
    // Synchronous speed table: 60 Hz with 4 poles is 1800 rpm, 50 Hz with 10 poles 600 rpm.
    expect(commutationPeriod({ motorSpeed: 1800 * rpm, poles: 4 })).toBeCloseTo(1 / 60, 12);
    expect(commutationPeriod({ motorSpeed: 600 * rpm, poles: 10 })).toBeCloseTo(1 / 50, 12);
    expect(commutationPeriod({ motorSpeed: 3000, poles: 14 }) * electricalFrequency(3000, 14)).toBeCloseTo(1, 12);
  });

  it("winds up as the sampled governor does", () => {
    const governor = createGovernor({
      proportionalGain: 0,
      integralGain: 4,
      antiWindup: "none",
      backGain: 0,
      lowest: 0,
      highest: 1,
      steps: 0,
    });
    governor.preset(0.7);
    governor.port[ERROR] = 0.05;
    governor.port[INTERVAL] = 1e-3;
    let time = 0;
    while (governor.port[OUTPUT]! < 1 - 1e-9) {
      governor.correct();
      time += 1e-3;
    }
    expect(Math.abs(integralTime({ dutyChange: 0.3, integralGain: 4, error: 0.05 }) - time)).toBeLessThan(3e-3);
  });

  it("corrects so many times in a turn", () => {
    // Definition: 2000 rpm are 33.3 turns in a second.
    expect(correctionsPerTurn({ loopRate: 500, headSpeed: 2000 * rpm })).toBeCloseTo(15, 9);
  });

  it("shares the speed out among the steps", () => {
    // Definition.
    expect(dutyStepSpeed({ fullSpeed: 2600, steps: 1000 })).toBeCloseTo(2.6, 12);
  });

  it("droops as the proportional governor does at rest", () => {
    // Steady-state error of proportional control on a static plant: a duty of 0.7 is held at no error, 0.85 is wanted.
    const governor = createGovernor({
      proportionalGain: 3,
      integralGain: 0,
      antiWindup: "none",
      backGain: 0,
      lowest: 0,
      highest: 1,
      steps: 0,
    });
    governor.preset(0.7);
    governor.port[ERROR] = proportionalDroop({ dutyChange: 0.15, proportionalGain: 3, reference: 2000 }) / 2000;
    governor.port[INTERVAL] = 1e-3;
    governor.correct();
    expect(governor.port[OUTPUT]).toBeCloseTo(0.85, 12);
  });

  it("reads in steps as coarse as its clock against one electrical turn", () => {
    // Definition of a period counter: a 50 Hz turn of 20 ms counted in steps of 1 ms is one in twenty.
    expect(
      readingStep({ clockStep: 1e-3, period: commutationPeriod({ motorSpeed: 600 * rpm, poles: 10 }) }),
    ).toBeCloseTo(0.05, 12);
  });
});
