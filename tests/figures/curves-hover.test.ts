/** Hover over head speed, against momentum theory, the cube law, and the figures that are worked out by themselves. */
import { describe, expect, it } from "vitest";
import { hoverCurve, longestHover, pitchEndsAt } from "#figures/curves-hover";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { withValue } from "#machine/paths";
import { valueAt } from "#plots/table";

describe.each(demos.map((machine) => [machine.name, machine] as const))("hover curve of the %s", (_, machine) => {
  const figures = figuresOf(machine);
  const curve = hoverCurve(figures)!;

  it("passes through the figures of the modes", () => {
    machine.modes.forEach(({ headRpm }, mode) => {
      for (const [ys, name] of [
        [curve.power, "hover-power"],
        [curve.minutes, "hover-duration"],
        [curve.motorCurrent, "hover-motor-current"],
        [curve.packCurrent, "hover-pack-current"],
      ] as const) {
        const read = valueAt({ xs: curve.speeds, ys }, headRpm)!;
        expect(read / figures.number(name, mode)! - 1, `${name} of mode ${mode}`).toBeCloseTo(0, 1.7);
      }
    });
  });

  // Leishman, Principles of Helicopter Aerodynamics, ch. 2: no rotor hovers with less than W sqrt(W / 2 rho A).
  it("never carries the weight with less than momentum theory asks", () => {
    const weight = (machine.airframe.massG / 1000) * 9.80665;
    const area = (Math.PI * (machine.mainRotor.diameterMm / 1000) ** 2) / 4;
    const least = weight * Math.sqrt(weight / (2 * figures.rig.air.density * area));
    for (const watts of curve.carrying) if (watts !== null) expect(watts).toBeGreaterThan(least);
  });

  // The same source, ch. 2: profile power goes with the cube of tip speed; drag falls with Reynolds number, most on small blades.
  it("turns the blades with about the cube of head speed", () => {
    const at = (speed: number) => valueAt({ xs: curve.speeds, ys: curve.turning }, speed)!;
    const top = curve.speeds.at(-1)!;
    const ratio = at(top) / at(0.6 * top);
    expect(Math.log(ratio) / Math.log(1 / 0.6)).toBeGreaterThan(2.4);
    expect(Math.log(ratio) / Math.log(1 / 0.6)).toBeLessThan(3.02);
  });

  it("begins where hovering begins", () => {
    const slow = (share: number) =>
      figuresOf(withValue(machine, "modes.0.headRpm", Math.round(curve.speeds[0]! * share))).number(
        "hover-motor-current",
        0,
      );
    expect(slow(1.015)).not.toBeNull();
    expect(slow(0.97)).toBeNull();
  });

  it("has its longest hover where the model's own duration is longest", () => {
    const { speed, minutes } = longestHover(figures)!;
    const at = (rpm: number) => figuresOf(withValue(machine, "modes.0.headRpm", rpm)).number("hover-duration", 0) ?? 0;
    for (let rpm = curve.speeds[0]! + 1; rpm < curve.speeds.at(-1)!; rpm += 60) {
      expect(at(rpm), `${rpm} rpm against ${speed}`).toBeLessThanOrEqual(minutes * 1.03);
    }
  });

  it("knows where a mode's pitch ends", () => {
    const ends = pitchEndsAt(figures, 0)!;
    const collective = figuresOf(withValue(machine, "modes.0.headRpm", ends)).number("hover-collective", 0);
    // Far from stall the pitch for a thrust and the thrust of a pitch are one relation read both ways.
    expect(collective).toBeCloseTo(machine.modes[0]!.collectiveMaxDeg, 0);
  });
});

it("is not there for a machine that its rotor never carries", () => {
  const heavy = figuresOf(withValue(demos[1]!, "airframe.massG", 30_000));
  expect([hoverCurve(heavy), longestHover(heavy), pitchEndsAt(heavy, 0)]).toEqual([null, null, null]);
});
