import { describe, expect, it } from "vitest";
import { ceilingCurve, tipSpeedByPinion } from "#figures/curves";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { machineWith } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

describe("a ceiling over the charge", () => {
  it.each(["hover", "full-pitch"] as const)("in %s is the figure at each charge", (load) => {
    for (const machine of demos) {
      const { charges, speeds } = ceilingCurve(figuresOf(machine), load, 1);
      expect([charges[0], charges.at(-1)]).toEqual([0, 100]);
      expect(charges).toEqual([...charges].sort((a, b) => a - b));
      charges.forEach((charge, i) => {
        const at = figuresOf(machineWith({ "pack.chargePercent": charge }, machine));
        const ceiling = at.number(load === "hover" ? "ceiling-hover" : "ceiling-full-pitch", 1);
        expect(speeds[i]! / ceiling!).toBeCloseTo(1, 9);
      });
    }
  });

  it("rises with the charge", () => {
    const { speeds } = ceilingCurve(figuresOf(machineWith({})), "full-pitch", 2);
    speeds.slice(1).forEach((speed, i) => {
      expect(speed).toBeGreaterThan(speeds[i]!);
    });
  });

  it("has gaps where nothing turns the rotor", () => {
    const { speeds } = ceilingCurve(figuresOf(machineWith({ "airframe.massG": 50_000 })), "hover", 0);
    expect(new Set(speeds)).toEqual(new Set([null]));
  });

  it("is worked out once for a machine, in hover once for all its modes", () => {
    const figures = figuresOf(machineWith({}));
    expect(ceilingCurve(figures, "hover", 0)).toBe(ceilingCurve(figures, "hover", 2));
    expect(ceilingCurve(figures, "full-pitch", 0)).not.toBe(ceilingCurve(figures, "full-pitch", 2));
    expect(ceilingCurve(figures, "full-pitch", 2)).toBe(ceilingCurve(figures, "full-pitch", 2));
  });
});

describe("tip speed over the pinion", () => {
  const figures = figuresOf(machineWith({}));

  it("is that of the mode with the pinion that is fitted", () => {
    const { pinions, speeds } = tipSpeedByPinion(figures, 2);
    const fitted = pinions.indexOf(figures.machine.gears.pinionTeeth);
    expect(speeds[fitted]).toBeCloseTo(figures.number("tip-speed", 2)!, 9);
    // V = omega R: 2450 rpm and 0.485 m.
    expect(speeds[fitted]).toBeCloseTo(2450 * rpm * 0.485, 9);
  });

  it("moves its pinions on by steps of four teeth, with four or more to either side of the one that is fitted", () => {
    const around = (pinionTeeth: number) =>
      tipSpeedByPinion(figuresOf(machineWith({ "gears.pinionTeeth": pinionTeeth })), 0).pinions;
    for (let teeth = 12; teeth < 40; teeth++) {
      const pinions = around(teeth);
      expect(pinions[0]! % 4).toBe(0);
      expect(pinions).toEqual(Array.from({ length: 13 }, (_, i) => pinions[0]! + i));
      expect(Math.min(teeth - pinions[0]!, pinions.at(-1)! - teeth)).toBeGreaterThanOrEqual(4);
    }
    expect(around(13)).toEqual(around(15));
  });

  it("goes with the teeth while the motor's speed stays", () => {
    const { pinions, speeds } = tipSpeedByPinion(figures, 0);
    const share = pinions.map((teeth, i) => speeds[i]! / teeth);
    for (const each of share) expect(each).toBeCloseTo(share[0]!, 9);
  });

  it("has the blade maker's limit as a tip speed, or none", () => {
    expect(tipSpeedByPinion(figures, 0).limit).toBeCloseTo(2800 * rpm * 0.485, 9);
    expect(tipSpeedByPinion(figuresOf(machineWith({ "mainRotor.ratedRpm": null })), 0).limit).toBeNull();
  });

  it("counts in a second stage", () => {
    const two = figuresOf(machineWith({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }));
    const { pinions, speeds } = tipSpeedByPinion(two, 0);
    const fitted = pinions.indexOf(two.machine.gears.pinionTeeth);
    expect(speeds[fitted]).toBeCloseTo(figures.number("tip-speed", 0)!, 9);
  });

  it.each([5, 6, 80])("shows a pinion of %i teeth among those that a machine may have", (pinionTeeth) => {
    const { pinions } = tipSpeedByPinion(figuresOf(machineWith({ "gears.pinionTeeth": pinionTeeth })), 0);
    expect(pinions).toContain(pinionTeeth);
    expect(pinions).toHaveLength(13);
    expect(Math.min(...pinions)).toBeGreaterThanOrEqual(5);
    expect(Math.max(...pinions)).toBeLessThanOrEqual(80);
  });
});
