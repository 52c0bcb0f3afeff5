import { area, line } from "d3-shape";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scaleOf } from "#plots/axis";
import { spread, textWidth, wrapped } from "#plots/labels";
import { areaPath, dotsPath, extent, linePath, pencilPath } from "#plots/path";
import { valueAt } from "#plots/table";

const x = scaleOf({ low: 0, high: 10 }, 0, 100);
const y = scaleOf({ low: 0, high: 10 }, 100, 0);

describe("paths", () => {
  it("go through the points, with a gap where there is no value", () => {
    expect(linePath([0, 1, 2, 3, 4], [0, 5, null, 5, 2.345], x, y)).toBe("M0,100L10,50M30,50L40,76.6");
  });

  it("close an area piece by piece", () => {
    expect(areaPath([0, 1, 2, 3], [0, 0, null, 1], [5, 5, 5, 5], x, y)).toBe("M0,50L10,50L10,100L0,100ZM30,50L30,90Z");
  });

  it("are those of a general library for lines and areas, d3-shape", () => {
    const value = fc.option(fc.double({ min: -50, max: 50, noNaN: true }));
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.double({ min: -9, max: 9, noNaN: true }), value, value)), (rows) => {
        const xs = rows.map((row) => row[0]);
        const lower = rows.map((row) => row[1]);
        const upper = rows.map((row) => row[2]);
        const drawLine = line<(typeof rows)[number]>()
          .defined((row) => row[1] !== null)
          .x((row) => x(row[0]))
          .y((row) => y(row[1]!))
          .digits(1);
        const drawArea = area<(typeof rows)[number]>()
          .defined((row) => row[1] !== null && row[2] !== null)
          .x((row) => x(row[0]))
          .y0((row) => y(row[1]!))
          .y1((row) => y(row[2]!))
          .digits(1);
        expect(linePath(xs, lower, x, y)).toBe(drawLine(rows) ?? "");
        expect(areaPath(xs, lower, upper, x, y)).toBe(drawArea(rows) ?? "");
      }),
    );
  });

  it("draw a circle at each value that exists", () => {
    expect(dotsPath([1, 2, 3], [1, null, 3], x, y, 4).match(/M/g)).toHaveLength(2);
  });

  it("draw pencil twice, near its points, the same each time", () => {
    const drawn = pencilPath([0, 10], [5, 5], x, y);
    expect(pencilPath([0, 10], [5, 5], x, y)).toBe(drawn);
    expect(drawn.match(/M/g)).toHaveLength(2);
    const heights = [...drawn.matchAll(/,(-?[\d.]+)/g)].map((found) => Number(found[1]));
    expect(Math.max(...heights.map((height) => Math.abs(height - 50)))).toBeLessThan(2.5);
    expect(new Set(heights).size).toBeGreaterThan(5);
  });

  it("never hold anything but numbers", () => {
    const wild = fc.oneof(fc.double(), fc.constant(null), fc.constant(Number.NaN));
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.double(), wild, wild), { maxLength: 12 }), (rows) => {
        const xs = rows.map((row) => row[0]);
        const a = rows.map((row) => row[1]);
        const b = rows.map((row) => row[2]);
        for (const path of [
          linePath(xs, a, x, y),
          pencilPath(xs, a, x, y),
          dotsPath(xs, a, x, y, 4),
          areaPath(xs, a, b, x, y),
        ]) {
          expect(path).toMatch(/^[-MLZa\d.,\s]*$/);
        }
      }),
    );
  });

  it("know their lowest and highest value", () => {
    expect(extent([3, null, 1], [7])).toEqual({ low: 1, high: 7 });
    expect(extent([null], [])).toBeNull();
  });
});

describe("words at the ends of curves", () => {
  it("stay where they want to be when there is room", () => {
    expect(
      spread(
        [
          { middle: 10, height: 18 },
          { middle: 80, height: 18 },
        ],
        0,
        100,
      ),
    ).toEqual([10, 80]);
  });

  it("share the way when they would lie over each other", () => {
    expect(
      spread(
        [
          { middle: 52, height: 18 },
          { middle: 48, height: 18 },
        ],
        0,
        100,
      ),
    ).toEqual([59, 41]);
  });

  it("never overlap, keep their order and stay inside whenever there is room for all", () => {
    const words = fc.array(
      fc.record({ middle: fc.double({ min: -50, max: 450, noNaN: true }), height: fc.constantFrom(18, 35) }),
      { minLength: 1, maxLength: 10 },
    );
    fc.assert(
      fc.property(words, (wanted) => {
        const placed = spread(wanted, 0, 400);
        const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]!.middle - wanted[b]!.middle || a - b);
        for (const [k, i] of order.entries()) {
          expect(placed[i]).toBeGreaterThanOrEqual(-1e-6);
          expect(placed[i]).toBeLessThanOrEqual(400 + 1e-6);
          const before = order[k - 1];
          if (before === undefined) continue;
          const apart = (wanted[before]!.height + wanted[i]!.height) / 2;
          expect(placed[i]! - placed[before]!).toBeGreaterThanOrEqual(apart - 1e-6);
        }
      }),
    );
  });

  it("break in two near the middle, unless they are short", () => {
    expect(wrapped("ceiling, full pitch")).toEqual(["ceiling,", "full pitch"]);
    expect(wrapped("what if")).toEqual(["what if"]);
    expect(wrapped("Drehzahlobergrenze")).toEqual(["Drehzahlobergrenze"]);
    expect(textWidth("www")).toBeGreaterThan(textWidth("iii"));
  });
});

describe("a value read off a curve", () => {
  const curve = { xs: [0, 10, 20, 30], ys: [0, 100, null, 50] };

  it("lies on the straight line between its neighbours", () => {
    expect(valueAt(curve, 5)).toBe(50);
    expect(valueAt({ xs: [100, 50, 0], ys: [10, 5, 1] }, 75)).toBe(7.5);
  });

  it("is not there in a gap, outside the curve or without points", () => {
    expect([15, 25, -1, 31].map((at) => valueAt(curve, at))).toEqual([null, null, null, null]);
    expect(valueAt({ xs: [], ys: [] }, 0)).toBeNull();
  });

  it("is the point's own at a point, beside a gap too", () => {
    expect([0, 10, 20, 30].map((at) => valueAt(curve, at))).toEqual([0, 100, null, 50]);
  });
});
