import { describe, expect, it } from "vitest";
import { readAnswer } from "#exercises/read";

const values = (text: string, unit = "") => {
  const read = readAnswer(text, unit);
  return read.kind === "number" ? read.values : read;
};

describe("what a typed figure may mean", () => {
  it.each([
    ["2310", [2310]],
    [" 2310 ", [2310]],
    ["23.5", [23.5]],
    ["23,5", [23.5]],
    // Thousands on these pages, decimals elsewhere; the first meaning is that of these pages.
    ["2,310", [2310, 2.31]],
    ["2.310", [2.31, 2310]],
    ["2,310.5", [2310.5]],
    ["2.310,5", [2310.5]],
    ["1,234,567", [1234567]],
    ["1.234.567", [1234567]],
    ["2 310", [2310]],
    ["2\u00a0310", [2310]],
    ["2\u202f310", [2310]],
    ["2'310", [2310]],
    ["-12", [-12]],
    ["−12", [-12]],
    ["–12", [-12]],
    ["+12", [12]],
    ["0.5", [0.5]],
    [".5", [0.5]],
    ["5.", [5]],
    ["0,125", [125, 0.125]],
    ["1e3", [1000]],
    ["2.5e-3", [0.0025]],
    ["= 12", [12]],
    ["≈12", [12]],
    ["about 12", [12]],
  ])("%s", (text, meant) => {
    expect(values(text)).toEqual(meant);
  });

  it.each(["", " ", "a lot", "rpm", "-", ".", ",", "e3", "1.2.3", "1,2,3"])("“%s” is no number", (text) => {
    expect(readAnswer(text, "rpm")).toEqual({ kind: "none" });
  });
});

describe("units", () => {
  it.each([
    ["2310 rpm", "rpm", 2310],
    ["2310RPM", "rpm", 2310],
    ["2310 1/min", "rpm", 2310],
    ["100 rad/s", "rpm", 954.9297],
    ["38.5 Hz", "rpm", 2310],
    ["70 %", "%", 70],
    ["70%", "%", 70],
    ["70 per  cent", "%", 70],
    ["22200 mV", "V", 22.2],
    ["0.9 kW", "W", 900],
    ["36 km/h", "m/s", 10],
    ["100 mph", "m/s", 44.704],
    ["328.084 ft/s", "m/s", 100],
    ["100 kgf", "N", 980.665],
    ["1.4 kJ", "J", 1400],
    ["0.1 Wh", "J", 360],
    ["90 s", "min", 1.5],
    ["0.1 h", "min", 6],
    ["1500 ms", "s", 1.5],
    ["0.4 ms", "µs", 400],
    ["400 μs", "µs", 400],
    ["400 us", "µs", 400],
    ["0.035 Ω", "mΩ", 35],
    ["35 mohm", "mΩ", 35],
    ["2 in", "mm", 50.8],
    ["6.4 cm", "mm", 64],
    ["7400 cm²", "m²", 0.74],
    ["0.74 m2", "m²", 0.74],
    ["13 t", "teeth", 13],
    ["13 teeth", "teeth", 13],
    ["2 turns", "turns", 2],
    ["9.8:1", "", 9.8],
    ["9.8 to 1", "", 9.8],
    ["9.8 times", "", 9.8],
  ])("%s, asked in %s", (text, unit, value) => {
    const [read] = values(text, unit) as number[];
    expect(read).toBeCloseTo(value, 3);
  });

  it.each([
    ["70 A", "V", "A"],
    ["70 rpm", "m/s", "rpm"],
    ["70 %", "", "%"],
    ["70 bananas", "rpm", "bananas"],
    // A name that every object has is no unit.
    ["70 constructor", "rpm", "constructor"],
  ])("%s doesn't fit %s", (text, unit, other) => {
    expect(readAnswer(text, unit)).toEqual({ kind: "other unit", unit: other });
  });
});
