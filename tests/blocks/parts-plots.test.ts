import { describe, expect, it } from "vitest";
import { energyPlot, pullMass, pullPlot } from "#blocks/blade-plots";
import { cellsPlot, cellsTable } from "#blocks/cells-plots";
import { gearFacts, meshPlot, pinionCeilingPlot } from "#blocks/gear-plots";
import { distancePlot, limitPlot, timeToReach } from "#blocks/limit-plots";
import { coldFactor, coldPlot, packMoments, packVoltagePlot } from "#blocks/pack-plots";
import { displayPlot, electricalPlot, headSpeedAtElectricalLimit, speedShown } from "#blocks/poles-plots";
import { figuresOf } from "#figures/figures";
import { machineWith, tenToOne } from "../figures/machines.ts";
import { plain } from "./mounted.ts";

const of = (changes: Readonly<Record<string, unknown>> = {}) => figuresOf(machineWith(changes));
const words = ({ state }: { readonly state: { readonly words: string } }) => plain(state.words);

describe("magnets", () => {
  it("make a display that was told another count wrong by the ratio of the two", () => {
    const figures = of({ ...tenToOne, "modes.0.headRpm": 2100 });
    // n = 120 f / p: 21,000 rpm of 10 poles shown as of 14 are 15,000.
    expect(speedShown(figures, 14)).toBeCloseTo(15_000, 6);
    expect(words(displayPlot(figures, 14))).toMatch(
      /shows 15,000 rpm; the motor turns 21,000 rpm\. That is 29 % too low/,
    );
    expect(words(displayPlot(figures, 10))).toMatch(/shows the true 21,000 rpm/);
  });

  it("meet the controller's limit at a head speed that falls with their number", () => {
    const figures = of({ ...tenToOne, "controller.electricalRpmLimit": 200_000 });
    expect(headSpeedAtElectricalLimit(figures)).toBeCloseTo(4000, 6);
    const { zones, handles, words: said } = electricalPlot(figures).state;
    expect(zones?.[0]?.y).toEqual([200_000, null]);
    // 1850 rpm x 10 x 5 pairs.
    expect(handles?.[0]?.y).toBeCloseTo(92_500, 6);
    expect(plain(said)).toMatch(/up to 20 magnets stay below/);
    expect(words(electricalPlot(of({ "motor.poles": 40 }), 2))).toMatch(/over its limit of 240,000 rpm/);
  });
});

describe("gears", () => {
  it("have their facts in words and numbers", () => {
    const facts = gearFacts(of(), 15, 0);
    expect(facts.shiftMm).toBeCloseTo(0.7, 9);
    expect(plain(facts.fit)).toMatch(/0\.70 mm away .* 0\.75 mm each way, so it should fit/);
    expect(gearFacts(of(), 16).fit).toMatch(/may not fit/);
    expect([facts.met, facts.meetTurns]).toEqual([120, 13]);
    // v = pi d n: 9.1 mm at 1850 x 120/13 rpm.
    expect(facts.pitchLine).toBeCloseTo((Math.PI * 0.0091 * 1850 * 120) / 13 / 60, 9);
  });

  it("are hatched where too few pairs share the load, and say which roots are cut", () => {
    expect(meshPlot(of()).state.zones?.[0]?.y).toEqual([null, 1.2]);
    expect(words(meshPlot(of()))).toMatch(/Below 18 teeth/);
    expect(words(meshPlot(of({ "gears.pinionTeeth": 20 })))).toMatch(/From 18 teeth on/);
  });

  it("show where a bigger pinion stops to help, if it does on the plot", () => {
    expect(words(pinionCeilingPlot(of({ "motor.resistanceMilliohm": 160 }), 2))).toMatch(
      /a bigger pinion helps at full pitch; beyond/,
    );
    expect(
      words(pinionCeilingPlot(of({ "motor.resistanceMilliohm": 0.5, "pack.cellResistanceMilliohm": 0.05 }), 2)),
    ).toMatch(/still helps/);
  });
});

