import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { referenceOf } from "#figures/reference";
import { rigOf } from "#figures/rig";
import { machineShape } from "#machine/fields";
import { defaultMachine, type FittedParts, fittedNow, type Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { ratioOf } from "#model/gears";
import { anyMachine } from "../machine/arbitrary.ts";
import { learnedAt, machineWith, tenToOne } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;
const of = (machine: Parameters<typeof rigOf>[0]) => referenceOf(rigOf(machine));

/** Another value for every part that a reference belongs to. */
const others: { readonly [K in keyof FittedParts]: FittedParts[K] } = {
  cells: 5,
  chemistry: "lihv",
  kvRpmPerVolt: 1000,
  pinionTeeth: 14,
  mainTeeth: 121,
  bladeCount: 3,
  diameterMm: 940,
  chordMm: 40,
  secondStage: { driverTeeth: 20, drivenTeeth: 24 },
};

describe("a reference that nobody measured", () => {
  const reference = of(defaultMachine);

  it("is expected: the speed of the learning run over its throttle", () => {
    expect(reference.state).toBe("expected");
    expect(reference.differing).toEqual([]);
    expect(reference.motorSpeed).toBeCloseTo((reference.learning! * (120 / 13)) / 0.5, 8);
  });

  it("is learned open loop with flat pitch: the volts of that duty drive the motor against the blades' drag", () => {
    const { train, flat } = rigOf(defaultMachine);
    const speed = reference.learning!;
    const k = 60 / (2 * Math.PI * 1120);
    const current = flat(speed)! / ((k * 120 * 0.965) / 13) + 2.4;
    // D V = k G w + I (Rm + Rc + D² Rp): averaged ideal step-down chopper, Mohan, Undeland, Robbins, ch. 7.
    const needed = (k * speed * 120) / 13 + current * (train.motorResistance + 0.0025 + 0.25 * 0.0205);
    expect(needed).toBeCloseTo(0.5 * 25.2, 9);
  });

  it("is learned on a full pack, whatever the charge is now", () => {
    // Common practice, no source.
    const low = of(machineWith({ "pack.chargePercent": 30 }));
    expect(low.motorSpeed).toBeCloseTo(reference.motorSpeed!, 8);
  });

  it("hardly depends on the throttle held while it learns", () => {
    const more = of(machineWith({ "controller.learned.throttlePercent": 70 }));
    expect(more.learning! / reference.learning!).toBeGreaterThan(1.3);
    expect(more.motorSpeed! / reference.motorSpeed!).toBeGreaterThan(0.95);
    expect(more.motorSpeed! / reference.motorSpeed!).toBeLessThan(1);
  });

  it("doesn't exist where the motor doesn't turn at the learning throttle", () => {
    const dead = of(machineWith({ "controller.learned.throttlePercent": 1, "motor.noLoadCurrentA": 60 }));
    expect(dead).toMatchObject({ state: "expected", motorSpeed: null, learning: null });
  });
});

describe("a measured reference", () => {
  const base = machineWith(tenToOne);

  it("is the speed over the throttle held: 21,000 rpm at 70 % are 30,000 rpm", () => {
    // Definition.
    const reference = of(learnedAt(21_000, 70, base));
    expect(reference.state).toBe("fresh");
    expect(reference.motorSpeed! / rpm).toBeCloseTo(30_000, 8);
  });

  it("stands when nobody knows the parts fitted then", () => {
    const machine = machineWith({ "controller.learned.motorRpm": 15_000 });
    expect(of(machine)).toMatchObject({ state: "fresh", differing: [] });
  });

  it("still tells what a learning run would give now", () => {
    expect(of(learnedAt(21_000, 70, base)).learning).toBeGreaterThan(0);
  });
});

describe("a stale reference", () => {
  const then = learnedAt(15_000, 50, machineWith(tenToOne));

  it.each(Object.keys(others) as (keyof FittedParts)[])("is one that was learned with another %s", (part) => {
    const machine = withValue(then, `controller.learned.fittedWith.${part}`, others[part]);
    expect(of(machine)).toMatchObject({ state: "stale", differing: [part] });
    expect(of(then)).toMatchObject({ state: "fresh", differing: [] });
  });

  it("gives 8.33333 % more head speed after a change from 12 to 13 teeth: 2600 in place of 2400 rpm at 80 %", () => {
    // Definition of the set speed: throttle x reference / G.
    const now = withValue(then, "gears.pinionTeeth", 13);
    const figures = [then, now].map((machine) => figuresOf(withValue(machine, "modes.0.headRpm", 2400)));
    const [before, after] = figures.map((each) => each.number("learned-head-speed")!);
    expect([0.8 * before!, 0.8 * after!].map((n) => n.toFixed(6))).toEqual(["2400.000000", "2600.000000"]);
    expect(figures[1]?.number("stale-head-speed", 0)).toBeCloseTo(2600, 9);
    expect(figures[0]?.number("stale-head-speed", 0)).toBeCloseTo(2400, 9);
    expect(figures[1]?.warnings.find(({ name }) => name === "stale-reference")?.value).toBeCloseTo(8.33333, 5);
    // To ask for 2400 rpm again needs less throttle.
    expect(figures[1]?.number("throttle", 0)).toBeCloseTo((80 * 12) / 13, 9);
    expect(of(now).ratioThen).toBeCloseTo(10, 12);
  });

  it("leaves the head speed alone when only the motor was changed: the controller holds the motor's speed", () => {
    const now = withValue(then, "motor.kvRpmPerVolt", 1300);
    expect(of(now)).toMatchObject({ state: "stale", motorSpeed: of(then).motorSpeed });
    expect(figuresOf(now).number("stale-head-speed", 0)).toBe(figuresOf(then).number("head-speed-entered", 0));
  });

  it("that was never measured is what the parts fitted then would have given", () => {
    const old = machineWith({
      "motor.kvRpmPerVolt": 900,
      "pack.cells": 5,
      "mainRotor.diameterMm": 940,
      "gears.mainTeeth": 150,
    });
    const expected = of(old);
    const now = learnedAt(null, 50, old);
    const today = machineWith(
      { "motor.kvRpmPerVolt": 1120, "pack.cells": 6, "mainRotor.diameterMm": 970, "gears.mainTeeth": 120 },
      now,
    );
    expect(of(today).state).toBe("stale");
    expect(of(today).motorSpeed! / expected.motorSpeed!).toBeCloseTo(1, 9);
    expect(of(today).learning).toBeCloseTo(of(defaultMachine).learning!, 9);
  });

  it("keeps a second stage of which an older record says nothing", () => {
    const { secondStage: _, ...older } = then.controller.learned.fittedWith!;
    const old = withValue(then, "controller.learned.fittedWith", older);
    const two = machineWith({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }, old);
    expect(of(two).state).toBe("fresh");
    expect(of(withValue(two, "gears.pinionTeeth", 13)).ratioThen).toBeCloseTo(20, 12);
  });

  it.each([
    ["another", { driverTeeth: 20, drivenTeeth: 18 }, 24 / 18],
    ["none any more", null, 24 / 20],
  ])("is one of a machine that has %s second stage", (_, secondStage, faster) => {
    const stage = { "gears.pinionTeeth": 15, "gears.secondStage": { driverTeeth: 20, drivenTeeth: 24 } };
    const learned = learnedAt(13_500, 50, machineWith(stage));
    const now = withValue(learned, "gears.secondStage", secondStage);
    expect(of(learned).state).toBe("fresh");
    expect(of(now)).toMatchObject({ state: "stale", differing: ["secondStage"] });
    // Definition of the set speed: the motor's speed stays, and the head speed goes with 1 / G.
    expect(of(now).ratioThen / rigOf(now).ratio).toBeCloseTo(faster, 12);
    const [before, after] = [learned, now].map((each) => figuresOf(each).number("stale-head-speed", 2)!);
    expect(after! / before!).toBeCloseTo(faster, 9);
    const { warnings } = figuresOf(now);
    expect(warnings.find(({ name }) => name === "stale-reference")?.words).toContain("(second stage)");
    expect(warnings.some(({ name, mode }) => name === "blade-speed-over-limit" && mode === 2)).toBe(true);
  });

  it("that was never measured is worked out with the stage that was fitted then", () => {
    const two = machineWith({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 24 } });
    const now = withValue(learnedAt(null, 50, two), "gears.secondStage", null);
    expect(of(now).motorSpeed! / of(two).motorSpeed!).toBeCloseTo(1, 9);
  });
});

