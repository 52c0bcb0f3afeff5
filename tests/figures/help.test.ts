import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { leastHold } from "#figures/help";
import { currentRateLimit } from "#figures/limits";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { anew, type Changes, drawn, help, kept, lowest, reserve, said, seconds } from "./advice.ts";
import { machineWith } from "./machines.ts";

/** Modes that are too fast for their machine, by a little and by much, warm and cold, on a full pack and on an emptier one. */
const short: readonly (readonly [string, Machine])[] = demos.flatMap((demo) => {
  const ceiling = figuresOf(demo).number("ceiling-full-pitch", 2) ?? Number.NaN;
  return [0.97, 1.01, 1.05, 1.12, 1.2].flatMap((share) =>
    [
      [25, 100, demo.mainRotor.ratedRpm],
      [-5, 60, demo.mainRotor.ratedRpm],
      [25, 70, null],
    ].map(([temperature, charge, ratedRpm]) => {
      const changes = {
        "modes.0.headRpm": Math.round(ceiling * share),
        "modes.0.collectiveMaxDeg": demo.modes[2]!.collectiveMaxDeg,
        "pack.temperatureC": temperature,
        "pack.chargePercent": charge,
        "mainRotor.ratedRpm": ratedRpm,
      };
      const name = `${demo.name}, ${share} of its ceiling, ${temperature} °C, ${charge} %, blades to ${ratedRpm}`;
      return [name, machineWith(changes, demo)] as const;
    }),
  );
});

