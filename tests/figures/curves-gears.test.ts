import { describe, expect, it } from "vitest";
import { contactWith } from "#figures/contact";
import { ceilingByPinion, comparedCharges, pinionTurn } from "#figures/curves-gears";
import { figuresOf } from "#figures/figures";
import { machineWith } from "./machines.ts";

const figures = figuresOf(machineWith({}));

describe("pinions on a plot", () => {
  it("rise, hold the one that is fitted, and are pinions that a machine can have", () => {
    for (const fitted of [5, 6, 13, 14, 40, 80]) {
      const { pinions } = ceilingByPinion(figuresOf(machineWith({ "gears.pinionTeeth": fitted })), 0);
      expect(pinions).toContain(fitted);
      expect(pinions).toEqual([...new Set(pinions)].sort((a, b) => a - b));
      expect([pinions[0]! >= 5, pinions.at(-1)! <= 80]).toEqual([true, true]);
      expect(pinions.length).toBeLessThan(20);
    }
  });
});

describe("the most the rotor can turn with each pinion", () => {
  const { pinions, free, full } = ceilingByPinion(figures, 2);
  const fitted = pinions.indexOf(13);

  it("is the machine's own figure at the pinion that is fitted", () => {
    expect(free[fitted]).toBeCloseTo(figures.number("no-load-head-speed")!, 9);
    expect(full[fitted]! / figures.number("ceiling-full-pitch", 2)!).toBeCloseTo(1, 6);
  });

  it("is what a machine with another pinion has", () => {
    const at = pinions.length - 1;
    const other = figuresOf(machineWith({ "gears.pinionTeeth": pinions[at] }));
    expect(free[at]! / other.number("no-load-head-speed")!).toBeCloseTo(1, 9);
    expect(full[at]! / other.number("ceiling-full-pitch", 2)!).toBeCloseTo(1, 6);
  });

  it("goes with the teeth only where there is nothing to drive", () => {
    const gain = (ys: readonly (number | null)[]) => ys.at(-1)! / ys[0]!;
    const teeth = pinions.at(-1)! / pinions[0]!;
    expect(gain(free)).toBeCloseTo(teeth, 9);
    expect(gain(full)).toBeLessThan(0.8 * teeth);
  });
});

describe("where a bigger pinion stops helping", () => {
  const { pinions, speeds, best, currents } = pinionTurn(figures, 2);

  it("is the machine's own ceiling at the pinion that is fitted, full and nearly empty", () => {
    comparedCharges.forEach((charge, i) => {
      const own = figuresOf(machineWith({ "pack.chargePercent": 100 * charge })).number("ceiling-full-pitch", 2);
      expect(speeds[i]![pinions.indexOf(13)]! / own!).toBeCloseTo(1, 6);
    });
  });

  it("has slower rotors on both sides of it", () => {
    for (const [i, teeth] of best.entries()) {
      const charge = { "pack.chargePercent": 100 * comparedCharges[i]! };
      const at = (pinion: number) =>
        figuresOf(machineWith({ "gears.pinionTeeth": pinion, ...charge })).number("ceiling-full-pitch", 2)!;
      expect(at(teeth!)).toBeGreaterThan(at(teeth! - 1));
      expect(at(teeth!)).toBeGreaterThan(at(teeth! + 1));
    }
  });

  it("takes the current that full duty drives: what is left of the voltage, over all resistances", () => {
    // I = (V - k G w) / R: M. Drela, First-Order DC Electric Motor Model, MIT (2007).
    const { train } = figures.rig;
    const at = pinions.indexOf(13);
    const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
    const back = train.torqueConstant * train.gearRatio * speeds[0]![at]! * (Math.PI / 30);
    expect(currents[at]! / ((train.openVoltage - back) / resistance)).toBeCloseTo(1, 6);
  });

  it("comes sooner with a tired pack", () => {
    const tired = pinionTurn(figuresOf(machineWith({ "pack.cellResistanceMilliohm": 12 })), 2);
    expect(tired.best[0]!).toBeLessThan(best[0]!);
  });
});

describe("the contact of a pinion", () => {
  it("is the handbook's where the roots are whole, and what undercut leaves where they are not", () => {
    // Handbook formula by hand for 20 and 120 teeth at 20 degrees: [sqrt(11² - (10 cos)²) + sqrt(61² - (60 cos)²) - 70 sin] / (pi cos).
    const cos = Math.cos(Math.PI / 9);
    const sin = Math.sin(Math.PI / 9);
    const ratio = (Math.sqrt(121 - 100 * cos ** 2) + Math.sqrt(3721 - 3600 * cos ** 2) - 70 * sin) / (Math.PI * cos);
    expect(contactWith(figures, 20)).toBeCloseTo(ratio, 9);
    // Closed form for 8 teeth that only touch above their base circle: 1.12.
    expect(contactWith(figures, 8)).toBeCloseTo(1.12, 2);
  });
});
