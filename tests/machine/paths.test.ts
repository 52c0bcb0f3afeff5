import { describe, expect, it } from "vitest";
import { defaultMachine } from "#machine/machine";
import { changedBetween, same, valueAt, withValue } from "#machine/paths";

describe("paths", () => {
  it("read a value, and nothing where there is none", () => {
    expect(valueAt(defaultMachine, "gears.pinionTeeth")).toBe(13);
    expect(valueAt(defaultMachine, "modes.2.name")).toBe("sporty");
    expect(valueAt(defaultMachine, "gears.secondStage")).toBeNull();
    for (const path of [
      "modes.3.name",
      "gears.secondStage.driverTeeth",
      "name.length",
      "__proto__",
      "gears.toString",
    ]) {
      expect(valueAt(defaultMachine, path), path).toBeUndefined();
    }
  });

  it("change one value and share the rest", () => {
    const next = withValue(defaultMachine, "modes.1.headRpm", 2000);
    expect(next.modes.map((mode) => mode.headRpm)).toEqual([1850, 2000, 2450]);
    expect(next.modes[0]).toBe(defaultMachine.modes[0]);
    expect(next.gears).toBe(defaultMachine.gears);
    expect(defaultMachine.modes[1]?.headRpm).toBe(2100);
    expect(() => withValue(defaultMachine, "gears.nothing", 1)).toThrow("gears.nothing");
    expect(() => withValue(defaultMachine, "modes.3", {})).toThrow("modes.3");
    expect(() => withValue(defaultMachine, "__proto__.x", 1)).toThrow("__proto__");
  });

  it("tell whether two values are the same", () => {
    expect(same({ a: [1, { b: null }] }, { a: [1, { b: null }] })).toBe(true);
    expect(same({ a: 1 }, { a: 1, b: undefined })).toBe(false);
    expect(same([1], { 0: 1 })).toBe(false);
    expect([same([1], [1, 2]), same([1, 2], [1])]).toEqual([false, false]);
    expect(same({ a: undefined }, { b: undefined })).toBe(false);
  });

  it("tell which fields differ", () => {
    let next = withValue(defaultMachine, "gears.pinionTeeth", 14);
    next = withValue(next, "modes.0.headRpm", 1900);
    next = withValue(next, "gears.secondStage", { driverTeeth: 20, drivenTeeth: 40 });
    expect(changedBetween(defaultMachine, next)).toEqual(["gears.pinionTeeth", "gears.secondStage", "modes.0.headRpm"]);
    expect(changedBetween(next, withValue(next, "gears.secondStage.drivenTeeth", 41))).toEqual([
      "gears.secondStage.drivenTeeth",
    ]);
    expect(changedBetween(next, { ...next, modes: next.modes.slice(1) })).toEqual(["modes"]);
    expect(changedBetween(next, structuredClone(next))).toEqual([]);
  });
});