describe("what would help a mode that is too fast", () => {
  it.each(short)("really helps, and keeps a reserve: %s", (_, machine) => {
    const { charge, slower, pinion, cells } = help(machine);
    if (slower !== null) {
      const after = machineWith({ "modes.0.headRpm": slower.to }, machine);
      expect(said(after)).toEqual([]);
      if (typeof slower.lasts === "number") {
        expect(seconds(after)).toBeCloseTo(slower.lasts, 1);
        expect(slower.lasts).toBeGreaterThanOrEqual(leastHold);
      } else expect([slower.lasts, lowest(after) <= reserve]).toEqual(["to the reserve", true]);
    }
    if (charge !== null) {
      const full = machineWith({ "pack.chargePercent": 100 }, machine);
      expect(seconds(full)).toBeCloseTo(charge.lasts as number, 1);
      expect(charge.to).toBe(Math.ceil(Math.max(lowest(full), reserve)));
      expect(said(full)).not.toContain("no-headroom");
    }
    if (pinion !== null) {
      expect(kept(anew(machine, { "gears.pinionTeeth": pinion }))).toBe(true);
      expect(drawn(anew(machine, { "gears.pinionTeeth": pinion }))).toBeLessThanOrEqual(currentRateLimit);
      for (let teeth = machine.gears.pinionTeeth + 1; teeth < pinion; teeth++)
        expect(kept(anew(machine, { "gears.pinionTeeth": teeth }))).toBe(false);
    }
    if (cells !== null) expect(kept(anew(machine, { "pack.cells": cells }))).toBe(true);
  });

  it("has each way on some machine, and is without it on others", () => {
    const all = short.map(([, machine]) => help(machine));
    for (const way of ["charge", "pinion", "cells"] as const) {
      expect([way, new Set(all.map((each) => each[way] === null)).size]).toEqual([way, 2]);
    }
    expect(all.some(({ slower }) => slower !== null)).toBe(true);
  });

  it("is the fastest round speed whose full pitch lasts to the reserve", () => {
    const { slower } = help(machineWith({ "modes.0.headRpm": 2800, "modes.0.collectiveMaxDeg": 11 }));
    const at = (headRpm: number) => machineWith({ "modes.0.headRpm": headRpm, "modes.0.collectiveMaxDeg": 11 });
    expect(slower?.lasts).toBe("to the reserve");
    expect([lowest(at(slower!.to)) <= reserve, lowest(at(slower!.to + 10)) <= reserve]).toEqual([true, false]);
  });

  it("is a speed for a while where the band holds none that lasts: one that lasts worth while", () => {
    // A band that begins above what the reserve holds.
    const changes = { "modes.0.headRpm": 2780, "modes.0.collectiveMaxDeg": 11, "controller.usableLowPercent": 85 };
    const { slower } = help(machineWith(changes));
    const at = (headRpm: number) => seconds(machineWith({ ...changes, "modes.0.headRpm": headRpm }));
    expect(slower?.lasts).toBeCloseTo(at(slower!.to), 6);
    expect(at(slower!.to)).toBeGreaterThanOrEqual(leastHold);
    // The fastest of them, in steps of ten.
    const emptier = machineWith({ ...changes, "modes.0.headRpm": 2700, "pack.chargePercent": 80 });
    const last = (headRpm: number) => seconds(machineWith({ "modes.0.headRpm": headRpm }, emptier));
    const fastest = help(emptier).slower!.to;
    expect([last(fastest) >= leastHold, last(fastest + 10) < leastHold]).toEqual([true, true]);
    expect(last(fastest + 10)).toBeGreaterThan(0);
    expect(help(machineWith({ "controller.usableLowPercent": 87 }, emptier)).slower).toBeNull();
  });

  it("never asks for more than the makers of blades, motor and controller allow", () => {
    const fast = { "modes.0.headRpm": 2900, "modes.0.collectiveMaxDeg": 9 };
    const to = (changes: Changes) => help(machineWith({ ...fast, "mainRotor.ratedRpm": null, ...changes })).slower?.to;
    expect(to({})).toBeGreaterThan(2405);
    expect(to({ "mainRotor.ratedRpm": 2405 })).toBe(2400);
    expect(to({ "motor.ratedRpm": (2405 * 120) / 13 })).toBe(2400);
    expect(to({ "controller.electricalRpmLimit": (5 * 2405 * 120) / 13 })).toBe(2400);
  });

  it("is nothing but slower where the set speed is over a maker's limit", () => {
    const fast = { "modes.0.headRpm": 2950, "modes.0.collectiveMaxDeg": 11, "pack.chargePercent": 60 };
    const freed = help(machineWith({ ...fast, "mainRotor.ratedRpm": null, "modes.0.headRpm": 2600 }));
    expect([freed.charge, freed.pinion, freed.cells]).not.toContain(null);
    for (const limit of [
      { "mainRotor.ratedRpm": 2800 },
      { "mainRotor.ratedRpm": null, "motor.ratedRpm": 27_000 },
      { "mainRotor.ratedRpm": null, "controller.electricalRpmLimit": 135_000 },
    ]) {
      const { slower, ...others } = help(machineWith({ ...fast, ...limit }));
      expect(others).toEqual({ charge: null, pinion: null, cells: null });
      expect(slower).not.toBeNull();
    }
  });

  it("names no part whose learning run would turn something too fast", () => {
    const fast = { "modes.0.headRpm": 2600, "modes.0.collectiveMaxDeg": 11 };
    const run = (changes: Changes) => figuresOf(machineWith(changes)).number("learning-head-speed")!;
    const motor = run({ "gears.pinionTeeth": 14 }) * (120 / 14);
    expect(help(machineWith({ ...fast, "pack.chargePercent": 60 })).cells).toBe(7);
    const close = { "pack.chargePercent": 60, "motor.ratedRpm": motor * 1.15, "modes.0.headRpm": 1700 };
    expect(run({ "pack.cells": 7 }) * (120 / 13)).toBeGreaterThan(motor * 1.15);
    expect(
      help(machineWith({ ...fast, ...close, "modes.0.collectiveMaxDeg": 16, "controller.usableLowPercent": 40 })).cells,
    ).toBeNull();
  });

  it("is no speed below the usable band", () => {
    // A reference of 5000 rpm at the rotor: its band begins at 3000.
    const learned = { "controller.learned.motorRpm": (2500 * 120) / 13, "modes.0.headRpm": 3100 };
    expect(help(machineWith(learned)).slower).toBeNull();
    expect(help(machineWith({ ...learned, "controller.usableLowPercent": 40 })).slower?.to).toBeGreaterThan(2300);
  });

  it("is no speed above the usable band, which ends at 90 % of the reference", () => {
    // A reference of 2600 rpm at the rotor: its band ends at 2340, below the ceiling.
    const learned = { "controller.learned.motorRpm": (1300 * 120) / 13, "modes.0.headRpm": 2900 };
    expect(figuresOf(machineWith(learned)).number("ceiling-full-pitch", 0)).toBeGreaterThan(2400);
    expect(help(machineWith(learned)).slower?.to).toBe(2340);
    expect(help(machineWith({ ...learned, "controller.usableHighPercent": 80 })).slower?.to).toBe(2080);
  });

  it("is no part that a machine can't have", () => {
    const parts = { "pack.cells": 24, "gears.pinionTeeth": 80, "gears.mainTeeth": 500, "motor.kvRpmPerVolt": 150 };
    const ceiling = figuresOf(machineWith(parts)).number("ceiling-full-pitch", 0)!;
    const fast = { "modes.0.headRpm": ceiling * 1.003, "mainRotor.ratedRpm": null };
    expect(help(machineWith({ ...parts, ...fast }))).toMatchObject({ pinion: null, cells: null });
  });

  it("counts the cells' resistance at the temperature of the pack", () => {
    // At -20 °C a cell has 4.2 times its resistance: with it left out, more cells would seem to hold more than they do.
    const cold = { "pack.temperatureC": -20, "pack.cellResistanceMilliohm": 6, "modes.0.collectiveMaxDeg": 8 };
    let found = 0;
    for (let speed = 2300; speed < 3600; speed += 20) {
      const machine = machineWith({ ...cold, "modes.0.headRpm": speed, "mainRotor.ratedRpm": null });
      const { cells } = help(machine);
      if (cells === null) continue;
      found += 1;
      expect([speed, kept(anew(machine, { "pack.cells": cells }))]).toEqual([speed, true]);
    }
    expect(found).toBeGreaterThan(0);
  });
});
