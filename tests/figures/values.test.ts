import { describe, expect, it } from "vitest";
import { type Figures, figuresOf } from "#figures/figures";
import type { LoadName } from "#figures/rig";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { chargePercentAt } from "#machine/voltage";
import { learnedAt, machineWith, standardPlace, tenToOne } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

/** A figure that must be there. */
function number(machine: Machine, ...name: Parameters<Figures["number"]>): number {
  const value = figuresOf(machine).number(...name);
  if (value === null) throw new Error(`${name[0]} has no value`);
  return value;
}

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

describe("figures worked out by hand", () => {
  const club = demos[0]!;

  it.each([
    // 120 / 13 turns; the same through a second pair of 40 / 20.
    ["gear-ratio", {}, 120 / 13],
    ["gear-ratio", { "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }, 240 / 13],
    // Six cells of 4.20 V when full: common practice; 3.7925 V at half charge is the curve of a cobalt-oxide pouch cell
    // (Ai et al., J. Electrochem. Soc. 167 (2020) 013512).
    ["pack-open-voltage", {}, 25.2],
    ["pack-open-voltage", { "pack.chargePercent": 50 }, 6 * 3.7925],
    // 6 x 3 mΩ + 2.5 mΩ.
    ["pack-resistance", {}, 0.0205],
    ["set-head-speed", {}, 1850],
    ["motor-speed", {}, (1850 * 120) / 13],
    ["electrical-speed", {}, (5 * 1850 * 120) / 13],
    ["tail-rotor-speed", {}, 1850 * 4.6],
  ] as const)("%s with %o", (name, changes, wanted) => {
    expect(number(machineWith(changes), name) / wanted).toBeCloseTo(1, 12);
  });

  it("a warm pack has less resistance: exp(E/R (1/T - 1/T25)) of the cells, none of the leads", () => {
    const at = (temperature: number) => number(machineWith({ "pack.temperatureC": temperature }), "pack-resistance");
    // Arrhenius form with 20 kJ/mol (from memory).
    const factor = Math.exp((20_000 / 8.314472) * (1 / 273.15 - 1 / 298.15));
    expect(at(0)).toBeCloseTo(0.018 * factor + 0.0025, 12);
    expect(at(60)).toBeLessThan(at(25));
  });

  it("the usable band is its shares of the learned head speed", () => {
    const machine = machineWith({ "controller.usableLowPercent": 55, "controller.usableHighPercent": 85 });
    const full = number(machine, "learned-head-speed");
    expect(number(machine, "usable-low-head-speed") / full).toBeCloseTo(0.55, 12);
    expect(number(machine, "usable-high-head-speed") / full).toBeCloseTo(0.85, 12);
  });

  it("hover takes a multiple of the momentum theory's least power that published rotors take", () => {
    for (const machine of demos) {
      const weight = (machine.airframe.massG / 1000) * 9.80665;
      const area = Math.PI * (machine.mainRotor.diameterMm / 2000) ** 2;
      for (const mode of machine.modes.keys()) {
        // P = T sqrt(T / (2 rho A)) (J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2). NACA TN 626 (1937) has
        // a figure of merit of 0.1 to 0.57 for a lightly to a heavily loaded rotor of this size with two blades.
        const least = weight * Math.sqrt(weight / (2 * number(machine, "air-density") * area));
        const merit = least / number(machine, "hover-power", mode);
        expect(merit).toBeGreaterThan(0.1);
        expect(merit).toBeLessThan(0.65);
      }
    }
  });

  it("full pitch draws far more than hover, from the shaft and from the pack", () => {
    const more = number(club, "full-pitch-power", 1) / number(club, "hover-power", 1);
    expect(more).toBeGreaterThan(2);
    expect(number(club, "full-pitch-pack-current", 1)).toBeGreaterThan(2 * number(club, "hover-pack-current", 1));
  });

  it("the energy of a hover balances: pack power = shaft power + heat of every part", () => {
    const { train, tail } = figuresOf(club).rig;
    const [shaft, motor, pack] = (["hover-power", "hover-motor-current", "hover-pack-current"] as const).map((name) =>
      number(club, name, 1),
    ) as [number, number, number];
    const turning = 2100 * rpm;
    const tailTorque = tail.rotor.torqueForThrust({ speed: turning * 4.6, thrust: shaft / turning / 0.59 }) ?? 0;
    const rotors = shaft + tailTorque * 4.6 * turning;
    const emf = (2100 * 120) / 13 / 1120;
    const heat =
      pack ** 2 * train.packResistance +
      motor ** 2 * (train.motorResistance + train.controllerResistance) +
      2.4 * emf +
      rotors * (1 / 0.965 - 1);
    // The torque at the set speed lies on a curve between solved points: 5e-5.
    expect((25.2 * pack) / (rotors + heat)).toBeCloseTo(1, 4);
  });

  it("copper of 60 °C has 1 + 0.00393 K⁻¹ x (T - 20 °C) of its resistance at 20 °C", () => {
    // IEC 60028 (from memory); 16 mΩ are measured at 25 °C.
    expect(figuresOf(club).rig.train.motorResistance).toBeCloseTo((0.016 * (1 + 0.00393 * 40)) / (1 + 0.00393 * 5), 12);
  });
});

describe("where chain and load balance", () => {
  const loads = [
    ["hover", "ceiling-hover", "duty-hover", "speed-headroom-hover"],
    ["full-pitch", "ceiling-full-pitch", "duty-full-pitch", "speed-headroom-full-pitch"],
  ] as const satisfies readonly (readonly [LoadName, ...string[]])[];
  const machines = demos.flatMap((machine) => machine.modes.map((_, mode) => [machine, mode] as const));

  /** Motor current, A, that the load asks for at a head speed: I = Q / (k G eta) + I0 with k = 60 / (2 pi Kv). */
  function current(machine: Machine, load: LoadName, mode: number, headRpm: number): number {
    const torque = figuresOf(machine).rig.load(load, mode)(headRpm * rpm) ?? Number.NaN;
    const k = 60 / (2 * Math.PI * machine.motor.kvRpmPerVolt);
    const ratio = machine.gears.mainTeeth / machine.gears.pinionTeeth;
    return torque / (k * ratio * machine.gears.meshEfficiency) + machine.motor.noLoadCurrentA;
  }

  it.each(loads)("in %s", (load, ceilingName, dutyName, roomName) => {
    for (const [machine, mode] of machines) {
      const { train } = figuresOf(machine).rig;
      const ratio = machine.gears.mainTeeth / machine.gears.pinionTeeth;
      const volts = number(machine, "pack-open-voltage");
      const winding = train.motorResistance + machine.controller.resistanceMilliohm / 1000;
      const pack = number(machine, "pack-resistance");
      // Full duty: V = n G / Kv + I (Rm + Rc + Rp).
      const ceiling = number(machine, ceilingName, mode);
      const least = current(machine, load, mode, ceiling);
      expect((ceiling * ratio) / machine.motor.kvRpmPerVolt + least * (winding + pack)).toBeCloseTo(volts, 8);
      const set = machine.modes[mode]!.headRpm;
      expect(number(machine, roomName, mode)).toBeCloseTo(ceiling - set, 9);
      const duty = figuresOf(machine).number(dutyName, mode);
      expect(duty === null).toBe(ceiling < set);
      if (duty === null) continue;
      // Averaged ideal step-down chopper (Mohan, Undeland, Robbins, Power Electronics, ch. 7):
      // D² Rp I - D V + n G / Kv + I (Rm + Rc) = 0.
      const d = duty / 100;
      const held = current(machine, load, mode, set);
      const rest = d * d * pack * held - d * volts + (set * ratio) / machine.motor.kvRpmPerVolt + held * winding;
      expect(rest).toBeCloseTo(0, 9);
      const name = load === "hover" ? "hover-pack-current" : "full-pitch-pack-current";
      expect(number(machine, name, mode)).toBeCloseTo(d * held, 9);
    }
  });

  it("is above the set speed down to the lowest charge, and no further", () => {
    for (const [machine, mode] of machines) {
      const lowest = figuresOf(machine).number("lowest-charge", mode);
      const room = (charge: number) =>
        figuresOf(machineWith({ "pack.chargePercent": charge }, machine)).number("speed-headroom-full-pitch", mode);
      if (lowest === null) expect(room(100)).toBeLessThan(0);
      else if (lowest > 0) {
        expect(room(lowest)).toBeCloseTo(0, 4);
        expect(room(lowest + 0.1)).toBeGreaterThan(0);
        expect(room(lowest - 0.1)).toBeLessThan(0);
      } else expect(room(0)).toBeGreaterThanOrEqual(0);
    }
  });
});

describe("hover duration", () => {
  it("counts the charge: summed in thin slices with the current at each", () => {
    for (const machine of demos) {
      const slices = 400;
      let minutes = 0;
      for (let i = 0; i < slices; i++) {
        const charge = 20 + (80 * (i + 0.5)) / slices;
        const drawn = number(machineWith({ "pack.chargePercent": charge }, machine), "hover-pack-current", 0);
        // t = Q used / I, as 10.4: 5000 mAh, 80 % used at 40 A last 360 s (charge count, by definition).
        minutes += ((machine.pack.capacityMah / 1000) * 60 * (0.8 / slices)) / drawn;
      }
      expect(number(machine, "hover-duration", 0) / minutes).toBeCloseTo(1, 4);
    }
  });

  it("is nothing below the reserve, and ends early where the speed is lost", () => {
    expect(number(machineWith({ "pack.chargePercent": 20 }), "hover-duration")).toBe(0);
    // 2700 rpm are lost at 37 % or so: at the end of the flight the ceiling has come down to them.
    const fast = (charge: number) => machineWith({ "modes.0.headRpm": 2700, "pack.chargePercent": charge });
    const whole = number(fast(100), "hover-duration");
    const rest = number(fast(60), "hover-duration");
    const drawn = (charge: number) => number(fast(charge), "hover-pack-current");
    const used = ((whole - rest) * (drawn(100) + drawn(60))) / 2;
    // 40 % of 3300 mAh in ampere minutes; the mean of the two currents is good to a per cent or so.
    expect(Math.abs(used / (0.4 * 3.3 * 60) - 1)).toBeLessThan(0.02);
    expect(rest).toBeGreaterThan(0);
    expect(rest * drawn(60)).toBeLessThan(0.4 * 3.3 * 60);
    expect(figuresOf(fast(20)).number("hover-duration")).toBeNull();
  });
});

describe("a figure without a value", () => {
  it("is null where the pack can't turn the motor", () => {
    const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    for (const name of [
      "no-load-head-speed",
      "learning-head-speed",
      "learned-motor-speed",
      "learned-head-speed",
      "usable-low-head-speed",
      "throttle",
      "throttle-entered",
      "head-speed-entered",
      "stale-head-speed",
      "ceiling-hover",
      "speed-headroom-full-pitch",
      "duty-hover",
      "hover-pack-current",
      "hover-duration",
      "lowest-charge",
    ] as const) {
      expect([name, figuresOf(dead).value(name)]).toEqual([name, null]);
    }
    expect(number(dead, "tip-speed")).toBeGreaterThan(0);
  });

  it("is null where the blades can't carry the machine", () => {
    const heavy = machineWith({ "airframe.massG": 20_000, "modes.0.headRpm": 900 });
    expect(figuresOf(heavy).value("hover-collective")).toBeNull();
    expect(figuresOf(heavy).value("hover-power")).toBeNull();
  });

  it("is null for a mode that the machine doesn't have", () => {
    expect(figuresOf(demos[0]!).value("set-head-speed", 5)).toBeNull();
  });
});

describe("figures of a machine", () => {
  it("are made once for a record", () => {
    const machine = machineWith({});
    expect(figuresOf(machine)).toBe(figuresOf(machine));
    expect(figuresOf({ ...machine })).not.toBe(figuresOf(machine));
  });

  it("are asked for by number or by value", () => {
    const figures = figuresOf(demos[0]!);
    expect(figures.value("reference-state")).toBe("expected");
    expect(figures.number("reference-state")).toBeNull();
  });
});