describe("the pack", () => {
  it("stands on its plot at the charge it has, with the reserve hatched", () => {
    const { zones, handles, words: said } = packVoltagePlot(of({ "pack.chargePercent": 70 }), null, 2).state;
    expect(zones?.[0]?.x).toEqual([null, 20]);
    expect(handles?.[0]).toMatchObject({ path: "pack.chargePercent", x: 70 });
    // 6 x 3.9089 V: Ai et al., J. Electrochem. Soc. 167 (2020) 013512.
    expect(plain(said)).toMatch(/At 70 % the pack rests at 23\.5 V/);
  });

  it("needs a growing share of its voltage for the same speed, until it can't", () => {
    const { rows, words: said } = packMoments(of(), 2).state;
    const shares = rows.map(({ cells }) => Number.parseInt(cells[2] ?? "", 10));
    expect(shares[0]!).toBeLessThan(shares[1]!);
    expect(plain(rows.at(-1)?.cells[2])).toBe("more than all");
    expect(plain(said)).toMatch(/^At 20 % the speed can't be held/);
    expect(plain(packMoments(of({ "modes.2.headRpm": 2900 }), 2).state.words)).toMatch(/Not even a full pack/);
  });

  it("loses more when cold and when old", () => {
    expect(coldFactor(25)).toBe(1);
    expect(coldFactor(0)).toBeGreaterThan(1.5);
    const [now, old] = coldPlot(of(), 2, 2).state.curves;
    expect(old!.ys[0]!).toBeGreaterThan(now!.ys[0]!);
    expect(coldPlot(of(), 1, 2).state.curves).toHaveLength(1);
  });

  it("with twice the cells and half the Kv carries half the current", () => {
    const { rows } = cellsTable(of(), 12, 2).state;
    expect(plain(rows[0]?.cells.join(" "))).toBe("1,120 rpm/V 560 rpm/V");
    const [six, twelve] = (rows[1]?.cells ?? []).map(Number.parseFloat);
    expect(six! / twelve!).toBeCloseTo(2, 1);
    expect(words(cellsPlot(of(), 12, 2))).toMatch(/With 6 cells, \d+ W are lost .* With 12 cells and the Kv to match/);
    expect(words(cellsPlot(of({ "modes.2.headRpm": 6000 }), 12, 2))).toMatch(/can't be held/);
    // The curves go as far as the machine beside it, or their words would stand over its mark.
    const { curves, points } = cellsPlot(of({ "pack.cells": 14 }), 16, 2).state;
    expect(points?.[1]?.x).toBe(16);
    for (const { xs } of curves) expect(xs[xs.length - 1]).toBe(16);
  });
});

describe("the blades", () => {
  it("say their energy and pull, with the limit hatched", () => {
    for (const plot of [energyPlot(of(), 2), pullPlot(of(), 2)]) expect(plot.state.zones?.[0]?.x).toEqual([2800, null]);
    expect(words(energyPlot(of(), 2))).toMatch(/At half that speed it would be \d+ J: a quarter/);
    expect(words(pullPlot(of({ "mainRotor.ratedRpm": null }), 2))).toMatch(/prints no limit/);
    expect(energyPlot(of({ "mainRotor.ratedRpm": null }), 2).state.zones).toEqual([]);
    // m r w² / g with 76 g, 255 mm and 2450 rpm.
    expect(pullMass(of(), 2)).toBeCloseTo((0.076 * 0.255 * ((2450 * Math.PI) / 30) ** 2) / 9.80665, 9);
  });

  it("have limits of their own: those of the other rotors stand beside", () => {
    const { points, words: said } = limitPlot(of()).state;
    expect(points?.map(({ y }) => Math.round(y))).toEqual([4800, 2200, 2800]);
    expect(plain(said)).toMatch(/limit of 2,800 rpm means tips at 142 m\/s/);
    expect(words(limitPlot(of({ "mainRotor.ratedRpm": null })))).toMatch(/no printed limit/);
  });

  it("leave no time to step aside nearby", () => {
    // 94 m/s: v = w R with 1850 rpm and 485 mm.
    expect(timeToReach(of(), 10)).toBeCloseTo(10 / ((1850 * Math.PI * 0.97) / 60), 9);
    expect(words(distancePlot(of(), 10))).toMatch(/10 m away after 0\.11 s\. .* doesn't let you step aside/);
    expect(words(distancePlot(of(), 40))).toMatch(/if you saw it coming/);
  });
});
