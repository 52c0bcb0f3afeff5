import { describe, expect, it } from "vitest";
import { median, mostSaid, readCount, readGuesses, stacked } from "#blocks/room-guesses-read";

const speeds = { low: 0, high: 3600, step: 10, unit: "rpm" };
const shares = { low: 0, high: 100, step: 1, unit: "%" };
const volts = { low: 3, high: 4.2, step: 0.1, unit: "V" };
const rooms = { low: -600, high: 600, step: 10, unit: "rpm" };

describe("a line of guesses", () => {
  it.each([
    ["", speeds, [], []],
    ["1800 2100 1900", speeds, [1800, 1900, 2100], []],
    ["1800,2100,1900", speeds, [1800, 1900, 2100], []],
    ["1,800, 2,100 1,900", speeds, [1800, 1900, 2100], []],
    ["1,200,1,500", speeds, [1200, 1500], []],
    ["600,700;800/900", speeds, [600, 700, 800, 900], []],
    ["2100rpm 2100 rpm, about 1900", speeds, [1900, 2100, 2100], []],
    ["2.1k ~2000 1950?", speeds, [1950, 2000, 2100], []],
    ["1800 x3 1900×2", speeds, [1800, 1800, 1800, 1900, 1900], []],
    ["70,80 90 %", shares, [70, 80, 90], []],
    ["70%, 80%", shares, [70, 80], []],
    ["3,7 3.8 4,05", volts, [3.7, 3.8, 4.05], []],
    ["-200 −150 –100 +50", rooms, [-200, -150, -100, 50], []],
    ["fast 2000 <b>1</b> 1900", speeds, [1900, 2000], ["fast", "<b>1<", "b>"]],
    ["1800\n1900\t2000\u00a02100", speeds, [1800, 1900, 2000, 2100], []],
  ])("%j", (text, scale, values, left) => {
    expect(readGuesses(text, scale)).toEqual({ values, left });
  });

  it("ends somewhere", () => {
    expect(readGuesses("1 x999", shares).values).toHaveLength(300);
    expect(readGuesses("7 ".repeat(5000), shares).values).toHaveLength(300);
  });
});

describe("what a room comes to", () => {
  it("is the middle one, or half way between two", () => {
    expect([median([]), median([5]), median([1, 4]), median([1, 2, 9])]).toEqual([null, 5, 2.5, 2]);
  });

  it("has a common idea only where several share it", () => {
    expect(mostSaid([1, 2, 2, 3])).toBeNull();
    expect(mostSaid([1, 2, 2, 2, 3])).toEqual({ value: 2, count: 3 });
    expect(mostSaid([...Array.from({ length: 20 }, (_, i) => i), 5, 5])).toBeNull();
  });

  it("stands in stacks, and leaves out what lies off the scale", () => {
    const { xs, ys } = stacked([-50, 0, 2, 100, 100, 100, 3600, 5000], speeds);
    expect(ys).toEqual([1, 2, 1, 2, 3, 1]);
    expect(xs.every((x) => x >= 0 && x <= 3600)).toBe(true);
  });

  it.each([
    ["", 0],
    [" 12 ", 12],
    ["999", 300],
    ["1.5", null],
    ["-1", null],
    ["many", null],
  ])("counts hands: '%s'", (text, count) => {
    expect(readCount(text)).toBe(count);
  });
});
