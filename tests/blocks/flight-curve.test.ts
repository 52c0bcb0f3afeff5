import { describe, expect, it } from "vitest";
import { POINTS, read, stroke, timeOf, written } from "#blocks/flight-curve";

describe("a curve drawn by hand", () => {
  const flat = new Array<number>(POINTS).fill(2100);

  it("has its points at even times, from the first moment to the last", () => {
    expect(timeOf(0, 5)).toBe(0);
    expect(timeOf(POINTS - 1, 5)).toBe(5);
    expect(timeOf(5, 5)).toBeCloseTo(1, 12);
  });

  it("goes into a short text and comes out the same", () => {
    const values = flat.map((value, i) => value - 10 * i);
    const text = written(values, 10);
    expect(text.length).toBeLessThan(200);
    expect(read(text, 10, 1000, 3000)).toEqual(values);
    const pitch = flat.map((_, i) => Math.round(-110 + 8 * i) / 10);
    expect(read(written(pitch, 0.1), 0.1, -12, 12)!.map((value) => value.toFixed(1))).toEqual(
      pitch.map((value) => value.toFixed(1)),
    );
  });

  it("stays between its limits, whatever the text says", () => {
    expect(read(written(flat, 10), 10, 1000, 2000)).toEqual(flat.map(() => 2000));
    expect(read(written(flat, 10), 10, 2500, 3000)).toEqual(flat.map(() => 2500));
  });

  it.each([
    ["no text", 7],
    ["too few points", "1,2,3"],
    ["words", new Array(POINTS).fill("a").join()],
    ["nothing", ""],
  ])("is none where there is %s", (_, text) => {
    expect(read(text, 10, 0, 3000)).toBeNull();
  });

  it("takes a stroke at every point that it passes, in either direction, and nowhere else", () => {
    const there = stroke(flat, 5, { time: 1, value: 2000 }, { time: 2, value: 1900 });
    expect(there.slice(5, 11)).toEqual([2000, 1980, 1960, 1940, 1920, 1900]);
    expect([there[4], there[11]]).toEqual([2100, 2100]);
    expect(stroke(flat, 5, { time: 2, value: 1900 }, { time: 1, value: 2000 })).toEqual(there);
    expect(stroke(flat, 5, { time: 9, value: 1 }, { time: 9, value: 2 }).at(-1)).toBe(2);
  });
});
