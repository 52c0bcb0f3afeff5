import { describe, expect, it } from "vitest";
import type { Machine } from "#machine/machine";
import { chargePercentAt } from "#machine/voltage";
import { learnedAt, machineWith, number, standardPlace, tenToOne } from "./machines.ts";

/** The machine with its pack at a resting voltage. */
function atVolts(machine: Machine, volts: number): Machine {
  const charge = chargePercentAt(machine, volts);
  if (!charge.ok) throw new Error(charge.problem.words);
  return machineWith({ "pack.chargePercent": charge.percent }, machine);
}

describe("published rows come out of a whole machine", () => {
  const blades = machineWith({
    ...standardPlace,
    "mainRotor.diameterMm": 1600,
    "mainRotor.rootCutoutMm": 0,
    "mainRotor.bladeCentreMm": 400,
    "mainRotor.bladeMassG": 150,
    "modes.0.headRpm": 2000,
  });

  it.each([
    // V = omega R and M = V / a for R = 0.8 m, 2000 rpm, a = 340.294 m/s (closed form; a of ISO 2533:1975).
    ["tip-speed", 167.5516, 1e-4],
    ["tip-mach", 0.492373, 1e-6],
    // F = m r omega² for 0.15 kg at 0.40 m and 2000 rpm (OpenStax College Physics, section 6.3).
    ["blade-pull", 2631.89, 0.02],
    // KE = m R² omega² / 6 of a uniform blade, two of them (OpenStax College Physics, section 10.4).
    ["rotor-energy", 2 * 701.838535189, 1e-6],
    // ISO 2533:1975, tables 5 and 6: 1.225 kg/m3; CIPM-2007 takes real air, 0.06 % denser.
    ["air-density", 1.225, 0.001],
  ] as const)("%s", (name, wanted, within) => {
    expect(Math.abs(number(blades, name) - wanted)).toBeLessThanOrEqual(within);
  });

  it("no-load speed of a first-order motor: 24,387 rpm at 22.2 V, 0.020 ohm, 1.5 A, 1100 rpm/V", () => {
    // Closed form n0 = Kv (V - I0 R), M. Drela, First-Order DC Electric Motor Model, MIT (2007).
    const cold = machineWith({
      ...tenToOne,
      "motor.kvRpmPerVolt": 1100,
      "motor.resistanceMilliohm": 10,
      "motor.windingTemperatureC": 25,
      "motor.noLoadCurrentA": 1.5,
      "controller.resistanceMilliohm": 5,
      "pack.cellResistanceMilliohm": 0.5,
      "pack.leadResistanceMilliohm": 2,
    });
    const machine = atVolts(cold, 22.2);
    expect(number(machine, "pack-open-voltage")).toBeCloseTo(22.2, 9);
    expect(10 * number(machine, "no-load-head-speed")).toBeCloseTo(24387, 6);
  });

  it("electrical speed: 30,000 rpm with 10 magnets is 2500 Hz, with 14 magnets 3500 Hz", () => {
    // f = n p / 120: any text on synchronous machines; electrical rpm are 60 f.
    const base = { ...tenToOne, "modes.0.headRpm": 3000 };
    const hertz = (poles: number) => number(machineWith({ ...base, "motor.poles": poles }), "electrical-speed") / 60;
    expect(number(machineWith(base), "motor-speed")).toBeCloseTo(30_000, 9);
    expect([hertz(10), hertz(14)].map((f) => Math.round(f * 1e9) / 1e9)).toEqual([2500, 3500]);
  });

  it("electrical speeds agree with the synchronous speeds at 60 Hz", () => {
    // Synchronous speed table, induction motors: 3600, 1800, 1200, 900, 720, 600 rpm for 2 to 12 poles.
    for (const [poles, speed] of [
      [2, 3600],
      [4, 1800],
      [6, 1200],
      [8, 900],
      [10, 720],
      [12, 600],
    ] as const) {
      const machine = machineWith({ ...tenToOne, "motor.poles": poles, "modes.0.headRpm": speed / 10 });
      expect(number(machine, "electrical-speed")).toBeCloseTo(3600, 9);
    }
  });

  it("throttle and head speed of a reference of 30,000 rpm", () => {
    // By definition: 21,000 rpm learned at 70 %; over 10:1, 2130 rpm needs 71 %; 2155 rpm needs 71.83 %: 72 % and 2160 rpm.
    const base = machineWith({ ...tenToOne, "modes.0.headRpm": 2130, "modes.1.headRpm": 2155 });
    const machine = learnedAt(21_000, 70, base);
    expect(number(machine, "learned-motor-speed")).toBeCloseTo(30_000, 8);
    expect(number(machine, "learned-head-speed")).toBeCloseTo(3000, 9);
    expect(number(machine, "throttle", 0)).toBeCloseTo(71, 9);
    expect(number(machine, "throttle", 1)).toBeCloseTo(71.8333333, 6);
    expect(number(machine, "throttle-entered", 1)).toBe(72);
    expect(number(machine, "head-speed-entered", 1)).toBeCloseTo(2160, 9);
    expect(number(machine, "head-speed-entered", 0)).toBeCloseTo(2130, 9);
  });

  it("1,900 rpm at 66.7 % and 2,500 rpm at 87.8 % belong to one reference", () => {
    // Common practice, no source: the two throttle values are printed to a tenth of a per cent.
    const base = machineWith({ "modes.0.headRpm": 1900, "modes.1.headRpm": 2500 });
    const machine = learnedAt((1900 * 120) / 13, 66.7, base);
    expect(number(machine, "throttle", 0)).toBeCloseTo(66.7, 9);
    expect(Math.abs(number(machine, "throttle", 1) - 87.8)).toBeLessThan(0.05);
  });
});
