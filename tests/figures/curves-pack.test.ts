import { describe, expect, it } from "vitest";
import { loadCurrent, packMoment, packVoltages, rewoundFor, sagAt, withCells } from "#figures/curves-pack";
import { figuresOf } from "#figures/figures";
import { machineWith } from "./machines.ts";

const figures = figuresOf(machineWith({}));
const SPORTY = 2;

describe("voltage over the charge", () => {
  it("falls below the resting one by current times resistance", () => {
    const { charges, open, hover, full } = packVoltages(figures, SPORTY);
    const at = charges.indexOf(100);
    const resistance = figures.number("pack-resistance")!;
    expect(open[at]).toBeCloseTo(6 * 4.2, 9);
    // Ohm's law, with the figures that the pages show.
    expect(open[at]! - hover[at]!).toBeCloseTo(figures.number("hover-pack-current", SPORTY)! * resistance, 6);
    expect(open[at]! - full[at]!).toBeCloseTo(figures.number("full-pitch-pack-current", SPORTY)! * resistance, 6);
    charges.forEach((_, i) => {
      expect(full[i]!).toBeLessThan(hover[i]!);
      expect(hover[i]!).toBeLessThan(open[i]!);
    });
  });

  it("goes on at full duty where the speed is lost, without a jump", () => {
    const lowest = figures.number("lowest-charge", SPORTY)!;
    const near = (charge: number) =>
      loadCurrent(figuresOf(machineWith({ "pack.chargePercent": charge })), "full-pitch", SPORTY)!;
    expect(packMoment(figures, (lowest - 1) / 100, SPORTY).duty).toBeNull();
    expect(near(lowest - 0.01) / near(lowest + 0.01)).toBeCloseTo(1, 3);
  });

  it("needs all of it just where the charge no longer holds the speed", () => {
    const lowest = figures.number("lowest-charge", SPORTY)! / 100;
    expect(packMoment(figures, lowest + 1e-9, SPORTY).duty).toBeCloseTo(1, 5);
  });
});

describe("sag", () => {
  it("is the current times a resistance that cold and age raise in the cells, not in the leads", () => {
    // 6 cells of 3 mΩ and leads of 2.5 mΩ.
    expect(sagAt(figures, 40, 25)).toBeCloseTo(40 * 0.0205, 9);
    expect(sagAt(figures, 40, 25, 2)).toBeCloseTo(40 * 0.0385, 9);
    expect(sagAt(figures, 40, 0)).toBeGreaterThan(1.5 * sagAt(figures, 40, 25));
  });
});

describe("other cells at the same head speed", () => {
  // By the scaling of turns and cells: nothing outside, nothing to tell the two apart.
  const bare = figuresOf(machineWith({ "pack.leadResistanceMilliohm": 0, "controller.resistanceMilliohm": 0 }));

  it("change nothing but the current where only cells and winding have resistance", () => {
    const [six, twelve] = [6, 12].map((cells) => withCells(bare, cells, "full-pitch", SPORTY));
    expect(twelve!.heat! / six!.heat!).toBeCloseTo(1, 9);
    expect(six!.current! / twelve!.current!).toBeCloseTo(2, 9);
    expect(six!.wiring).toBe(0);
    const ceiling = figuresOf(rewoundFor(bare.machine, 12)).number("ceiling-full-pitch", SPORTY)!;
    expect(ceiling / bare.number("ceiling-full-pitch", SPORTY)!).toBeCloseTo(1, 6);
  });

  it("lose about a quarter in leads and controller with twice the cells", () => {
    const [six, twelve] = [6, 12].map((cells) => withCells(figures, cells, "full-pitch", SPORTY));
    expect(twelve!.wiring! / six!.wiring!).toBeCloseTo(0.25, 1);
    expect(twelve!.heat!).toBeLessThan(six!.heat!);
    expect(six!.current).toBeCloseTo(figures.number("full-pitch-pack-current", SPORTY)!, 9);
  });
});
