import { describe, expect, it } from "vitest";
import { mark, type Target, toldApart } from "#exercises/mark";

const target: Target = {
  value: 2000,
  unit: "rpm",
  relative: 0.01,
  absolute: 0,
  slips: [
    { name: "gears-forgotten", value: 20000, hint: "That is the motor." },
    { name: "upside-down", value: 0.5, hint: "Turn it over." },
  ],
};

describe("marking", () => {
  it.each(["2000", "2,000 rpm", "2.000", "1980", "2020", "2000.4", "33.3 Hz", "209 rad/s"])("%s is right", (text) => {
    expect(mark(text, target)).toEqual({ kind: "right" });
  });

  it("answers a slip with its own hint", () => {
    expect(mark("20,100", target)).toEqual({ kind: "slip", slip: "gears-forgotten", hint: "That is the motor." });
    expect(mark("0.5", target)).toEqual({ kind: "slip", slip: "upside-down", hint: "Turn it over." });
  });

  it("lets a question's own slip come before the decimal point", () => {
    expect(mark("20000", target)).toMatchObject({ slip: "gears-forgotten" });
    expect(mark("200", target)).toMatchObject({ slip: "decimal-point" });
    expect(mark("2", target)).toMatchObject({ slip: "decimal-point" });
    expect(mark("2000000", target)).toMatchObject({ slip: "decimal-point" });
    expect(mark("20000000", target)).toMatchObject({ kind: "off" });
  });

  it("tells a wrong sign", () => {
    expect(mark("-2000", target)).toMatchObject({ slip: "sign" });
    expect(mark("25", { ...target, unit: "%", value: -25, slips: [] })).toMatchObject({ slip: "sign" });
  });

  it("tells a share from a percentage, and only where per cents are asked for", () => {
    expect(mark("0.71", { ...target, unit: "%", value: 71 })).toMatchObject({ slip: "share-for-percent" });
    expect(mark("0.71", { ...target, unit: "", value: 71 })).toMatchObject({ slip: "decimal-point" });
  });

  it.each([
    ["2050", "near"],
    ["1930", "near"],
    ["2500", "off"],
    ["1500", "off"],
  ])("%s is %s", (text, kind) => {
    expect(mark(text, target).kind).toBe(kind);
  });

  it("says which way an answer is off", () => {
    expect(mark("2500", target)).toMatchObject({ hint: expect.stringContaining("Too high") });
    expect(mark("1500", target)).toMatchObject({ hint: expect.stringContaining("Too low") });
  });

  it.each(["", "no idea", "2000 V", "2000 bananas"])("“%s” is asked for again", (text) => {
    expect(mark(text, target)).toMatchObject({ kind: "unreadable", hint: expect.stringContaining("rpm") });
  });

  it("asks for a plain number where there is no unit", () => {
    expect(mark("9 V", { ...target, unit: "" })).toMatchObject({ hint: expect.stringContaining("a plain number") });
    expect(mark("?", { ...target, unit: "" })).toMatchObject({ hint: "Type a number." });
  });

  it("takes the kinder of two readings", () => {
    const small = { ...target, value: 8.333, unit: "%" };
    expect(mark("8,333", small)).toEqual({ kind: "right" });
    expect(mark("8.333", { ...target, value: 8333 })).toEqual({ kind: "right" });
  });

  it("takes a gap where a count is asked for", () => {
    const teeth: Target = { value: 13, unit: "teeth", relative: 0, absolute: 0.4, slips: [] };
    expect(mark("13.4", teeth).kind).toBe("right");
    expect(mark("14", teeth).kind).toBe("near");
    expect(mark("15", teeth).kind).toBe("off");
  });

  it("never finds a factor in nothing", () => {
    const none: Target = { value: 0, unit: "%", relative: 0.01, absolute: 0.1, slips: [] };
    expect(mark("0", none).kind).toBe("right");
    expect(mark("5", none).kind).toBe("off");
    expect(mark("0", target).kind).toBe("off");
  });
});

describe("telling values apart", () => {
  it("needs room for both tolerances", () => {
    const tolerance = { relative: 0.01, absolute: 0 };
    expect(toldApart(100, 101.9, tolerance)).toBe(false);
    expect(toldApart(100, 102.2, tolerance)).toBe(true);
    expect(toldApart(100, -100, tolerance)).toBe(true);
    expect(toldApart(12, 13, { relative: 0, absolute: 0.4 })).toBe(true);
    expect(toldApart(12, 13, { relative: 0, absolute: 0.5 })).toBe(false);
  });
});
