import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { cellsProposed, matchedMachine } from "#figures/second-machine";
import { demos } from "#machine/demos";
import { readMachine } from "#machine/validate";
import { learnedAt, machineWith, number } from "./machines.ts";

describe("a machine with other cells and the Kv to match", () => {
  it("has two cells more, or two fewer where there are no larger packs", () => {
    expect(cellsProposed(machineWith({}))).toBe(8);
    expect(cellsProposed(machineWith({ "pack.cells": 22 }))).toBe(24);
    expect(cellsProposed(machineWith({ "pack.cells": 23 }))).toBe(21);
  });

  it("turns as fast without load and stores as much, and the validator takes it, for every demo machine", () => {
    for (const machine of demos) {
      const other = matchedMachine(machine, cellsProposed(machine));
      expect(readMachine(other, machine).problems).toEqual([]);
      // A motor's speed goes with Kv times volts (Drela 2007): a quarter less for a third more cells.
      const [a, b] = [machine, other].map((each) => each.motor.kvRpmPerVolt * each.pack.cells);
      expect((b ?? 0) / (a ?? 1)).toBeCloseTo(1, 3);
      const [full, same] = [machine, other].map((each) => each.pack.capacityMah * each.pack.cells);
      expect((same ?? 0) / (full ?? 1)).toBeCloseTo(1, 3);
    }
  });

  it("gives the same power with less current: in proportion to the volts, but for the wires' smaller losses", () => {
    const machine = machineWith({});
    const other = matchedMachine(machine, 8);
    const ratio = number(other, "hover-pack-current", 2) / number(machine, "hover-pack-current", 2);
    expect(ratio).toBeLessThan(6 / 8);
    expect(ratio).toBeGreaterThan(0.97 * (6 / 8));
    expect(figuresOf(other).number("hover-power", 2)).toBeCloseTo(number(machine, "hover-power", 2), 9);
  });

  it("has figures as a label has them, and has learned nothing yet", () => {
    const other = matchedMachine(learnedAt(15_000, 50, machineWith({ "pack.cells": 7 })), 9);
    expect(String(other.motor.kvRpmPerVolt).replace(".", "").length).toBeLessThanOrEqual(4);
    expect(other.controller.learned).toMatchObject({ motorRpm: null, fittedWith: null, throttlePercent: 50 });
  });
});
