import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { gearRatio, meetingTurns, pitchLineSpeed, ratioOf, tailSpeed, toothMeeting, twoStageRatio } from "#model/gears";

describe("gear ratio", () => {
  it("is main over pinion, times the second pair", () => {
    expect(gearRatio({ pinionTeeth: 12, mainTeeth: 120 })).toBe(10);
    // Definition: 13/120 gives 9.230769.
    expect(ratioOf({ pinionTeeth: 13, mainTeeth: 120, secondStage: null })).toBeCloseTo(9.230769, 6);
    const second = { driverTeeth: 20, drivenTeeth: 50 };
    expect(ratioOf({ pinionTeeth: 12, mainTeeth: 48, secondStage: second })).toBe(10);
    expect(twoStageRatio({ pinionTeeth: 12, mainTeeth: 48, ...second })).toBe(10);
  });

  it("drives the tail", () => {
    expect(tailSpeed({ headSpeed: 2000, tailRatio: 4.5 })).toBe(9000);
  });
});

describe("pitch-line speed", () => {
  it("is pi d n", () => {
    // Any gear handbook, v = pi d n / 60: module 0.7 mm, 13 teeth, 30,000 rpm.
    const v = pitchLineSpeed({ module: 0.7e-3, pinionTeeth: 13, motorSpeed: 30000 * rpm });
    expect(Math.abs(v - 14.294)).toBeLessThan(1e-3);
  });
});

describe("which teeth meet", () => {
  // Foiles, Gear frequencies using the Euclidean algorithm, The Vibration Institute.
  it.each([
    [12, 120, { common: 12, pinionTurns: 10, gearTurns: 1 }],
    [13, 121, { common: 1, pinionTurns: 121, gearTurns: 13 }],
    [12, 121, { common: 1, pinionTurns: 121, gearTurns: 12 }],
  ])("%i on %i", (pinion, main, meeting) => {
    expect(toothMeeting(pinion, main)).toEqual(meeting);
  });

  it("agrees with counting tooth by tooth", () => {
    const teeth = fc.integer({ min: 5, max: 60 });
    fc.assert(
      fc.property(teeth, teeth, (z1, z2) => {
        let n = 1;
        while (n % z1 !== 0 || n % z2 !== 0) n++;
        expect(toothMeeting(z1, z2)).toMatchObject({ pinionTurns: n / z1, gearTurns: n / z2 });
      }),
    );
  });

  it("counts the main gear's turns from what divides both", () => {
    // Foiles: after lcm(z1, z2) teeth the same two meet again; 12 and 118: 708 teeth, 6 turns of the larger gear.
    expect(meetingTurns({ pinionTeeth: 12, common: 2 })).toBe(6);
    expect(meetingTurns({ pinionTeeth: 12, common: toothMeeting(12, 118)!.common })).toBe(
      toothMeeting(12, 118)!.gearTurns,
    );
  });

  it("has no answer for half a tooth or none", () => {
    expect([toothMeeting(12.5, 120), toothMeeting(0, 120), toothMeeting(12, -3)]).toEqual([null, null, null]);
  });
});
