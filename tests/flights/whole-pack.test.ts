import { describe, expect, it } from "vitest";
import { flightOf } from "#flights/flight";
import { packMixes } from "#flights/scenarios";
import { packAxis, packOutcome, packRequest } from "#flights/whole-pack";
import { machineWith } from "../figures/machines.ts";

// A small pack, so that a flight to its end is short.
const machine = machineWith({ "pack.capacityMah": 600, "pack.cellResistanceMilliohm": 6 });
const fast = 2;
const flown = (mode: number, mix: (typeof packMixes)[number], of = machine) => flightOf(packRequest(of, mode, mix));
const outcome = (...of: Parameters<typeof flown>) => {
  const found = packOutcome(flown(...of));
  if (!found) throw new Error("not flown");
  return found;
};

describe("a whole pack", () => {
  it("has a fifth left when four fifths of its charge have flowed, and the timer rings no later", () => {
    const result = flown(fast, "mixed");
    const { reserve, timer } = outcome(fast, "mixed");
    if (!result.ok || reserve === null || timer === null) throw new Error("not flown");
    const { time, packCurrent } = result.trace;
    let charge = 0;
    for (let i = 1; i < time.length && time[i]! <= 60 * reserve; i++) {
      charge += (0.5 * (packCurrent[i]! + packCurrent[i - 1]!) * (time[i]! - time[i - 1]!)) / 3.6;
    }
    // Charge is current times time, by definition; a fifth stays: common practice, no source.
    expect(Math.abs(charge / 600 - 0.8)).toBeLessThan(0.01);
    expect(timer).toBeLessThanOrEqual(60 * reserve);
    expect(timer).toBeGreaterThan(60 * reserve - 10);
    expect(timer % 10).toBe(0);
  });

  it("loses a fast mode before its end, harder flown sooner, and a slow one never", () => {
    const mixed = outcome(fast, "mixed").lost;
    const hard = outcome(fast, "hard").lost;
    expect(mixed!.percent).toBeGreaterThan(5);
    expect(hard!.percent).toBeGreaterThan(mixed!.percent);
    expect(hard!.minutes).toBeLessThan(mixed!.minutes);
    expect(outcome(0, "mixed")).toMatchObject({ lost: null });
    expect(outcome(0, "mixed").endPercent).toBeLessThan(1);
  });

  it("is lost sooner when the cells are older", () => {
    const older = machineWith({ "pack.cellResistanceMilliohm": 9 }, machine);
    expect(outcome(fast, "mixed", older).lost!.percent).toBeGreaterThan(outcome(fast, "mixed").lost!.percent);
  });

  it("is flown full, whatever the pack on the bench holds", () => {
    const low = machineWith({ "pack.chargePercent": 40 }, machine);
    expect(outcome(fast, "hard", low)).toEqual(outcome(fast, "hard"));
  });

  it.each(packMixes)("fits on its time axis: %s", (mix) => {
    for (const mode of [0, fast]) {
      const axis = packAxis(machine, mode, mix);
      const { end } = outcome(mode, mix);
      expect(axis).toBeGreaterThanOrEqual(60 * end - 1e-6);
      expect(axis).toBeLessThan(Math.max(121, 1.6 * 60 * end + 60));
    }
  });

  it("has no outcome where there is no flight, or where it broke off", () => {
    const stiff = machineWith({ "motor.noLoadCurrentA": 20, "motor.resistanceMilliohm": 500 });
    expect(flown(0, "mixed", stiff)).toMatchObject({ ok: true });
    expect(packOutcome(flown(0, "mixed", stiff))).toBeNull();
    const idle = machineWith({ "controller.learned.motorRpm": 50 });
    expect(flown(0, "mixed", idle)).toMatchObject({ ok: false });
    expect(packOutcome(flown(0, "mixed", idle))).toBeNull();
    expect(packOutcome(null)).toBeNull();
  });
});
