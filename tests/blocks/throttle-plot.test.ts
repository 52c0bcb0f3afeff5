import { describe, expect, it } from "vitest";
import { throttlePlot } from "#blocks/throttle-plot";
import { figuresOf } from "#figures/figures";
import { learnedAt, machineWith, tenToOne } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

/** A reference of 3000 rpm at the rotor. */
const learned = learnedAt(15_000, 50, machineWith(tenToOne));
const shown = (changes: Readonly<Record<string, unknown>> = {}, mode = 0) =>
  throttlePlot(figuresOf(machineWith(changes, learned)), null, mode);

describe("head speed against throttle", () => {
  it("is a straight line from nothing to the reference", () => {
    const [curve] = shown().state.curves;
    expect([curve?.xs, curve?.ys]).toEqual([
      [0, 100],
      [0, expect.closeTo(3000, 9)],
    ]);
  });

  it("has the mode's ceilings as levels", () => {
    const figures = figuresOf(learned);
    const { levels } = shown({}, 2).state;
    expect(levels?.map(({ key, at }) => [key, at])).toEqual([
      ["hover", figures.number("ceiling-hover", 2)],
      ["full", figures.number("ceiling-full-pitch", 2)],
    ]);
  });

  it("hatches what lies outside the usable band, in words", () => {
    const { zones } = shown({ "controller.usableLowPercent": 55, "controller.usableHighPercent": 85 }).state;
    expect(zones?.map(({ x, words }) => [x, words])).toEqual([
      [[null, 55], "below the usable band"],
      [[85, null], "above the usable band"],
    ]);
  });

  it("has a mark on the line for each mode that sets its head speed by way of the reference", () => {
    const { handles } = shown().state;
    expect(handles).toHaveLength(3);
    // 1850 of 3000 rpm: definition of the throttle.
    expect(handles?.[0]).toMatchObject({ path: "modes.0.headRpm", y: 1850, value: 1850, moves: "x", shows: "gentle" });
    expect(handles?.[0]?.x).toBeCloseTo(61.6667, 4);
    expect(handles?.[0]?.scale).toBeCloseTo(30, 9);
    expect(handles?.[2]?.max).toBeGreaterThanOrEqual(3000 - 1e-9);
    expect(shown({ "modes.0.headRpm": 3500 }).state.handles?.[0]?.max).toBe(3500);
  });

  it("shows the line of the what-if", () => {
    const other = figuresOf(machineWith({ "gears.pinionTeeth": 13 }, learned));
    const { curves } = throttlePlot(figuresOf(learned), other).state;
    expect(curves.map(({ ink }) => ink)).toEqual(["now", "what-if"]);
    expect(curves[1]?.ys[1]).toBeCloseTo(3250, 9);
  });

  it("says what the mode asks for, what there is, and where the band lies", () => {
    expect(plain(wordsOf(shown()))).toMatch(
      /^Head speed against throttle\. gentle asks for 1,850 rpm at 61\.7 % of throttle\. At full pitch, [\d,]+ rpm is the most there is\. 100 % is 3,000 rpm; the usable band is 60 to 90 %\.$/,
    );
    expect(plain(wordsOf(shown({ "modes.0.headRpm": 2950 })))).toMatch(
      /At full pitch it can't be held: [\d,]+ rpm is the most/,
    );
    expect(plain(wordsOf(shown({ "modes.0.name": "" })))).toContain(". 1 asks for");
  });

  it("has nothing to mark without a reference, and says so", () => {
    const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    const { curves, handles, words } = throttlePlot(figuresOf(dead)).state;
    expect([curves, handles]).toEqual([[], []]);
    expect(words).toMatch(/no reference/);
  });

  it("is on the page by its name, and stays in place", () => {
    const { one, host, update } = mounted(shown());
    expect(one("figure").dataset.plot).toBe("throttle");
    expect(leavesElements(host, () => update(shown({ "modes.0.headRpm": 1900 })))).toBe(true);
  });
});
