import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { biggerPinion, leastHold } from "#figures/help";
import { defaultMachine } from "#machine/machine";
import { anew, help, kept, none, said, seconds } from "./advice.ts";
import { machineWith } from "./machines.ts";

describe("a pack that is nearly empty", () => {
  it("is to be charged where a full one holds full pitch worth while", () => {
    const at = (chargePercent: number, headRpm = 2450) =>
      machineWith({
        "modes.0.headRpm": headRpm,
        "modes.0.collectiveMaxDeg": 11,
        "pack.chargePercent": chargePercent,
      });
    expect(help(at(2)).charge?.lasts).toBeCloseTo(seconds(at(100)), 1);
    // Just below its ceiling on a full pack it is held for a moment only.
    const ceiling = figuresOf(at(100)).number("ceiling-full-pitch", 0)!;
    const moment = at(60, Math.floor(ceiling) - 6);
    expect(seconds(at(100, Math.floor(ceiling) - 6))).toBeGreaterThan(0);
    expect(seconds(at(100, Math.floor(ceiling) - 6))).toBeLessThan(leastHold);
    expect(help(moment).charge).toBeNull();
  });

  it("is named as it is where a slower mode would do on what is left", () => {
    const empty = machineWith({ "modes.0.headRpm": 2450, "modes.0.collectiveMaxDeg": 11, "pack.chargePercent": 2 });
    const { slower } = help(empty);
    expect(slower?.lasts).toBe("on this charge");
    expect(said(machineWith({ "modes.0.headRpm": slower!.to }, empty))).toEqual([]);
  });

  it("isn't what is missing where the mode is held already", () => {
    expect(help(defaultMachine).charge).toBeNull();
  });

  it("isn't what is missing where a full one doesn't do", () => {
    expect(help(machineWith({ "modes.0.headRpm": 3050, "pack.chargePercent": 40 })).charge).toBeNull();
  });
});

describe("a mode that can't even hover", () => {
  it("is helped in hover and at full pitch at once", () => {
    const machine = machineWith({
      "modes.0.headRpm": 3050,
      "modes.0.collectiveMaxDeg": 11,
      "mainRotor.ratedRpm": null,
    });
    const { slower, cells } = help(machine);
    for (const after of [
      machineWith({ "modes.0.headRpm": slower!.to }, machine),
      anew(machine, { "pack.cells": cells }),
    ])
      expect(kept(after)).toBe(true);
  });

  it("has nothing to offer where the rotor stalls", () => {
    expect(help(machineWith({ "airframe.massG": 50_000 }))).toEqual(none);
  });
});

describe("a bigger pinion for the band alone", () => {
  it("is the smallest that brings a mode into it", () => {
    const machine = machineWith({ "modes.0.headRpm": 2750, "modes.0.collectiveMaxDeg": 4 });
    const teeth = biggerPinion(figuresOf(machine), 0, false)!;
    const inside = (count: number) =>
      !said(anew(machine, { "gears.pinionTeeth": count })).includes("above-usable-band");
    expect([inside(teeth - 1), inside(teeth)]).toEqual([false, true]);
  });

  it("is none where a bigger one makes the rotor slower", () => {
    // A weak motor past the pinion that makes it fastest: the mode is just held, and one tooth more would lose it.
    const over = (pinionTeeth: number) => {
      const gears = { "gears.pinionTeeth": pinionTeeth, "motor.resistanceMilliohm": 60, "mainRotor.ratedRpm": null };
      const weak = machineWith({ ...gears, "modes.0.collectiveMaxDeg": 11, "controller.usableLowPercent": 20 });
      const ceiling = figuresOf(weak).number("ceiling-full-pitch", 0)!;
      const set = machineWith({ "modes.0.headRpm": Math.floor(ceiling) - 1, "pack.capacityMah": 20_000 }, weak);
      const throttle = figuresOf(set).number("throttle", 0)!;
      return machineWith({ "controller.usableHighPercent": Math.floor(throttle) }, set);
    };
    for (const pinion of [18, 30]) expect(said(over(pinion))).toEqual(["above-usable-band"]);
    expect(biggerPinion(figuresOf(over(18)), 0, false)).toBe(19);
    expect(biggerPinion(figuresOf(over(30)), 0, false)).toBeNull();
  });
});
