import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import type { Collective } from "#model/flight/orders";
import { CLIMB, COLLECTIVE, createPilot, HEIGHT, hoverCollective, NOW, RATE, TICK } from "#model/flight/pilot";
import { fly } from "#model/flight/run";
import { drawn, hover } from "#model/flight/scenarios";
import { sample, withParts } from "./sample.ts";

const speed = 220;

/** The hand's collective at the ends of ticks of 10 ms. */
function hand(orders: readonly Collective[], until: number, start = 0): { time: number; collective: number }[] {
  const pilot = createPilot(sample, orders, start, speed);
  pilot.port[TICK] = 0.01;
  return Array.from({ length: Math.round(until / 0.01) }, (_, k) => {
    pilot.port[NOW] = k * 0.01;
    pilot.move();
    return { time: (k + 1) * 0.01, collective: pilot.port[COLLECTIVE]! + pilot.port[RATE]! * 0.01 };
  });
}

describe("pilot", () => {
  it("finds the collective that carries the machine, or none", () => {
    const collective = hoverCollective(sample, speed)!;
    expect(sample.rotor.map.thrust(speed, collective, 0)).toBeCloseTo(sample.mass * gravity, 6);
    expect(hoverCollective(sample, 60)).toBeNull();
  });

  it("moves evenly to a held collective and stays", () => {
    const list = hand([{ from: 0.2, kind: "hold", collective: 0.1, over: 0.2 }], 1, 0.05);
    const at = (t: number) => list.find((one) => one.time >= t - 1e-9)!.collective;
    expect(at(0.2)).toBeCloseTo(0.05, 9);
    expect(at(0.3)).toBeCloseTo(0.075, 9);
    expect(at(0.4)).toBeCloseTo(0.1, 9);
    expect(at(1)).toBeCloseTo(0.1, 9);
  });

  it("follows a drawn curve, straight between its points, its ends held", () => {
    const times = [0.1, 0.3, 0.5];
    const collectives = [0.02, 0.12, -0.05];
    const list = hand([{ from: 0, kind: "curve", times, collectives }], 0.8);
    for (const { time, collective } of list) {
      const t = Math.min(0.5, Math.max(0.1, time));
      const wanted = t < 0.3 ? 0.02 + 0.5 * (t - 0.1) : 0.12 - 0.85 * (t - 0.3);
      expect(collective).toBeCloseTo(wanted, 9);
    }
  });

  it("never leaves what the links allow", () => {
    const { lowestCollective, highestCollective } = sample.rotor;
    fc.assert(
      fc.property(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 2, maxLength: 8 }), (values) => {
        const times = values.map((_, i) => i * 0.1);
        for (const { collective } of hand([{ from: 0, kind: "curve", times, collectives: values }], 0.7)) {
          expect(collective).toBeGreaterThanOrEqual(lowestCollective - 1e-12);
          expect(collective).toBeLessThanOrEqual(highestCollective + 1e-12);
        }
      }),
    );
  });

  it("holds a height and comes back to it", () => {
    const mode = { machine: sample, setSpeed: speed };
    const still = fly(hover(mode, 10)).trace;
    expect(Math.max(...still.height.map((h) => Math.abs(h - 15)))).toBeLessThan(0.05);
    const order = drawn(mode, [0, 0.3, 0.6], [0.08, 0.15, 0.08], 20);
    const back = fly({ ...order, collective: [...order.collective, { from: 1, kind: "height", height: 15 }] }).trace;
    expect(Math.max(...back.height)).toBeGreaterThan(16);
    expect(Math.abs(back.height.at(-1)! - 15)).toBeLessThan(0.2);
  });

  it("looks at height and vertical speed: too high or rising, the collective goes down", () => {
    const pull = (height: number, climb: number) => {
      const pilot = createPilot(
        sample,
        [{ from: 0, kind: "height", height: 10 }],
        hoverCollective(sample, speed)!,
        speed,
      );
      pilot.port[TICK] = 0.01;
      pilot.port[HEIGHT] = height;
      pilot.port[CLIMB] = climb;
      pilot.move();
      return pilot.port[RATE]!;
    };
    expect(pull(11, 0)).toBeLessThan(0);
    expect(pull(9, 0)).toBeGreaterThan(0);
    expect(pull(10, 1)).toBeLessThan(0);
    expect(Math.abs(pull(10, 0))).toBeLessThan(1e-6);
  });

  it("pulls all it has where nothing carries the machine", () => {
    const heavy = withParts({ mass: 30 });
    const flight = fly(hover({ machine: heavy, setSpeed: speed }, 10));
    expect(flight.end.why).toBe("ground");
    expect(Math.max(...flight.trace.collective)).toBeCloseTo(heavy.rotor.highestCollective, 6);
  });
});
