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
});
