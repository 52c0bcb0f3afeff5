import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monotoneCurve } from "#model/monotone";

const table = fc
  .array(fc.tuple(fc.double({ min: 0.001, max: 1, noNaN: true }), fc.double({ min: 0.001, max: 1, noNaN: true })), {
    minLength: 3,
    maxLength: 12,
  })
  .map((steps) => {
    let x = 0;
    let y = 0;
    const xs: number[] = [];
    const ys: number[] = [];
    for (const [dx, dy] of steps) {
      xs.push(x);
      ys.push(y);
      x += dx;
      y += dy;
    }
    return { xs, ys };
  });

describe("a monotone curve", () => {
  it("goes through its points and rises everywhere between them", () => {
    fc.assert(
      fc.property(table, ({ xs, ys }) => {
        const curve = monotoneCurve(xs, ys);
        xs.forEach((x, i) => {
          expect(curve.at(x)).toBeCloseTo(ys[i]!, 12);
        });
        const end = xs.at(-1)!;
        let before = -1;
        for (let i = 0; i <= 300; i++) {
          const y = curve.at(Math.min(end, (end * i) / 300))!;
          expect(y).toBeGreaterThan(before - 1e-14);
          before = y;
        }
      }),
      { numRuns: 40 },
    );
  });

  it("is undone by its inverse", () => {
    fc.assert(
      fc.property(table, fc.double({ min: 0, max: 1, noNaN: true }), ({ xs, ys }, part) => {
        const curve = monotoneCurve(xs, ys);
        const y = part * ys.at(-1)!;
        expect(curve.at(curve.inverse(y)!)).toBeCloseTo(y, 12);
      }),
    );
  });

  it("follows a straight line exactly and a smooth one to third order", () => {
    const line = monotoneCurve([0, 1, 3], [0, 2, 6]);
    expect(line.at(2.2)).toBeCloseTo(4.4, 12);
    const xs = Array.from({ length: 11 }, (_, i) => i / 10);
    const exponential = monotoneCurve(xs, xs.map(Math.exp));
    expect(exponential.at(0.55)! / Math.exp(0.55)).toBeCloseTo(1, 4);
  });

  it("takes the same course as another program's monotone cubic", () => {
    // SciPy 1.17.1, interpolate.PchipInterpolator([0, 1, 3, 4], [0, 1, 2, 8]).
    const curve = monotoneCurve([0, 1, 3, 4], [0, 1, 2, 8]);
    expect(curve.at(0.5)).toBeCloseTo(0.5592948717948718, 12);
    expect(curve.at(2)).toBeCloseTo(1.4183599419448476, 12);
    expect(curve.at(3.5)).toBeCloseTo(4.148191823899371, 12);
  });

  it("makes no guess outside its table", () => {
    const curve = monotoneCurve([0, 1, 2], [0, 1, 3]);
    expect([curve.at(-0.1), curve.at(2.1), curve.inverse(-0.1), curve.inverse(3.1)]).toEqual([null, null, null, null]);
    expect([curve.at(Number.NaN), curve.inverse(Number.NaN)]).toEqual([null, null]);
    expect([curve.inverse(0), curve.inverse(3)]).toEqual([0, 2]);
  });

  it("refuses a table that doesn't rise", () => {
    expect(() => monotoneCurve([0, 1, 1], [0, 1, 2])).toThrow(RangeError);
    expect(() => monotoneCurve([0, 1, 2], [0, 2, 1])).toThrow(RangeError);
  });
});
