import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { type Help, helpFor } from "#figures/help";
import type { LoadName } from "#figures/rig";
import { demos } from "#machine/demos";
import { defaultMachine, type Machine } from "#machine/machine";
import { machineWith } from "./machines.ts";

const help = (machine: Machine, load: LoadName = "full-pitch", mode = 0): Help =>
  helpFor(figuresOf(machine), load, mode);

/** Whether the first mode is held after a change, with nothing learned before. */
function held(machine: Machine, changes: Readonly<Record<string, unknown>>, load: LoadName = "full-pitch"): boolean {
  const name = load === "hover" ? "speed-headroom-hover" : "speed-headroom-full-pitch";
  return (figuresOf(machineWith(changes, machine)).number(name, 0) ?? -1) >= 0;
}

/** Modes that are too fast for their machine, by a little and by much, warm and cold. */
const short: readonly (readonly [string, Machine])[] = demos.flatMap((demo) => {
  const ceiling = figuresOf(demo).number("ceiling-full-pitch", 2) ?? Number.NaN;
  return [1.01, 1.05, 1.12, 1.2].flatMap((share) =>
    [25, -5].map((temperature) => {
      const changes = {
        "modes.0.headRpm": Math.round(ceiling * share),
        "modes.0.collectiveMaxDeg": demo.modes[2]!.collectiveMaxDeg,
        "pack.temperatureC": temperature,
      };
      return [`${demo.name}, ${share} of its ceiling, ${temperature} °C`, machineWith(changes, demo)] as const;
    }),
  );
});

describe("what would help a mode that is too fast", () => {
  it.each(short)("really helps: %s", (_, machine) => {
    const { pinion, cells, slower } = help(machine);
    const teeth = machine.gears.pinionTeeth;
    if (pinion !== null) {
      expect(held(machine, { "gears.pinionTeeth": pinion })).toBe(true);
      expect(held(machine, { "gears.pinionTeeth": pinion - 1 })).toBe(false);
    } else expect(held(machine, { "gears.pinionTeeth": teeth + 4 })).toBe(false);
    if (cells !== null) {
      expect(held(machine, { "pack.cells": cells })).toBe(true);
      expect(held(machine, { "pack.cells": cells - 1 })).toBe(false);
    } else expect(held(machine, { "pack.cells": machine.pack.cells + 2 })).toBe(false);
    if (slower !== null) expect(held(machine, { "modes.0.headRpm": slower })).toBe(true);
  });

  it("has each way on some machine", () => {
    const all = short.map(([, machine]) => help(machine));
    for (const way of ["pinion", "cells", "slower"] as const) {
      expect(all.some((each) => each[way] !== null)).toBe(true);
    }
    expect(all.some(({ pinion }) => pinion === null)).toBe(true);
  });

  it("is a round speed just below the ceiling", () => {
    const learned = { "controller.learned.motorRpm": (1700 * 120) / 13 };
    const machine = machineWith({ ...learned, "modes.0.headRpm": 2900, "mainRotor.ratedRpm": null });
    const ceiling = figuresOf(machine).number("ceiling-full-pitch", 0)!;
    const { slower } = help(machine);
    expect(slower! % 10).toBe(0);
    expect(ceiling - slower!).toBeGreaterThanOrEqual(0);
    expect(ceiling - slower!).toBeLessThan(10);
  });

  it("never asks for more than the maker of the blades allows", () => {
    const fast = { "modes.0.headRpm": 2900 };
    expect(help(machineWith({ ...fast, "mainRotor.ratedRpm": null })).slower).toBeGreaterThan(2650);
    expect(help(machineWith({ ...fast, "mainRotor.ratedRpm": 2655 })).slower).toBe(2650);
  });

  it("is no speed below the usable band", () => {
    // A reference of 5000 rpm at the rotor: its band begins at 3000.
    const learned = { "controller.learned.motorRpm": (2500 * 120) / 13, "modes.0.headRpm": 3100 };
    expect(help(machineWith(learned)).slower).toBeNull();
    expect(help(machineWith({ ...learned, "controller.usableLowPercent": 40 })).slower).toBeGreaterThan(2500);
  });

  it("is no speed above the usable band, which ends at 90 % of the reference", () => {
    // A reference of 2600 rpm at the rotor: its band ends at 2340, below the ceiling.
    const learned = { "controller.learned.motorRpm": (1300 * 120) / 13, "modes.0.headRpm": 2900 };
    expect(figuresOf(machineWith(learned)).number("ceiling-full-pitch", 0)).toBeGreaterThan(2400);
    expect(help(machineWith(learned)).slower).toBe(2340);
    expect(help(machineWith({ ...learned, "controller.usableHighPercent": 80 })).slower).toBe(2080);
  });

  it("is no part that a machine can't have", () => {
    const parts = { "pack.cells": 24, "gears.pinionTeeth": 80, "gears.mainTeeth": 500, "motor.kvRpmPerVolt": 150 };
    const ceiling = figuresOf(machineWith(parts)).number("ceiling-full-pitch", 0)!;
    // One tooth or one cell more would hold this.
    const fast = { "modes.0.headRpm": ceiling * 1.003, "mainRotor.ratedRpm": null };
    expect(help(machineWith({ ...parts, ...fast }))).toMatchObject({ pinion: null, cells: null });
  });

  it("counts the cells' resistance at the temperature of the pack", () => {
    // At -20 °C a cell has 4.2 times its resistance: with it left out, more cells would seem to hold more than they do.
    const cold = { "pack.temperatureC": -20, "pack.cellResistanceMilliohm": 6 };
    for (let speed = 2500; speed < 3600; speed += 20) {
      const machine = machineWith({ ...cold, "modes.0.headRpm": speed, "mainRotor.ratedRpm": null });
      const { cells } = help(machine);
      if (cells !== null) expect([speed, held(machine, { "pack.cells": cells })]).toEqual([speed, true]);
    }
  });
});

describe("a pack that is nearly empty", () => {
  it.each(["hover", "full-pitch"] as const)(
    "is held from the charge that is named on, and not below it: %s",
    (load) => {
      const empty = machineWith({ "modes.0.headRpm": 2450, "modes.0.collectiveMaxDeg": 11, "pack.chargePercent": 2 });
      const { charge } = help(empty, load);
      expect(held(empty, { "pack.chargePercent": charge })).toBe(true);
      expect(held(empty, { "pack.chargePercent": charge! - 1 })).toBe(false);
    },
  );

  it("isn't what is missing where the mode is held already", () => {
    expect(held(defaultMachine, {}, "hover")).toBe(true);
    expect(help(defaultMachine, "hover").charge).toBeNull();
  });

  it("isn't what is missing where a full one doesn't do", () => {
    expect(help(machineWith({ "modes.0.headRpm": 3050, "pack.chargePercent": 40 }), "hover").charge).toBeNull();
  });
});

describe("in hover", () => {
  it("looks at hover", () => {
    const machine = machineWith({ "modes.0.headRpm": 3050, "mainRotor.ratedRpm": null });
    const { pinion } = help(machine, "hover");
    expect(held(machine, { "gears.pinionTeeth": pinion }, "hover")).toBe(true);
    expect(held(machine, { "gears.pinionTeeth": pinion! - 1 }, "hover")).toBe(false);
    expect(pinion).toBeLessThan(help(machine, "full-pitch").pinion!);
  });

  it("has nothing to offer where the rotor stalls", () => {
    expect(help(machineWith({ "airframe.massG": 50_000 }), "hover")).toEqual({
      charge: null,
      slower: null,
      pinion: null,
      cells: null,
    });
  });
});
