import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import type { LoadName } from "#figures/rig";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { machineWith, number } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

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
