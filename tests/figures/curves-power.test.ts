/** Power asked and given, against the closed form of a motor on a resistance and against the ceilings. */
import { describe, expect, it } from "vitest";
import { mostPower, pitchCurve, powerAt, powerCurves } from "#figures/curves-power";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { rpm } from "#model/constants";
import type { Powertrain } from "#model/powertrain";
import { valueAt } from "#plots/table";

// Maximum power transfer: V² / 4R at half the no-load speed. OpenStax University Physics vol. 2, ch. 10 (from memory).
it("is greatest at half the no-load speed, and V² / 4R there", () => {
  const train: Powertrain = {
    openVoltage: 24,
    packResistance: 0.03,
    motorResistance: 0.05,
    controllerResistance: 0.02,
    torqueConstant: 0.01,
    noLoadCurrent: 0,
    gearRatio: 10,
    meshEfficiency: 1,
  };
  const free = 24 / (0.01 * 10) / rpm;
  expect(mostPower(train, free / 2)).toBeCloseTo(24 ** 2 / 0.4, 6);
  expect(mostPower(train, 0.45 * free)).toBeLessThan(24 ** 2 / 0.4);
  expect(mostPower(train, 0.55 * free)).toBeLessThan(24 ** 2 / 0.4);
  expect([mostPower(train, free), mostPower(train, 2 * free), mostPower(train, 0)]).toEqual([0, 0, 0]);
});

describe.each(demos.map((machine) => [machine.name, machine] as const))("power of the %s", (_, machine) => {
  const figures = figuresOf(machine);

  it("asked and given meet at the ceiling", () => {
    machine.modes.forEach((_, mode) => {
      const ceiling = figures.number("ceiling-full-pitch", mode)!;
      const asked = figures.rig.load("full-pitch", mode)(ceiling * rpm)! * ceiling * rpm;
      expect(mostPower(figures.rig.train, ceiling) / asked).toBeCloseTo(1, 5);
    });
  });

  it("against pitch and against speed passes through the figure of full pitch", () => {
    const full = figures.number("full-pitch-power", 1)!;
    const { pitches, powers } = pitchCurve(figures, 1);
    const { collectiveMaxDeg, headRpm } = machine.modes[1]!;
    expect(valueAt({ xs: pitches, ys: powers }, collectiveMaxDeg)! / full).toBeCloseTo(1, 2);
    const { speeds, asked } = powerCurves(figures, 1, 2 * headRpm);
    expect(valueAt({ xs: speeds, ys: asked }, headRpm)! / full).toBeCloseTo(1, 2);
    expect(powerAt(figures, 1, 1).full! / full).toBeCloseTo(1, 9);
  });
});
