import { describe, expect, it } from "vitest";
import { carriedByPinion, carriedByThrottle, gripAt, leastCurrent } from "#figures/curves-band";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { machineWith } from "./machines.ts";

const trainer = figuresOf(machineWith({}));

/** A list read at a place between two others. */
function at(xs: readonly number[], ys: readonly (number | null)[], x: number): number {
  const i = xs.findIndex((each) => each >= x);
  const [a, b] = [xs[i - 1]!, xs[i]!];
  return ys[i - 1]! + ((ys[i]! - ys[i - 1]!) * (x - a)) / (b - a);
}

describe("currents against throttle", () => {
  it("are those of the modes, in hover and at full pitch", () => {
    for (const machine of demos) {
      const figures = figuresOf(machine);
      for (const load of ["hover", "full-pitch"] as const) {
        const curve = carriedByThrottle(figures, load, 1)!;
        const own = figures.bearings.point(load, 1)!;
        const throttle = figures.number("throttle", 1)!;
        // The curve reads the rotor from a map, to about 1 %, and is straight between its points.
        expect(at(curve.throttles, curve.motor, throttle) / own.motorCurrent).toBeCloseTo(1, 1);
        expect(Math.abs(at(curve.throttles, curve.pack, throttle) / own.packCurrent - 1)).toBeLessThan(0.02);
        expect(Math.abs(at(curve.throttles, curve.controllerHeat, throttle) / own.controllerHeat - 1)).toBeLessThan(
          0.04,
        );
      }
    }
  });

  it("keep the motor's above the pack's, and the ripple below half of it", () => {
    // Ideal chopper: pack current is duty times motor current; rms ripple is at most half the load current.
    const { motor, pack, buffer } = carriedByThrottle(trainer, "hover", 0)!;
    for (const [i, current] of motor.entries()) {
      if (current === null) continue;
      expect(pack[i]!).toBeLessThanOrEqual(current * (1 + 1e-9));
      expect(buffer[i]!).toBeLessThanOrEqual(current / 2);
      const duty = pack[i]! / current;
      expect(buffer[i]! ** 2).toBeCloseTo(current * current * duty * (1 - duty), 6);
    }
  });

  it("rise with throttle, and end where the motor gives out", () => {
    const { throttles, motor } = carriedByThrottle(trainer, "full-pitch", 2)!;
    expect(throttles).toEqual([...throttles].sort((a, b) => a - b));
    expect(throttles.at(-1)!).toBeGreaterThan(98);
    expect(throttles.at(-1)!).toBeLessThanOrEqual(105);
    expect(motor.at(-1)).toBeNull();
  });

  it("have their least in hover at a turn, and at full pitch at the slow end", () => {
    const hover = carriedByThrottle(trainer, "hover", 0)!;
    const least = leastCurrent(hover)!;
    expect(least.turns).toBe(true);
    for (const current of hover.motor) if (current !== null) expect(current).toBeGreaterThanOrEqual(least.current);
    expect(at(hover.throttles, hover.motor, least.throttle - 15)).toBeGreaterThan(least.current);
    expect(at(hover.throttles, hover.motor, least.throttle + 15)).toBeGreaterThan(least.current);
    expect(leastCurrent(carriedByThrottle(trainer, "full-pitch", 0)!)).toMatchObject({ turns: false });
  });

  it("are not there for a machine that nothing carries", () => {
    expect(carriedByThrottle(figuresOf(machineWith({ "airframe.massG": 20_000 })), "hover", 0)).toBeNull();
    expect(
      leastCurrent({ throttles: [1], motor: [null], pack: [null], buffer: [null], controllerHeat: [null] }),
    ).toBeNull();
  });
});

describe("currents against the pinion", () => {
  const carried = carriedByPinion(trainer, 0);

  it("are the machine's own at the pinion that is fitted", () => {
    const i = carried.pinions.indexOf(13);
    const own = trainer.bearings.point("hover", 0)!;
    expect(carried.motor[i]).toBeCloseTo(own.motorCurrent, 9);
    expect(carried.pack[i]).toBeCloseTo(own.packCurrent, 9);
    expect(carried.motorHeat[i]).toBeCloseTo(own.copperHeat + own.noLoadHeat, 9);
    expect(carried.throttles[i]! / trainer.number("throttle", 0)!).toBeCloseTo(1, 6);
  });

  it("grow with the teeth as the torque law says: what is above the no-load current goes as one over the ratio", () => {
    // I - I0 = Q / (k G eta): M. Drela, First-Order DC Electric Motor Model, MIT (2007).
    const above = (teeth: number) => carried.motor[carried.pinions.indexOf(teeth)]! - 2.4;
    expect(above(18) / above(13)).toBeCloseTo(18 / 13, 9);
  });
});

describe("what the governor has to work with", () => {
  it("is one of so many parts of the no-load speed, an electrical turn, and half J omega squared", () => {
    const grip = gripAt(trainer, 1500);
    expect(grip.step).toBeCloseTo(trainer.number("no-load-head-speed")! / 1024, 9);
    expect(grip.stepShare).toBeCloseTo((100 * grip.step!) / 1500, 12);
    // f = n p / 120: 1500 rpm times 120/13, ten poles; the period is one over it.
    expect(grip.reading).toBeCloseTo(1000 / ((1500 * (120 / 13) * 10) / 120), 9);
    const own = gripAt(trainer, trainer.number("set-head-speed", 1)!);
    expect(own.energy).toBeCloseTo(trainer.number("rotor-energy", 1)!, 9);
    expect(gripAt(trainer, 3000).energy! / grip.energy!).toBeCloseTo(4, 9);
  });
});
