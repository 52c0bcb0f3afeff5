import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { machineShape } from "#machine/fields";
import { defaultMachine, fittedNow, machineSchema, schemaOf } from "#machine/machine";
import { withValue } from "#machine/paths";
import { anyMachine } from "./arbitrary.ts";

const accepts = (path: "name" | "pack", value: unknown) => v.is(schemaOf(machineShape.entries[path]), value);
const poles = machineShape.entries.motor.entries.poles;
const rated = machineShape.entries.mainRotor.entries.ratedRpm;

describe("the machine record", () => {
  it("fits its own schema at its defaults and everywhere else", () => {
    expect(v.is(machineSchema, defaultMachine)).toBe(true);
    fc.assert(fc.property(anyMachine, (machine) => v.is(machineSchema, machine)));
  });

  it("takes numbers within their limits only, counts whole, magnets even", () => {
    expect([2, 10, 60].map((n) => v.is(schemaOf(poles), n))).toEqual([true, true, true]);
    expect([0, 7, 10.5, 62, "10", null].map((n) => v.is(schemaOf(poles), n))).toEqual(Array(6).fill(false));
    expect([null, 100, 2800.5].map((n) => v.is(schemaOf(rated), n))).toEqual([true, true, true]);
    expect([99, Number.NaN, Number.POSITIVE_INFINITY].map((n) => v.is(schemaOf(rated), n))).toEqual(
      Array(3).fill(false),
    );
  });

  it("takes names of one line and at most 80 characters, however many bytes these have", () => {
    expect(accepts("name", "🚁".repeat(80))).toBe(true);
    expect(accepts("name", "")).toBe(true);
    expect(accepts("name", "a".repeat(81))).toBe(false);
    for (const bad of ["a\nb", "a\u0000", "\uD83D", "a\u2028b"])
      expect(accepts("name", bad), JSON.stringify(bad)).toBe(false);
  });

  it("tells the parts that a reference learned now would belong to", () => {
    expect(fittedNow(defaultMachine)).toEqual({
      cells: 6,
      chemistry: "lipo",
      kvRpmPerVolt: 1120,
      pinionTeeth: 13,
      mainTeeth: 120,
      bladeCount: 2,
      diameterMm: 970,
      chordMm: 42,
      secondStage: null,
    });
    const secondStage = { driverTeeth: 20, drivenTeeth: 24 };
    expect(fittedNow(withValue(defaultMachine, "gears.secondStage", secondStage)).secondStage).toBe(secondStage);
    expect(
      v.is(schemaOf(machineShape.entries.controller.entries.learned.entries.fittedWith), fittedNow(defaultMachine)),
    ).toBe(true);
  });
});
