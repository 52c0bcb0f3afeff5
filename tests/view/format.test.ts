import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimalsFor, formatBand, formatModelled, formatNumber, formatValue, NO_VALUE, unitText } from "#view/format";

describe("a figure on a page", () => {
  it.each([
    [2310, "rpm", {}, "2,310\u00a0rpm"],
    [-140, "rpm", {}, "\u2212140\u00a0rpm"],
    [140, "rpm", { signed: true }, "+140\u00a0rpm"],
    [0, "rpm", { signed: true }, "0\u00a0rpm"],
    [-0.2, "rpm", {}, "0\u00a0rpm"],
    [2173.4, "rpm", { uncertainty: 60 }, "2,170\u00a0rpm"],
    [2173.4, "rpm", { uncertainty: 14 }, "2,173\u00a0rpm"],
    [2173.4, "rpm", { uncertainty: 140 }, "2,170\u00a0rpm"],
    [2173.4, "rpm", { uncertainty: 400 }, "2,200\u00a0rpm"],
    [0.0423, "ohm", {}, "42.3\u00a0mΩ"],
    [0.0423, "ohm", { uncertainty: 0.004 }, "42\u00a0mΩ"],
    [11.24, "deg", {}, "11.2°"],
    [66.666, "percent", {}, "66.7\u00a0%"],
    [9.2308, "1", {}, "9.23"],
    [1.2249, "kg/m3", {}, "1.225\u00a0kg/m³"],
    [1234567, "J", {}, "1,234,567\u00a0J"],
    [118.04, "A", {}, "118\u00a0A"],
    [1180.4, "A", {}, "1,180\u00a0A"],
    [100, "percent", {}, "100\u00a0%"],
    [67, "percent", { decimals: 0 }, "67\u00a0%"],
    [3, "turns", {}, "3.0\u00a0turns"],
  ])("%d %s %o", (value, unit, options, text) => {
    expect(formatValue(value, unit, options)).toBe(text);
  });

  it.each([null, Number.NaN, Number.POSITIVE_INFINITY])("that does not exist is words: %s", (value) => {
    expect(formatValue(value, "rpm")).toBe(NO_VALUE);
    expect(formatValue(value, "rpm", { none: "never" })).toBe("never");
    expect(formatBand(value, 10, "rpm")).toBe(NO_VALUE);
  });

  it("stands beside its uncertainty, both cut at the same digit", () => {
    expect(formatBand(2173.4, 62, "rpm")).toBe("2,170\u00a0±\u00a060\u00a0rpm");
    expect(formatBand(0.04231, 0.0021, "ohm")).toBe("42.3\u00a0±\u00a02.1\u00a0mΩ");
    expect(formatBand(11.24, 0.5, "deg")).toBe("11.2\u00a0±\u00a00.5°");
    expect(formatBand(9.231, 0, "1")).toBe("9.23");
  });

  it("has its unit as it is written", () => {
    expect(["percent", "ohm", "1", "deg", "parsec"].map((unit) => unitText(unit))).toEqual([
      "%",
      "mΩ",
      "",
      "°",
      "parsec",
    ]);
  });
});

describe("a speed that the model gives", () => {
  it.each([
    [27914, "27,900 rpm"],
    [9996, "10,000 rpm"],
    [3024, "3,020 rpm"],
    [947, "950 rpm"],
    [-305.6, "\u2212310 rpm"],
    [94, "90 rpm"],
    [9.6, "10 rpm"],
    [4.4, "4 rpm"],
    [-0.2, "0 rpm"],
    [null, NO_VALUE],
  ])("is told to as many figures as it is worth: %s as %s", (speed, text) => {
    expect(formatModelled(speed).replace("\u00a0", " ")).toBe(text);
  });

  it("has words of its own where it doesn't exist", () => {
    expect(formatModelled(null, { none: "none" })).toBe("none");
  });
});

describe("whatever the number", () => {
  const number = fc.double({ min: -1e12, max: 1e12, noNaN: true });
  const spread = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
  const read = (text: string) => Number(text.replaceAll(",", "").replace("\u2212", "-").replace("+", ""));

  it("it reads back within half of its last digit", () => {
    fc.assert(
      fc.property(number, fc.integer({ min: -6, max: 6 }), (value, decimals) => {
        const off = Math.abs(read(formatNumber(value, decimals)) - value);
        expect(off).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9) + Math.abs(value) * 1e-15);
      }),
    );
  });

  it("it is made of figures alone, in groups of three", () => {
    fc.assert(
      fc.property(number, fc.integer({ min: -3, max: 3 }), (value, decimals) => {
        expect(formatNumber(value, decimals)).toMatch(/^\u2212?\d{1,3}(,\d{3})*(\.\d+)?$/);
      }),
    );
  });

  it("its last digit is worth between a thirtieth of its uncertainty and all of it", () => {
    fc.assert(
      fc.property(spread, (uncertainty) => {
        const digit = 10 ** -decimalsFor(uncertainty);
        expect(uncertainty / digit).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(uncertainty / digit).toBeLessThan(30);
      }),
    );
  });

  it("zero has no sign", () => {
    fc.assert(
      fc.property(fc.double({ min: -0.49, max: 0.49, noNaN: true }), fc.boolean(), (value, signed) => {
        expect(formatNumber(value, 0, signed)).toBe("0");
      }),
    );
  });
});

describe("in imperial units", () => {
  it("a figure is converted, its uncertainty with it, and its unit changes", () => {
    expect(formatValue(100, "m/s", { units: "imperial" })).toBe("224\u00a0mph");
    expect(formatValue(100, "m/s", { units: "imperial", uncertainty: 4 })).toBe("224\u00a0mph");
    expect(formatValue(100, "m/s", { units: "imperial", uncertainty: 20 })).toBe("220\u00a0mph");
    expect(formatValue(25, "°C", { units: "imperial", uncertainty: 5 })).toBe("77\u00a0°F");
    expect(formatValue(1.225, "kg/m3", { units: "imperial" })).toBe("0.0765\u00a0lb/ft³");
  });

  it("a figure beside its uncertainty is converted too", () => {
    expect(formatBand(100, 5, "m/s", { units: "imperial" })).toBe("224\u00a0±\u00a011\u00a0mph");
    expect(formatBand(25, 5, "°C", { units: "imperial" })).toBe("77\u00a0±\u00a09\u00a0°F");
  });

  it("what the trade has no other unit for stays", () => {
    expect(formatValue(2310, "rpm", { units: "imperial" })).toBe("2,310\u00a0rpm");
    expect(formatValue(0.0423, "ohm", { units: "imperial" })).toBe("42.3\u00a0mΩ");
    expect(formatValue(null, "m/s", { units: "imperial" })).toBe(NO_VALUE);
  });
});
