import { describe, expect, it } from "vitest";
import { bandOf } from "#figures/bands";
import { rewoundFor } from "#figures/curves-pack";
import { bandWithout, doubtsBetween, doubtsOf, verdictOf } from "#figures/doubts";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { machineWith } from "./machines.ts";

const of = (machine: Machine, ...name: Parameters<typeof bandOf> extends [unknown, ...infer R] ? R : never) => {
  const found = doubtsOf(figuresOf(machine), ...name);
  if (!found) throw new Error(`${name[0]} has no doubts`);
  return found;
};
const between = (a: Machine, b: Machine, name: Parameters<typeof doubtsBetween>[2], mode = 0) => {
  const found = doubtsBetween(figuresOf(a), figuresOf(b), name, mode);
  if (!found) throw new Error(`${name} has no difference`);
  return found;
};
const width = ({ low, high }: { low: number; high: number }) => high - low;

describe("the doubts of a product", () => {
  // F = m r omega²: 0.5 g of 10 g are 5 %, 3 mm of 300 mm are 1 %.
  const machine = machineWith({ "mainRotor.bladeMassG": 10, "mainRotor.bladeCentreMm": 300 });
  const ranking = of(machine, "blade-pull");

  it("are ranked, each with both sides at the coverage of the band", () => {
    expect(ranking.doubts.map(({ path }) => path)).toEqual(["mainRotor.bladeMassG", "mainRotor.bladeCentreMm"]);
    const [mass, centre] = ranking.doubts;
    // Two standard uncertainties (JCGM 100:2008, GUM, 6.3.3) of 5 % and 1 %.
    expect(mass?.high).toBeCloseTo(0.1 * ranking.value, 6);
    expect(mass?.low).toBeCloseTo(-0.1 * ranking.value, 6);
    expect(centre?.high).toBeCloseTo(0.02 * ranking.value, 6);
    // GUM 5.1.6: relative variances add, 25 and 1 parts of 26.
    expect(mass?.share).toBeCloseTo(25 / 26, 6);
  });

  it("say what measuring each would leave: 1 % either way without the mass, 5 % without its place", () => {
    const [mass, centre] = ranking.doubts;
    expect(mass?.leaves).toBeCloseTo(0.04 * ranking.value, 6);
    expect(centre?.leaves).toBeCloseTo(0.2 * ranking.value, 6);
    expect(width(bandWithout(ranking, ({ path }) => path === "mainRotor.bladeMassG"))).toBeCloseTo(
      mass?.leaves ?? 0,
      9,
    );
    expect(width(bandWithout(ranking, () => true))).toBe(0);
  });
});

describe("the doubts of any figure", () => {
  it("make up its band again, for every demo machine", () => {
    for (const machine of demos) {
      const ranking = of(machine, "ceiling-full-pitch", 2);
      const band = bandOf(figuresOf(machine), "ceiling-full-pitch", 2);
      expect(ranking.low).toBeCloseTo(band?.low ?? 0, 6);
      expect(ranking.high).toBeCloseTo(band?.high ?? 0, 6);
      expect(ranking.doubts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      const left = ranking.doubts.map(({ leaves }) => leaves);
      expect(left).toEqual([...left].sort((a, b) => a - b));
      expect(bandWithout(ranking, () => false)).toEqual({ low: ranking.low, high: ranking.high });
    }
  });

  it("have one side where the input can go no further: a full pack can't be fuller", () => {
    const charge = of(machineWith({}), "pack-open-voltage").doubts.find(({ path }) => path === "pack.chargePercent");
    expect(charge?.high).toBe(0);
    expect(charge?.low).toBeLessThan(0);
  });

  it("are none for a figure that is no number", () => {
    expect(doubtsOf(figuresOf(machineWith({})), "reference-state")).toBeNull();
  });
});

describe("the difference between two machines", () => {
  const now = machineWith({ "motor.noLoadCurrentA": 0 });

  it("of a machine and itself has no value and no doubt", () => {
    const twin = between(now, { ...now }, "no-load-head-speed");
    expect([twin.value, twin.low, twin.high]).toEqual([0, 0, 0]);
    expect(verdictOf(twin, 3000)).toBe("same");
  });

  it("lets the doubt of a part in common fall out: one tooth more with the same motor and pack", () => {
    const other = machineWith({ "gears.pinionTeeth": 14 }, now);
    const { value, low, high, doubts } = between(now, other, "no-load-head-speed");
    const speed = figuresOf(now).number("no-load-head-speed") ?? 0;
    expect(value).toBeCloseTo(speed / 13, 6);
    // Both speeds go with Kv: 4 % of the difference is what is left of its doubt (GUM 5.2.2), not 4 % of each speed.
    const kv = doubts.find(({ path }) => path === "motor.kvRpmPerVolt");
    expect(kv).toMatchObject({ side: "both", high: expect.closeTo(0.08 * value, 6) });
    expect(low).toBeGreaterThan(0);
    expect(high).toBeGreaterThan(value);
    expect(verdictOf({ value, low, high, doubts }, speed)).toBe("higher");
  });

  it("adds the doubts of two motors as squares", () => {
    const other = machineWith({ "motor.kvRpmPerVolt": 1150 }, now);
    const difference = between(now, other, "no-load-head-speed");
    const kv = difference.doubts.filter(({ path }) => path === "motor.kvRpmPerVolt");
    const speed = figuresOf(now).number("no-load-head-speed") ?? 0;
    expect(new Set(kv.map(({ side }) => side))).toEqual(new Set(["now", "what-if"]));
    const both = Math.hypot(0.08 * speed, (0.08 * speed * 1150) / 1120);
    expect(Math.hypot(...kv.map(({ high }) => high))).toBeCloseTo(both, 6);
    // 30 of 1120 rpm/V is less than two motors of 4 % can be told apart by.
    expect(verdictOf(difference, speed)).toBe("too close");
  });

  it("turns its sign with the machines", () => {
    const other = machineWith({ "pack.cells": 7 }, now);
    const there = between(now, other, "no-load-head-speed");
    const back = between(other, now, "no-load-head-speed");
    expect(back.value).toBeCloseTo(-there.value, 9);
    expect(back.low).toBeCloseTo(-there.high, 9);
    expect(verdictOf(there, 3000)).toBe("higher");
    expect(verdictOf(back, 3000)).toBe("lower");
  });

  it("finds two cells more, with a motor wound for them, clear in current and too close in ceiling", () => {
    const machine = machineWith({});
    const other = rewoundFor(machine, 8);
    const current = between(machine, other, "hover-pack-current", 2);
    expect(verdictOf(current, 10)).toBe("lower");
    const ceiling = between(machine, other, "ceiling-full-pitch", 2);
    expect(verdictOf(ceiling, 2700)).toBe("too close");
  });

  it("is none where one of them has no such figure", () => {
    const machine = machineWith({});
    const weak = machineWith({ "motor.kvRpmPerVolt": 300 });
    expect(doubtsBetween(figuresOf(machine), figuresOf(weak), "hover-pack-current", 2)).toBeNull();
  });
});
