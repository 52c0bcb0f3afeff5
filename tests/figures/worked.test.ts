import { describe, expect, it } from "vitest";
import { catalogue, type QuantityName, quantityNames } from "#figures/catalogue";
import { type Figures, figuresOf } from "#figures/figures";
import { fieldName, workedOf } from "#figures/worked";
import { demos } from "#machine/demos";
import { findField } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { bladePull, rotorEnergy, tipMach, tipSpeed } from "#model/blades";
import { flightTime } from "#model/endurance";
import { gearRatio, tailSpeed, twoStageRatio } from "#model/gears";
import { speedHeadroom } from "#model/headroom";
import { moistDensity } from "#model/moist";
import { noLoadSpeed } from "#model/motor";
import { openVoltage, packResistance } from "#model/pack";
import { electricalSpeed } from "#model/poles";
import { ceilingSpeed, currentAtLoad, dutyToHold, packCurrent } from "#model/powertrain";
import { learnedReference, setSpeed, throttleForSpeed, wholeThrottle } from "#model/reference";
import { learnedAt, machineWith } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

/** One of each unit in SI: by definition. */
const si: Readonly<Record<string, number>> = {
  rpm,
  "rpm/V": rpm,
  percent: 0.01,
  mΩ: 1e-3,
  mAh: 3.6,
  min: 60,
};
const inSi = (value: number, unit: string): number => value * (si[unit] ?? 1);

/** The relation behind each figure that can be opened. */
const relations = {
  "gear-ratio": gearRatio,
  "pack-open-voltage": openVoltage,
  "pack-resistance": packResistance,
  "air-density": moistDensity,
  "no-load-head-speed": noLoadSpeed,
  "learned-motor-speed": learnedReference,
  "learned-head-speed": setSpeed,
  "usable-low-head-speed": setSpeed,
  "usable-high-head-speed": setSpeed,
  throttle: throttleForSpeed,
  "throttle-entered": wholeThrottle,
  "head-speed-entered": setSpeed,
  "ceiling-hover": ceilingSpeed,
  "ceiling-full-pitch": ceilingSpeed,
  "speed-headroom-hover": speedHeadroom,
  "speed-headroom-full-pitch": speedHeadroom,
  "duty-hover": dutyToHold,
  "duty-full-pitch": dutyToHold,
  "electrical-speed": electricalSpeed,
  "tail-rotor-speed": tailSpeed,
  "tip-speed": tipSpeed,
  "tip-mach": tipMach,
  "blade-pull": bladePull,
  "rotor-energy": rotorEnergy,
  "hover-motor-current": currentAtLoad,
  "hover-pack-current": packCurrent,
  "hover-duration": flightTime,
  "full-pitch-pack-current": packCurrent,
  "full-pitch-motor-current": currentAtLoad,
  "full-pitch-duration": flightTime,
} as const satisfies Partial<Record<QuantityName, unknown>>;

type Opened = keyof typeof relations;
const opened = Object.keys(relations) as Opened[];

/** What the relation gives with the very terms that are shown, in SI; null where the number can't be opened. */
function recomputed(figures: Figures, name: Opened, mode: number): number | null {
  const work = workedOf(figures, name, mode);
  if (!work) return null;
  const values = Object.fromEntries(
    Object.entries(work.terms).map(([key, { value, unit }]) => [key, inSi(value, unit)]),
  );
  const two = name === "gear-ratio" && figures.machine.gears.secondStage !== null;
  const relation = (two ? twoStageRatio : relations[name]) as unknown as (
    values: Record<string, number>,
  ) => number | null;
  return relation(values);
}

const machines: readonly (readonly [string, Machine])[] = [
  ...demos.map((demo) => [demo.name, demo] as const),
  ["a stale machine", machineWith({ "gears.pinionTeeth": 14, "pack.chargePercent": 63 }, learnedAt(15_100, 55))],
  ["two stages", machineWith({ "gears.secondStage": { driverTeeth: 30, drivenTeeth: 40 } })],
  ["a hover that loses its speed", machineWith({ "modes.0.headRpm": 2750 })],
];

