import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scaleOf, spanOf, steadySpan, ticksOf } from "#plots/axis";

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const range = fc
  .tuple(value, fc.double({ min: 1e-3, max: 1e6, noNaN: true }))
  .map(([low, size]) => ({ low, high: low + size }));
const axis = { label: "head speed", unit: "rpm" };

describe("the ends of an axis", () => {
  it("lie on round numbers around the values", () => {
    expect(steadySpan(null, 1903, 2624)).toEqual({ low: 1800, high: 2800 });
    expect(steadySpan(null, 0, 100)).toEqual({ low: 0, high: 100 });
    expect(steadySpan(null, 0.121, 0.187)).toEqual({ low: 0.12, high: expect.closeTo(0.19, 9) });
  });

  it("stay as they are while the values move within them", () => {
    const before = steadySpan(null, 1903, 2624);
    for (let step = 0; step <= 20; step++) expect(steadySpan(before, 1903 - 5 * step, 2624 + 5 * step)).toBe(before);
  });

  it("give way at once to a value outside, by a whole step", () => {
    const before = steadySpan(null, 1903, 2624);
    expect(steadySpan(before, 1903, 2801)).toEqual({ low: 1800, high: 3000 });
  });

  it("come closer only when the values fill little of the axis", () => {
    const before = { low: 0, high: 1000 };
    expect(steadySpan(before, 100, 700)).toBe(before);
    expect(steadySpan(before, 100, 300)).toEqual({ low: 100, high: 300 });
  });

  it("only grows while a hand moves", () => {
    const before = { low: 0, high: 1000 };
    expect(steadySpan(before, 100, 300, true)).toBe(before);
    expect(steadySpan(before, 400, 1100, true)).toEqual({ low: 0, high: 1200 });
    expect(steadySpan(before, -50, 500, true)).toEqual({ low: -200, high: 1000 });
    expect(steadySpan(null, 100, 300, true)).toEqual({ low: 100, high: 300 });
    expect(spanOf({ ...axis, low: 0 }, before, { low: 100, high: 300 }, true)).toBe(before);
  });

  it("have room for a single value", () => {
    const { low, high } = steadySpan(null, 147, 147);
    expect(low).toBeLessThan(147);
    expect(high).toBeGreaterThan(147);
    expect(steadySpan(null, 0, 0)).toEqual({ low: expect.closeTo(-0.6, 9), high: expect.closeTo(0.6, 9) });
  });

  it("hold all values, whatever came before, and settle at once", () => {
    fc.assert(
      fc.property(range, range, (first, second) => {
        const before = steadySpan(null, first.low, first.high);
        const now = steadySpan(before, second.low, second.high);
        const dust = 1e-9 * Math.max(1, Math.abs(second.low), Math.abs(second.high));
        expect(now.low).toBeLessThanOrEqual(second.low + dust);
        expect(now.high).toBeGreaterThanOrEqual(second.high - dust);
        const again = steadySpan(now, second.low, second.high);
        expect(again.low).toBeCloseTo(now.low, 6);
        expect(again.high).toBeCloseTo(now.high, 6);
      }),
    );
  });

  it("are exactly those asked for on an exact axis", () => {
    const exact = { ...axis, low: 0, high: 100, exact: true };
    expect(spanOf(exact, null, { low: -20, high: 300 })).toEqual({ low: 0, high: 100 });
  });

  it("hold what has to be in view, and there are some when there are no values", () => {
    expect(spanOf({ ...axis, low: 0 }, null, { low: 1903, high: 2624 })).toEqual({ low: 0, high: 3000 });
    expect(spanOf(axis, null, null)).toEqual({ low: 0, high: 1 });
  });
});

describe("ticks", () => {
  it("bear words of their own where an axis has them, such as powers of ten", () => {
    const logs = { ...axis, ticks: [3, 4, 5], tickTexts: ["1", "10", "100"] };
    expect(ticksOf(logs, { low: 3.5, high: 5.2 }, 300, 40)).toEqual([
      { value: 4, text: "10" },
      { value: 5, text: "100" },
    ]);
  });

  const texts = (low: number, high: number, room: number, apart: number) =>
    ticksOf(axis, { low, high }, room, apart).map((tick) => tick.text);

  it("stand at round values, with the decimals that these need", () => {
    expect(texts(1800, 2800, 280, 28)).toEqual([
      "1,800",
      "1,900",
      "2,000",
      "2,100",
      "2,200",
      "2,300",
      "2,400",
      "2,500",
      "2,600",
      "2,700",
      "2,800",
    ]);
    expect(texts(0, 1, 120, 28)).toEqual(["0.00", "0.25", "0.50", "0.75", "1.00"]);
    expect(texts(-100, 100, 120, 28)).toEqual(["\u2212100", "\u221250", "0", "50", "100"]);
  });

  it("are never nearer than they may, and lie within the axis", () => {
    fc.assert(
      fc.property(range, fc.integer({ min: 60, max: 900 }), fc.integer({ min: 20, max: 60 }), (span, room, apart) => {
        const places = ticksOf(axis, span, room, apart).map((tick) => scaleOf(span, 0, room)(tick.value));
        for (const [i, place] of places.entries()) {
          expect(place).toBeGreaterThanOrEqual(-1e-3);
          expect(place).toBeLessThanOrEqual(room + 1e-3);
          if (i > 0) expect(place - places[i - 1]!).toBeGreaterThanOrEqual(apart - 1e-3);
        }
      }),
    );
  });

  it("that are named are thinned when they are too many", () => {
    const teeth = { label: "teeth", unit: "", ticks: [10, 11, 12, 13, 14, 15] };
    const span = { low: 9.5, high: 15.5 };
    expect(ticksOf(teeth, span, 300, 26).map((tick) => tick.value)).toEqual([10, 11, 12, 13, 14, 15]);
    expect(ticksOf(teeth, span, 80, 26).map((tick) => tick.value)).toEqual([10, 12, 14]);
    // The same ones are left when the axis grows.
    expect(ticksOf(teeth, { low: 10.5, high: 15.5 }, 66, 26).map((tick) => tick.value)).toEqual([12, 14]);
    // Teeth of a pinion between round ones: the second of two that are too close goes.
    const odd = { ...teeth, ticks: [6, 10, 12, 13, 14, 18] };
    expect(ticksOf(odd, { low: 6, high: 18 }, 180, 26).map((tick) => tick.value)).toEqual([6, 10, 12, 14, 18]);
  });
});

it("a place on the page and a value belong to each other, also on a reversed axis", () => {
  fc.assert(
    fc.property(range, fc.boolean(), fc.double({ min: 0, max: 1, noNaN: true }), (span, reversed, share) => {
      const scale = reversed ? scaleOf(span, 600, 40) : scaleOf(span, 40, 600);
      const at = span.low + share * (span.high - span.low);
      expect(Math.abs(scale.invert(scale(at)) - at)).toBeLessThan(1e-6 * Math.max(1, Math.abs(at)));
      expect(scale(span.low)).toBeCloseTo(reversed ? 600 : 40, 3);
    }),
  );
});
