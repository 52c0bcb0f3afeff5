import { describe, expect, it } from "vitest";
import { ASKED, createControl, DUTY, HOLDS, MOTOR, NOW, READING, TURNED } from "#model/flight/control";
import type { Throttle } from "#model/flight/orders";
import { sample, withParts } from "./sample.ts";

/** Samples a controller whose motor turns at a speed of its own, once each interval. */
function watch(
  orders: readonly Throttle[],
  speedAt: (t: number) => number,
  until: number,
  machine = sample,
  begin = 0,
) {
  const interval = 0.01;
  const control = createControl(machine, orders, interval, speedAt(0), begin);
  let angle = 0;
  const list: { time: number; duty: number; asked: number; holds: number; reading: number }[] = [];
  for (let k = 0; k * interval < until; k++) {
    const time = k * interval;
    control.port[NOW] = time;
    control.port[TURNED] = angle;
    control.port[MOTOR] = speedAt(time);
    control.sample();
    list.push({
      time,
      duty: control.port[DUTY]!,
      asked: control.port[ASKED]!,
      holds: control.port[HOLDS]!,
      reading: control.port[READING]!,
    });
    angle += speedAt(time) * interval;
  }
  return list;
}

describe("controller", () => {
  it("ramps an open-loop duty evenly and keeps it", () => {
    const list = watch([{ from: 0, kind: "duty", duty: 0.5, ramp: 2 }], () => 0, 3);
    expect(list[100]!.duty).toBeCloseTo(0.25, 2);
    expect(list.at(-1)!.duty).toBe(0.5);
    expect(list.at(-1)!.asked).toBe(0);
  });

  it("asks for a speed that rises over the soft start: the reference in its whole time", () => {
    const { reference, startRamp } = sample.controller;
    const list = watch([{ from: 0, kind: "speed", speed: reference / 2, ramp: "start" }], () => 0, startRamp);
    const asked = (t: number) => list.findLast((one) => one.time <= t)!.asked;
    expect(asked(startRamp / 4) / (reference / 4)).toBeCloseTo(1, 1);
    expect(list.find((one) => one.holds === 1)!.time).toBeCloseTo(startRamp / 2, 1);
  });

  it("comes back from the motor's own speed in the bail-out ramp", () => {
    const speed = 1500;
    const list = watch(
      [
        { from: 0, kind: "off" },
        { from: 1, kind: "speed", speed, ramp: "bail-out" },
      ],
      () => 500,
      4,
    );
    const at = (t: number) => list.findLast((one) => one.time <= t + 1e-9)!;
    expect(at(0.5).duty).toBe(0);
    expect(at(1 + sample.controller.bailOutRamp / 2).asked).toBeCloseTo(1000, -2);
    expect(list.find((one) => one.holds === 1)!.time).toBeCloseTo(1 + sample.controller.bailOutRamp, 1);
  });

  it("gives duty for the speed that is missing, against the reference, and ends at its limits", () => {
    const { reference, proportionalGain } = sample.controller;
    const machine = withParts({ controller: { integralGain: 0, dutySteps: 1e6 } });
    const set = 0.6 * reference;
    const list = watch(
      [{ from: 0, kind: "speed", speed: set, ramp: "none" }],
      () => set - 0.02 * reference,
      0.2,
      machine,
    );
    expect(list[5]!.duty).toBeCloseTo(0.02 * proportionalGain, 3);
    const full = watch([{ from: 0, kind: "speed", speed: set, ramp: "none" }], () => 0.1 * set, 0.2, machine);
    expect(full[5]!.duty).toBe(1);
  });

  it("begins a hover with the duty that it was given", () => {
    const set = 1980;
    const list = watch([{ from: 0, kind: "speed", speed: set, ramp: "none" }], () => set, 0.05, sample, 0.68);
    expect(list[0]!.duty).toBeCloseTo(0.68, 2);
  });

  it("does nothing before its first order", () => {
    expect(watch([{ from: 1, kind: "duty", duty: 0.5, ramp: 0 }], () => 0, 0.5).every((one) => one.duty === 0)).toBe(
      true,
    );
  });

  it("forgets the duty of before when it is off: what comes after begins from nothing", () => {
    const set = 1980;
    const orders: Throttle[] = [
      { from: 0, kind: "speed", speed: set, ramp: "none" },
      { from: 0.5, kind: "off" },
      { from: 1, kind: "speed", speed: set, ramp: "none" },
    ];
    const list = watch(orders, () => set, 1.1, sample, 0.68);
    const at = (t: number) => list.findLast((one) => one.time <= t + 1e-9)!;
    expect(at(0.4).duty).toBeCloseTo(0.68, 2);
    expect(at(0.7)).toMatchObject({ duty: 0, asked: 0, holds: 0 });
    expect(at(1).duty).toBeLessThan(0.01);
    expect(at(1)).toMatchObject({ asked: set, holds: 1 });
  });

  it("comes down in the bail-out ramp to a speed below the motor's, and holds nothing before it is there", () => {
    const ramp = sample.controller.bailOutRamp;
    const orders: Throttle[] = [
      { from: 0, kind: "speed", speed: 2000, ramp: "none" },
      { from: 1, kind: "speed", speed: 1500, ramp: "bail-out" },
    ];
    const list = watch(orders, () => 2000, 4);
    const at = (t: number) => list.findLast((one) => one.time <= t + 1e-9)!;
    expect(at(0.5)).toMatchObject({ asked: 2000, holds: 1 });
    expect(at(1 + ramp / 2).holds).toBe(0);
    expect(at(1 + ramp / 2).asked).toBeCloseTo(1750, -1);
    expect(at(1 + ramp + 0.1)).toMatchObject({ asked: 1500, holds: 1 });
  });

  it("asks for a speed at once where no ramp is wanted", () => {
    const list = watch([{ from: 0.5, kind: "speed", speed: 1500, ramp: "none" }], () => 500, 0.6);
    expect(list.find((one) => one.time >= 0.5 - 1e-9)).toMatchObject({ asked: 1500, holds: 1 });
  });

  it("ramps from the duty that is on, in the nearest of its steps", () => {
    const machine = withParts({ controller: { dutySteps: 10 } });
    const orders: Throttle[] = [
      { from: 0, kind: "duty", duty: 0.76, ramp: 0 },
      { from: 1, kind: "duty", duty: 0.38, ramp: 1 },
    ];
    const list = watch(orders, () => 0, 3, machine);
    const at = (t: number) => list.findLast((one) => one.time <= t + 1e-9)!.duty;
    expect(at(0.5)).toBe(0.8);
    // From 0.8 to 0.38 in a second: 0.59 at half of it.
    expect(at(1.5)).toBe(0.6);
    expect(at(2.5)).toBe(0.4);
  });

  it("works by the speed that it reads, which is late", () => {
    const list = watch([{ from: 0, kind: "speed", speed: 1500, ramp: "none" }], (t) => 500 + 1000 * t, 0.5);
    const late = list.slice(10).map((one) => 500 + 1000 * one.time - one.reading);
    // Half an electrical turn at least, of 4 pi / 10 at 500 to 1000 rad/s; a count of the clock is 0.4 rad/s at most.
    expect(Math.min(...late)).toBeGreaterThan(1000 * 0.5 * ((4 * Math.PI) / 10 / 1000) - 0.5);
    expect(Math.max(...late)).toBeLessThan(1000 * 1.5 * ((4 * Math.PI) / 10 / 500) + 0.5);
  });
});
