import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimate } from "#model/flight/decimate";

describe("decimated lines", () => {
  it("keep every extreme: lowest and highest of the whole, first and last", () => {
    const values = fc.array(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), { minLength: 1, maxLength: 500 });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 40 }), (line, buckets) => {
        const kept = [...decimate(line, buckets)];
        expect(kept.length).toBeLessThanOrEqual(Math.max(4 * buckets, line.length <= 4 * buckets ? line.length : 0));
        expect(kept.every((i, n) => n === 0 || i > kept[n - 1]!)).toBe(true);
        expect(kept[0]).toBe(0);
        expect(kept.at(-1)).toBe(line.length - 1);
        const drawn = kept.map((i) => line[i]!);
        expect(Math.max(...drawn)).toBe(Math.max(...line));
        expect(Math.min(...drawn)).toBe(Math.min(...line));
      }),
    );
  });

  it("keep a spike of a single point in each bucket", () => {
    const line = new Float64Array(10_000);
    line[1234] = 1;
    line[1239] = -1;
    const kept = decimate(line, 100);
    expect(kept.length).toBeLessThanOrEqual(400);
    expect(kept).toContain(1234);
    expect(kept).toContain(1239);
  });

  it("keep a short line whole", () => {
    expect([...decimate([3, 1, 2], 5)]).toEqual([0, 1, 2]);
    expect([...decimate([], 5)]).toEqual([]);
    const line = Array.from({ length: 20 }, (_, i) => (i % 5 === 2 ? 1.5 : i / 5));
    expect([...decimate(line, 5)]).toEqual(line.map((_, i) => i));
  });
});
