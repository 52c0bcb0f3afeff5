import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { gearMap } from "#figures/gear-map";
import { gearQuantities } from "#figures/gearing";
import { machineWith } from "./machines.ts";

const trainer = figuresOf(machineWith({}));

describe("the map of gears", () => {
  it("lies around the pair that is fitted and holds pairs that a machine can have", () => {
    for (const [pinion, main] of [
      [5, 10],
      [13, 120],
      [80, 500],
    ] as const) {
      const machine = machineWith({ "gears.pinionTeeth": pinion, "gears.mainTeeth": main });
      const { pinions, mains, cells } = gearMap(figuresOf(machine), 0, "speed", 0.75);
      expect([pinions.includes(pinion), mains.includes(main)]).toEqual([true, true]);
      expect(cells).toHaveLength(pinions.length * mains.length);
      const [last] = cells.slice(-1);
      expect(last).toMatchObject({ pinionTeeth: pinions.at(-1), mainTeeth: mains.at(-1) });
      expect([pinions[0]! >= 5, pinions.at(-1)! <= 80, mains[0]! >= 10, mains.at(-1)! <= 500]).toEqual([
        true,
        true,
        true,
        true,
      ]);
    }
  });

  it("lets those fit whose shafts stand as far apart as the slot allows", () => {
    // Any gear handbook: a = m (z1 + z2) / 2; with module 0.7 a tooth more is 0.35 mm, so 0.75 mm are two teeth.
    const { cells } = gearMap(trainer, 0, "speed", 0.75);
    for (const { pinionTeeth, mainTeeth, fits, shiftMm } of cells) {
      const more = pinionTeeth + mainTeeth - 133;
      expect(shiftMm).toBeCloseTo(0.35 * more, 9);
      expect(fits).toBe(Math.abs(more) <= 2);
    }
    expect(gearMap(trainer, 0, "speed", 3).cells.every(({ fits }) => fits)).toBe(true);
  });

  it("gives pairs of one ratio the same figures", () => {
    // 22/11 = 24/12 = 2.
    const figures = figuresOf(machineWith({ "gears.pinionTeeth": 12, "gears.mainTeeth": 24 }));
    for (const quantity of gearQuantities) {
      const { cells } = gearMap(figures, 0, quantity, 1);
      const at = (p: number, m: number) => cells.find((c) => c.pinionTeeth === p && c.mainTeeth === m)!.value;
      expect(at(11, 22)).toBe(at(12, 24));
    }
    const { cells } = gearMap(trainer, 0, "speed", 1);
    expect(new Set(cells.map(({ value }) => value)).size).toBeGreaterThan(60);
  });

  it("marks what stands against a pair, the worst first", () => {
    const marks = (quantity: (typeof gearQuantities)[number], figures = trainer) => {
      const { cells } = gearMap(figures, 2, quantity, 0.75);
      return (pinion: number) => cells.find((c) => c.pinionTeeth === pinion && c.mainTeeth === 120)!.mark;
    };
    const speed = marks("speed");
    expect([speed(9), speed(11), speed(13)]).toEqual(["no-hover", "short", null]);
    // The usable band ends at 60 and 90 %: 13 teeth ask 81 % for 2450 rpm, 12 teeth 88 %, 17 teeth 62 %.
    const throttle = marks("throttle", figuresOf(machineWith({ "controller.usableHighPercent": 85 })));
    expect([throttle(9), throttle(12), throttle(13)]).toEqual(["no-hover", "above-band", null]);
    const low = marks("throttle", figuresOf(machineWith({ "controller.usableLowPercent": 65 })));
    expect([low(16), low(17)]).toEqual([null, "below-band"]);
    // 13 teeth can turn about 2,900 rpm with nothing to lift.
    const limited = (ratedRpm: number | null) =>
      marks("tip", figuresOf(machineWith({ "mainRotor.ratedRpm": ratedRpm })));
    expect([limited(2500)(13), limited(3500)(13), limited(null)(13)]).toEqual(["over-limit", null, null]);
    const motor = marks("speed", figuresOf(machineWith({ "motor.ratedRpm": 22_000 })));
    expect([motor(13), motor(14)]).toEqual(["motor-fast", null]);
  });
});