describe("on any machine", () => {
  it("is stale after any change that moves the gear ratio", () => {
    const gears = machineShape.entries.gears.entries;
    fc.assert(
      fc.property(anyMachine, anyMachine, fc.constantFrom(...Object.keys(gears)), (machine, other, key) => {
        const learned = learnedAt(13_500, 50, machine);
        const now = withValue(learned, `gears.${key}`, other.gears[key as keyof Machine["gears"]]);
        const moved = Math.abs(ratioOf(now.gears) / ratioOf(learned.gears) - 1) > 1e-6;
        if (!moved) return;
        expect(of(now).state).toBe("stale");
        expect(of(now).ratioThen / ratioOf(learned.gears)).toBeCloseTo(1, 9);
      }),
      { numRuns: 200 },
    );
  });

  it("is stale if and only if the parts fitted then are others", () => {
    fc.assert(
      fc.property(anyMachine, (machine) => {
        const { fittedWith, motorRpm } = machine.controller.learned;
        const now = fittedNow(machine);
        const differs = fittedWith !== null && Object.keys(now).some((key) => differ(now, fittedWith, key));
        const state = differs ? "stale" : motorRpm === null ? "expected" : "fresh";
        expect(of(machine).state).toBe(state);
        expect(of(learnedAt(motorRpm, 50, machine)).state).toBe(motorRpm === null ? "expected" : "fresh");
      }),
      { numRuns: 60 },
    );
  });
});

function differ(a: FittedParts, b: FittedParts, name: string): boolean {
  const key = name as keyof FittedParts;
  const [x, y] = [a[key], b[key]];
  if (key === "secondStage") return y !== undefined && JSON.stringify(x) !== JSON.stringify(y);
  return typeof x === "number" && typeof y === "number" ? Math.abs(x - y) > 1e-6 * Math.abs(y) : x !== y;
}
