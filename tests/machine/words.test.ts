import { describe, expect, it } from "vitest";
import { machineShape, shapeAt } from "#machine/fields";
import { allowed, holds, sentences, withUnit } from "#machine/words";

describe("words about a record", () => {
  it("write numbers with their unit and a true minus", () => {
    expect(withUnit(1120, "rpm/V")).toBe("1,120 rpm/V");
    expect(withUnit(-4.5, "°")).toBe("−4.5°");
    expect(withUnit(0.05, "")).toBe("0.05");
  });

  it.each([
    [undefined, "nothing"],
    [null, "nothing"],
    ["", "nothing"],
    ["abc", "the text “abc”"],
    ["a\u0000\u202Eb", "the text “a··b”"],
    ["x".repeat(50), `the text “${"x".repeat(40)}…”`],
    [12.5, "12.5 mm"],
    [1e300, "1e+300"],
    [Number.NaN, "no usable number"],
    [Number.NEGATIVE_INFINITY, "no usable number"],
    [true, "yes"],
    [[], "a list"],
    [{}, "a group of fields"],
  ])("say what %j is", (value, words) => {
    expect(holds(value, "mm")).toBe(words);
  });

  it.each([
    ["gears.pinionTeeth", "a whole number from 5 to 80 teeth"],
    ["motor.poles", "an even number from 2 to 60"],
    ["mainRotor.ratedRpm", "a number from 100 to 20,000 rpm, or nothing"],
    ["pack.chemistry", "one of lipo, lihv, life"],
    ["name", "text of at most 80 characters, on one line"],
    ["gears.secondStage", "all its fields, or none of them"],
    ["modes", "1 to 6 of them"],
  ])("say what %s may hold", (path, words) => {
    expect(allowed(shapeAt(path) ?? machineShape)).toBe(words);
  });

  it("name the field, what it holds and what is allowed", () => {
    const shape = shapeAt("gears.pinionTeeth");
    expect(shape && sentences.bad("Pinion", 12.5, shape)).toBe(
      "Pinion: holds 12.5 teeth. Allowed: a whole number from 5 to 80 teeth.",
    );
  });
});
