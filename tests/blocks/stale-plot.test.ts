import { describe, expect, it } from "vitest";
import { stalePlot } from "#blocks/stale-plot";
import { figuresOf } from "#figures/figures";
import { learnedAt, machineWith, tenToOne } from "../figures/machines.ts";
import { mounted, plain } from "./mounted.ts";

/** A reference of 3000 rpm at the rotor, learned with 12 teeth. */
const learned = learnedAt(15_000, 50, machineWith({ ...tenToOne, "modes.0.headRpm": 2400 }));
const state = (changes: Readonly<Record<string, unknown>>) => stalePlot(figuresOf(machineWith(changes, learned))).state;

describe("then and now", () => {
  it("are two lines once the gears have changed", () => {
    // Definition of the set speed: 12 teeth then, 13 now.
    expect(state({ "gears.pinionTeeth": 13 }).curves.map(({ key, ink, ys }) => [key, ink, Math.round(ys[1]!)])).toEqual(
      [
        ["then", "pinned-now", 3000],
        ["now", "now", 3250],
      ],
    );
  });

  it.each([
    ["nothing", {}],
    ["the motor", { "motor.kvRpmPerVolt": 1000 }],
    ["the cells", { "pack.cells": 5 }],
  ])("are one line while only %s has changed", (_, changes) => {
    expect(state(changes).curves.map(({ key }) => key)).toEqual(["now"]);
  });

  it("are told for each mode: 2400 rpm wanted, 2600 rpm given", () => {
    const words = plain(state({ "gears.pinionTeeth": 13 }).words);
    expect(words).toMatch(/^gentle: wanted 2,400 rpm, the old throttle now gives 2,600 rpm\. club: wanted/);
    expect(state({}).levels?.map(({ at, label }) => [at, label])[0]).toEqual([2400, "gentle"]);
  });

  it("are nothing without a reference", () => {
    const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    expect(stalePlot(figuresOf(dead)).state.curves).toEqual([]);
  });

  it("are on the page by their name", () => {
    expect(mounted(stalePlot(figuresOf(learned))).one("figure").dataset.plot).toBe("stale-reference");
  });
});
