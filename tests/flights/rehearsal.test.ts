import { describe, expect, it } from "vitest";
import { liftIn, modesWith, storedBy } from "#flights/rehearsal";
import { type LearningSetup, properLearning } from "#flights/scenarios";
import { demos } from "#machine/demos";
import { openCellVoltage } from "#model/ocv";
import { machineWith, number } from "../figures/machines.ts";

const machine = machineWith({});
const stored = (change: Partial<LearningSetup>, of = machine) => storedBy(of, { ...properLearning, ...change });
const offOf = (change: Partial<LearningSetup>, of = machine): number => {
  const found = stored(change, of);
  if (!("off" in found)) throw new Error(found.words);
  return found.off;
};

describe("what a rehearsed run stores", () => {
  it("is right when everything is as it should be, and near what the steady chain expects", () => {
    const right = stored({});
    expect(right).toMatchObject({ kind: "same", off: 0 });
    // Twice the expected head speed at half throttle, in motor turns; the run's own sag makes it a little less.
    const expected = number(machine, "learned-motor-speed");
    expect("storedRpm" in right && right.storedRpm / expected).toBeGreaterThan(0.99);
    expect("storedRpm" in right && right.storedRpm / expected).toBeLessThan(1);
    expect("motorRpm" in right && "storedRpm" in right && right.motorRpm / right.storedRpm).toBeCloseTo(0.5, 9);
  });

  it.each(demos.map((demo) => [demo.name, demo] as const))(
    "falls with the volts of a pack that is not full: %s",
    (_, demo) => {
      const volts = (charge: number) => openCellVoltage(demo.pack.chemistry, charge)!;
      // Nearly unloaded, a motor's speed is its voltage over a constant: textbook direct-current machine.
      expect(Math.abs(1 + offOf({ chargePercent: 50 }, demo) - volts(0.5) / volts(1))).toBeLessThan(0.01);
      expect(stored({ chargePercent: 50 }, demo).kind).toBe("low");
    },
  );

  it("falls a little with pitch, rises a little without blades, and less pack is worse", () => {
    expect(offOf({ pitchDeg: 5 })).toBeLessThan(-0.002);
    expect(offOf({ pitchDeg: 5 })).toBeGreaterThan(offOf({ chargePercent: 50 }));
    expect(offOf({ complete: false })).toBeGreaterThan(0.002);
    expect(offOf({ chargePercent: 30 })).toBeLessThan(offOf({ chargePercent: 60 }));
    expect(offOf({ swingDeg: 6 })).toBeLessThan(0);
  });

  it("is nothing when the throttle was held for less than 15 s", () => {
    // Common practice: 15 to 20 s.
    expect(stored({ seconds: 14 })).toMatchObject({ kind: "nothing" });
    expect(stored({ seconds: 15 }).kind).toBe("same");
  });

  it("can't be said where no run is possible, and says why", () => {
    const found = stored({}, machineWith({ "controller.learned.motorRpm": 50 }));
    expect(found).toMatchObject({ kind: "none" });
    expect("words" in found && found.words).toMatch(/gives no figure/);
  });
});

describe("the modes under it", () => {
  it("shift by one share, and lose their full pitch when they come to turn above its ceiling", () => {
    const [slow, , fast] = modesWith(machine, 0.2);
    expect(slow!.real / slow!.wanted).toBeCloseTo(1.2, 12);
    const ceiling = number(machine, "ceiling-full-pitch", 2);
    expect(fast!.room).toBeCloseTo(ceiling - 1.2 * fast!.wanted, 6);
    expect(fast!.room).toBeLessThan(0);
    expect(fast!.wantedRoom).toBeGreaterThan(0);
  });

  it("tell the blades' limit when they come to pass it, and not when they passed it before", () => {
    const limited = machineWith({ "mainRotor.ratedRpm": 2500 });
    expect(modesWith(limited, 0.05).map(({ bladeLimit }) => bladeLimit)).toEqual([null, null, 2500]);
    expect(modesWith(machineWith({ "mainRotor.ratedRpm": 2300 }), 0.05)[2]!.bladeLimit).toBeNull();
  });
});

describe("what the rotor lifts meanwhile", () => {
  it("is nothing with flat pitch or without blades, and grows with pitch", () => {
    expect(liftIn(machine, properLearning)).toBeLessThan(0.02);
    expect(liftIn(machine, { ...properLearning, pitchDeg: 5, complete: false })).toBe(0);
    const five = liftIn(machine, { ...properLearning, pitchDeg: 5 })!;
    expect(liftIn(machine, { ...properLearning, pitchDeg: 8 })).toBeGreaterThan(five);
    // Thrust in hover at a collective goes with the square of speed: T = C_T rho A (Omega R)^2.
    const hover = number(machine, "hover-collective", 0);
    const share = (number(machine, "learning-head-speed") / number(machine, "set-head-speed", 0)) ** 2;
    expect(liftIn(machine, { ...properLearning, pitchDeg: hover })! / share).toBeCloseTo(1, 1);
  });
});