describe("an opened number", () => {
  it.each(machines)("on %s: the relation with the terms shown gives the figure", (_, machine) => {
    const figures = figuresOf(machine);
    let count = 0;
    for (const name of opened) {
      for (const mode of catalogue[name].perMode ? machine.modes.keys() : [0]) {
        const value = figures.number(name, mode);
        const result = recomputed(figures, name, mode);
        if (value === null) expect([name, result]).toEqual([name, null]);
        if (value === null || result === null) continue;
        count++;
        const figure = inSi(value, catalogue[name].unit);
        expect([name, result / figure]).toEqual([name, expect.closeTo(1, 7)]);
      }
    }
    expect(count).toBeGreaterThan(30);
  });

  it("is every figure that one relation stands behind, and no other", () => {
    const figures = figuresOf(demos[0]!);
    const all = quantityNames.filter((name) => workedOf(figures, name, 0) !== null);
    expect(all.sort()).toEqual([...opened].sort());
  });

  it("has a title, a formula, what it assumes and its source", () => {
    const figures = figuresOf(demos[0]!);
    for (const name of opened) {
      const work = workedOf(figures, name, 0)!;
      expect(work.title).toBe(catalogue[name].title);
      expect([name, work.source.length > 3, work.assumes.endsWith(".")]).toEqual([name, true, true]);
      for (const { symbol } of Object.values(work.terms)) expect(work.general).toContain(symbol);
    }
  });

  it("writes the reader's numbers in place of the symbols", () => {
    const figures = figuresOf(demos[0]!);
    for (const name of opened) {
      const work = workedOf(figures, name, 0)!;
      const texts = Object.fromEntries(Object.keys(work.terms).map((key, i) => [key, `\\text{term ${i}}`]));
      const written = work.withNumbers(texts, "\\text{result}");
      for (const text of [...Object.values(texts), "\\text{result}"]) expect(written).toContain(text);
    }
  });

  it("leads to inputs and figures that exist", () => {
    for (const [, machine] of machines) {
      const figures = figuresOf(machine);
      for (const name of opened) {
        for (const { path, quantity } of Object.values(workedOf(figures, name, 0)?.terms ?? {})) {
          expect(path === null || findField(path) !== null).toBe(true);
          expect(quantity === null || quantity in catalogue).toBe(true);
          expect(path === null || quantity === null).toBe(true);
          expect(quantity).not.toBe(name);
        }
      }
    }
  });

  it("takes a term that is another figure from that figure", () => {
    for (const [, machine] of machines) {
      const figures = figuresOf(machine);
      for (const name of opened) {
        for (const { quantity, value, unit } of Object.values(workedOf(figures, name, 0)?.terms ?? {})) {
          if (quantity === null) continue;
          const figure = figures.number(quantity, 0)!;
          const shown = inSi(value, unit) / inSi(figure, catalogue[quantity].unit);
          expect([name, quantity, shown]).toEqual([name, quantity, expect.closeTo(1, 9)]);
        }
      }
    }
  });

  it("stays shut where there is no figure", () => {
    const fast = figuresOf(machineWith({ "modes.0.headRpm": 3300 }));
    expect(workedOf(fast, "duty-hover", 0)).toBeNull();
    expect(workedOf(fast, "hover-duration", 0)).toBeNull();
    const dead = figuresOf(
      machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 }),
    );
    for (const name of ["throttle", "learned-motor-speed", "ceiling-hover", "speed-headroom-hover"] as const) {
      expect([name, workedOf(dead, name, 0)]).toEqual([name, null]);
    }
  });
});

describe("the terms of a number", () => {
  const term = (machine: Machine, name: QuantityName, key: string) =>
    workedOf(figuresOf(machine), name, 0)!.terms[key]!;

  it("say what they are, and where the reader changes them", () => {
    expect(term(demos[0]!, "gear-ratio", "pinionTeeth")).toEqual({
      name: "teeth of the pinion",
      symbol: "z_1",
      value: 13,
      unit: "",
      path: "gears.pinionTeeth",
      quantity: null,
    });
    expect(fieldName("gears.pinionTeeth")).toBe("Pinion");
  });

  it("of a hover that ends at the reserve: the charge above 20 %", () => {
    expect(term(demos[0]!, "hover-duration", "used").value).toBeCloseTo(80, 9);
  });

  it("of a hover that ends where its speed is lost: the charge down to there, at its own mean current", () => {
    const machine = machineWith({ "modes.0.headRpm": 2750 });
    const used = term(machine, "hover-duration", "used").value;
    expect(used).toBeLessThan(79);
    // At what is left, full duty just holds the hover.
    const end = figuresOf(machineWith({ "pack.chargePercent": 100 - used }, machine));
    expect(end.number("speed-headroom-hover", 0)).toBeCloseTo(0, 3);
    const now = figuresOf(machine).number("hover-pack-current", 0)!;
    expect(term(machine, "hover-duration", "current").value).toBeGreaterThan(now);
  });

  it("of the air give the pressure of the standard atmosphere at 1000 m: 89,874.6 Pa", () => {
    // ISO 2533:1975, tables 5 and 6, at the geopotential height of 1000 m: 1000.16 m above the sea.
    const machine = machineWith({ "place.elevationM": 1000.157 });
    expect(Math.abs(term(machine, "air-density", "pressure").value - 89_874.6)).toBeLessThan(0.6);
  });
});
