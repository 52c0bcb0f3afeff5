import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { gearingBy } from "#figures/gearing";
import { demos } from "#machine/demos";
import { fittedNow } from "#machine/machine";
import { withValue } from "#machine/paths";
import { learnedAt, machineWith } from "./machines.ts";

const trainer = figuresOf(machineWith({}));
const gears = { pinionTeeth: 13, mainTeeth: 120, secondStage: null };

describe("a gearing", () => {
  it("is the machine's own figures where it is the one that is fitted", () => {
    for (const machine of demos) {
      const figures = figuresOf(machine);
      const own = gearingBy(figures, 1, machine.gears);
      const same = (a: number | null, name: Parameters<typeof figures.number>[0]) =>
        expect(a! / figures.number(name, 1)!).toBeCloseTo(1, 6);
      same(own.number("speed"), "ceiling-full-pitch");
      same(own.number("room"), "speed-headroom-full-pitch");
      same(own.number("throttle"), "throttle");
      same(own.number("duration"), "hover-duration");
      expect(own.held).toBe("full-pitch");
    }
  });

  it("is what a machine with these gears has, learned again", () => {
    const other = figuresOf(machineWith({ "gears.pinionTeeth": 15, "gears.mainTeeth": 118 }));
    const gearing = gearingBy(trainer, 2, { ...gears, pinionTeeth: 15, mainTeeth: 118 });
    expect(gearing.number("speed")! / other.number("ceiling-full-pitch", 2)!).toBeCloseTo(1, 6);
    expect(gearing.number("throttle")! / other.number("throttle", 2)!).toBeCloseTo(1, 6);
    const full = other.bearings.point("full-pitch", 2)!;
    expect(gearing.number("current")!).toBeCloseTo(full.motorCurrent, 9);
    const heat = full.controllerHeat + full.copperHeat + full.noLoadHeat;
    expect(gearing.number("full-heat")!).toBeCloseTo(heat, 9);
    expect(gearing.heats("full-pitch")!.controller).toBeCloseTo(full.controllerHeat, 9);
    const hover = other.bearings.point("hover", 2)!;
    const hoverHeat = hover.controllerHeat + hover.copperHeat + hover.noLoadHeat;
    expect(gearing.number("hover-heat")!).toBeCloseTo(hoverHeat, 9);
  });

  it("carries on what a measured reference says of this machine, and drops a stale one", () => {
    // Learned 2 % faster than expected: the throttle for the same head speed is 2 % lower, with any gears.
    const expected = trainer.bearings.reference().motorSpeed! * 0.5 * (30 / Math.PI);
    const measured = figuresOf(learnedAt(1.02 * expected));
    const two = { ...gears, pinionTeeth: 15 };
    const ratio = (f: typeof trainer) => f && gearingBy(f, 0, two).number("throttle")!;
    expect(ratio(trainer) / ratio(measured)).toBeCloseTo(1.02, 6);
    const stale = withValue(
      machineWith({ "gears.pinionTeeth": 14 }),
      "controller.learned.fittedWith",
      fittedNow(machineWith({})),
    );
    expect(gearingBy(figuresOf(stale), 0, two).number("throttle")).toBeCloseTo(ratio(trainer), 6);
  });

  it("turns the tips no faster than the bare motor would", () => {
    // v = omega R, from the no-load head speed: blades only slow it down.
    const free = (trainer.number("no-load-head-speed")! * Math.PI) / 30;
    const tip = gearingBy(trainer, 0, gears).number("tip")!;
    expect(tip).toBeLessThan(free * 0.485);
    expect(tip).toBeGreaterThan(0.9 * free * 0.485);
    // Flat blades ask for less than blades that carry the machine.
    expect(tip).toBeGreaterThan(1.005 * ((trainer.number("ceiling-hover", 0)! * Math.PI) / 30) * 0.485);
  });

  it("says what is held: full pitch, hover alone, or nothing", () => {
    const held = (pinionTeeth: number) => gearingBy(trainer, 2, { ...gears, pinionTeeth }).held;
    expect([held(9), held(11), held(13)]).toEqual(["not", "hover", "full-pitch"]);
    expect(gearingBy(trainer, 2, { ...gears, pinionTeeth: 9 }).number("duration")).toBeNull();
    expect(gearingBy(trainer, 2, { ...gears, pinionTeeth: 11 }).number("current")).toBeNull();
  });

  it("knows a motor that would turn too fast", () => {
    const slow = figuresOf(machineWith({ "motor.ratedRpm": 22_000 }));
    // 2450 rpm times 120/13 is 22,615; times 120/14 it is 21,000.
    expect(gearingBy(slow, 2, gears).motorTooFast).toBe(true);
    expect(gearingBy(slow, 2, { ...gears, pinionTeeth: 14 }).motorTooFast).toBe(false);
    // Ten poles: five electrical turns each.
    const limited = figuresOf(machineWith({ "controller.electricalRpmLimit": 110_000 }));
    expect(gearingBy(limited, 2, gears).motorTooFast).toBe(true);
    expect(gearingBy(limited, 2, { ...gears, pinionTeeth: 14 }).motorTooFast).toBe(false);
  });
});
