import { describe, expect, it } from "vitest";
import { headroomPlot, roomWords } from "#blocks/room-plot";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { fieldAt } from "#machine/fields";
import { machineWith } from "../figures/machines.ts";
import { blemishes } from "../support/plain.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const figures = figuresOf(machineWith({}));
const state = (changes: Readonly<Record<string, unknown>>, mode = 0) =>
  headroomPlot(figuresOf(machineWith(changes)), null, mode).state;
/** 2700 rpm at full pitch are held by this machine until some charge between full and empty. */
const meeting = { "modes.0.headRpm": 2700 };

describe("head speed against charge", () => {
  it("draws both ceilings, the set speed and the charge", () => {
    const { curves, levels, x } = state({});
    expect(curves.map(({ key, ink }) => `${key} ${ink}`)).toEqual(["hover-now now", "full-pitch-now now"]);
    expect(levels?.map(({ key, axis, at }) => [key, axis, at])).toEqual([
      ["set", "y", 1850],
      ["charge", "x", 100],
    ]);
    expect([x.reversed, x.ends]).toEqual([true, ["full", "empty"]]);
    expect(plain(levels?.[0]?.label)).toBe("gentle asks 1,850 rpm");
  });

  it("draws the ceilings that the figures have", () => {
    const { curves } = state({ "pack.chargePercent": 40 }, 1);
    const at40 = Array.from(curves[1]!.xs).indexOf(40);
    const ceiling = figuresOf(machineWith({ "pack.chargePercent": 40 })).number("ceiling-full-pitch", 1);
    expect(curves[1]!.ys[at40]! / ceiling!).toBeCloseTo(1, 9);
  });

  it("marks the place where ceiling and set speed meet, in words", () => {
    const lowest = figuresOf(machineWith(meeting)).number("lowest-charge", 0)!;
    const { points } = state(meeting);
    expect(points).toHaveLength(1);
    expect(points?.[0]).toMatchObject({ kind: "place", y: 2700 });
    expect(points?.[0]?.x).toBeCloseTo(lowest, 9);
    expect(plain(points?.[0]?.label)).toBe(`no room left below ${Math.round(lowest)} %`);
    expect(state({ "modes.0.headRpm": 1500 }).points).toEqual([]);
    expect(state({ "modes.0.headRpm": 3300 }).points).toEqual([]);
  });

  it("hatches what can't be held, between ceiling and set speed", () => {
    const zone = state(meeting).zones?.[0];
    const { lower, upper } = zone!.between!;
    const short = Array.from(lower).flatMap((y, i) => (y === null ? [] : [[y, upper[i]]]));
    expect(short.length).toBeGreaterThan(0);
    for (const [low, high] of short) expect([low! < 2700, high]).toEqual([true, 2700]);
    expect(zone?.words).toBe("can't be held at full pitch");
    expect(state({ "modes.0.headRpm": 1500 }).zones).toEqual([]);
  });

  it("lets set speed and charge be dragged, within what they may be", () => {
    const { handles } = state({});
    const field = fieldAt("modes.0.headRpm");
    expect(handles?.map(({ path, moves, value }) => [path, moves, value])).toEqual([
      ["modes.0.headRpm", "y", 1850],
      ["pack.chargePercent", "x", 100],
    ]);
    expect(handles?.[0]).toMatchObject({ min: field.low, max: field.high, name: "gentle: head speed" });
    // A speed beyond the sensible range still lies on its own handle.
    expect(state({ "modes.0.headRpm": 7000 }).handles?.[0]?.max).toBe(7000);
    expect(state({ "modes.0.headRpm": 500 }).handles?.[0]?.min).toBe(500);
  });

  it("shows the what-if beside it", () => {
    const other = figuresOf(machineWith({ "pack.cells": 7, modes: [machineWith({}).modes[0]] }));
    const { curves } = headroomPlot(figures, other, 2).state;
    expect(curves.map(({ key }) => key)).toEqual([
      "hover-now",
      "full-pitch-now",
      "hover-what-if",
      "full-pitch-what-if",
    ]);
    expect(curves[2]!.label).toContain("what if");
    expect(curves[2]!.ys[0]).toBeGreaterThan(curves[0]!.ys[0]!);
  });

  it("is on the page by its name", () => {
    const { one, host, update } = mounted(headroomPlot(figures));
    expect(one("figure").dataset.plot).toBe("headroom");
    expect(leavesElements(host, () => update(headroomPlot(figuresOf(machineWith({ "modes.0.headRpm": 1860 })))))).toBe(
      true,
    );
  });
});

describe("what it says", () => {
  const words = (changes: Readonly<Record<string, unknown>>) => plain(roomWords(figuresOf(machineWith(changes)), 0));

  it("until which charge full pitch holds, and the room now", () => {
    expect(words(meeting)).toMatch(
      /^gentle asks for 2,700 rpm: at full pitch that is held until \d+ % of charge\. At 100 % there are \d+ rpm of room\.$/,
    );
  });

  it("that it is held to the last, also where only a fraction of a per cent is lost", () => {
    expect(words({ "modes.0.headRpm": 1500 })).toMatch(/down to the last of the pack\. At 100 % there are/);
    const nearly = { "modes.0.headRpm": 2100 };
    expect(figuresOf(machineWith(nearly)).number("lowest-charge", 0)).toBeGreaterThan(0);
    expect(words(nearly)).toContain("down to the last of the pack.");
    expect(headroomPlot(figuresOf(machineWith(nearly)), null, 0).state.points).toEqual([]);
  });

  it("that no charge holds it, and how short it is", () => {
    expect(words({ "modes.0.headRpm": 3300 })).toMatch(
      /at full pitch no charge holds it\. At 100 % it is \d+ rpm short/,
    );
  });

  it("nothing of room where there is no ceiling", () => {
    const dead = { "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 };
    expect(words(dead)).toBe("gentle asks for 1,850 rpm: at full pitch no charge holds it.");
    expect(blemishes(state(dead).words)).toEqual([]);
  });

  it("is the plot's own words, on every demo machine", () => {
    for (const demo of demos) {
      const shown = headroomPlot(figuresOf(demo), null, 1);
      expect(wordsOf(shown)).toBe(`Head speed against charge. ${roomWords(figuresOf(demo), 1)}`);
      expect(shown.state.curves.flatMap(({ ys }) => blemishes(Array.from(ys).filter((y) => y !== null)))).toEqual([]);
    }
  });
});
