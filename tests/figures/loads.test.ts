import { describe, expect, it } from "vitest";
import { bandOf } from "#figures/bands";
import { doubtedFigures, figuresOf } from "#figures/figures";
import { beside } from "#figures/loads";
import { demos } from "#machine/demos";
import { withValue } from "#machine/paths";

describe("a load beside one that is known", () => {
  it("is the known one times a ratio that is asked for at few speeds", () => {
    let asked = 0;
    const moved = beside(
      (speed) => 2e-4 * speed * speed,
      (speed) => {
        asked += 1;
        return 2.1e-4 * speed ** 2.01;
      },
    );
    // Closed form: the ratio is 1.05 w^0.01; a straight line over 30 % is 1.2e-5 below it at most.
    for (let speed = 100; speed <= 300; speed += 0.5) {
      expect(Math.abs(moved(speed)! / (2.1e-4 * speed ** 2.01) - 1)).toBeLessThan(2e-5);
    }
    expect(asked).toBeLessThan(8);
  });

  it("asks the load itself where the known one ends, or its own does between two points", () => {
    const ends = beside(
      (speed) => (speed < 150 ? null : speed),
      (speed) => (speed < 140 ? null : 2 * speed),
    );
    expect(ends(145)).toBe(290);
    expect(ends(130)).toBeNull();
    expect(ends(200)).toBeCloseTo(400, 9);
    expect(ends(0)).toBeNull();
  });

  it.each(demos.map((machine) => [machine.name, machine] as const))(
    "gives the ceilings of %s, moved, to 3e-4",
    (_, machine) => {
      const { rig } = figuresOf(machine);
      for (const [path, factor] of [
        ["mainRotor.chordMm", 1.03],
        ["mainRotor.diameterMm", 0.99],
        ["tailRotor.chordMm", 0.95],
        ["airframe.massG", 1.05],
        ["modes.0.collectiveMaxDeg", 1.04],
      ] as const) {
        const value = path
          .split(".")
          .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], machine) as number;
        const moved = withValue(machine, path, value * factor);
        const [quick, exact] = [doubtedFigures(moved, { of: rig }), figuresOf(moved)];
        for (const name of ["ceiling-hover", "ceiling-full-pitch", "learning-head-speed"] as const) {
          expect(quick.number(name)! / exact.number(name)!).toBeCloseTo(1, 3.5);
        }
      }
    },
  );

  it("leaves the bands as they are: none for what the doubts don't touch, and some for the ceilings", () => {
    const figures = figuresOf(demos[0]!);
    expect(bandOf(figures, "gear-ratio")?.uncertainty).toBe(0);
    expect(bandOf(figures, "ceiling-hover")?.uncertainty).toBeGreaterThan(20);
  });
});
