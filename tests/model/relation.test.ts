import { expect, it } from "vitest";
import { relation } from "#model/relation";

const length = (name: string, symbol: string) => ({ name, symbol, unit: "m" });

const area = relation({
  name: "area",
  symbol: "A",
  unit: "m²",
  terms: { width: length("width", "b"), height: length("height", "h") },
  formula: (t) => `${t.width} \\times ${t.height}`,
  of: (v) => v.width * v.height,
  assumes: "A rectangle.",
  source: "definition",
});

const side = relation({
  name: "side",
  symbol: "s",
  unit: "m",
  terms: { area: { name: "area", symbol: "A", unit: "m²" } },
  equation: (t, result) => `${result}^2 = ${t.area}`,
  of: (v) => (v.area < 0 ? null : Math.sqrt(v.area)),
  assumes: "A square.",
  range: "areas from 0 up",
  source: "definition",
});

it("is called with the values of its terms", () => {
  expect(area({ width: 2, height: 3 })).toBe(6);
  expect(side({ area: 9 })).toBe(3);
  expect(side({ area: -9 })).toBeNull();
});

it("writes the general formula from the symbols, and the reader's own from numbers", () => {
  expect(area.general).toBe("A = b \\times h");
  expect(area.formula({ width: "2", height: "3" })).toBe("A = 2 \\times 3");
  expect(area.formula({ width: "2", height: "3" }, "6")).toBe("A = 2 \\times 3 = 6");
});

it("shows the equation that it solves", () => {
  expect(side.general).toBe("s^2 = A");
  expect(side.formula({ area: "9" }, "3")).toBe("3^2 = 9");
});

it("carries what it is called, its terms, what it assumes and where it comes from", () => {
  expect(side.name).toBe("side");
  expect(area.terms.width.symbol).toBe("b");
  expect(area.symbols).toEqual({ width: "b", height: "h" });
  expect([area.symbol, area.unit, area.assumes, area.source, side.range]).toEqual([
    "A",
    "m²",
    "A rectangle.",
    "definition",
    "areas from 0 up",
  ]);
});
