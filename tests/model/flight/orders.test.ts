import { describe, expect, it } from "vitest";
import { hoverCollective } from "#model/flight/pilot";
import { type FlightOrder, fly } from "#model/flight/run";
import { autorotation, drawn, hover, pumps, punch, spoolUp, suddenUnload, wholePack } from "#model/flight/scenarios";
import { startDuty } from "#model/flight/start";
import { valueAt } from "#model/flight/trace";
import { sample, withParts } from "./sample.ts";

const mode = { machine: sample, setSpeed: 220 };
const trim = hoverCollective(sample, 220)!;
/** The collective that an order gives at these times. */
const collectives = (order: FlightOrder, times: readonly number[]): number[] => {
  const { trace } = fly({ ...order, samples: 1e5 });
  return times.map((time) => valueAt(trace, "collective", time));
};
const close = (values: readonly number[], wanted: readonly number[], digits = 3): void => {
  expect(values).toHaveLength(wanted.length);
  for (const [i, value] of values.entries()) expect([i, value]).toEqual([i, expect.closeTo(wanted[i]!, digits)]);
};

describe("orders of the scenarios", () => {
  it("a punch goes up within its rise, stays for its hold, and goes back to the hover's pitch", () => {
    const order = punch(mode, { collective: 0.18, at: 0.5, rise: 0.1, hold: 0.4 });
    const half = (trim + 0.18) / 2;
    close(collectives(order, [0.5, 0.55, 0.6, 1, 1.05, 1.1, 1.4]), [trim, half, 0.18, 0.18, half, trim, trim]);
    expect(order.duration).toBeCloseTo(0.5 + 0.1 + 0.4 + 0.1 + 2.5, 12);
  });

  it("an unload follows a climb, and is over within 0.06 s", () => {
    const order = suddenUnload(mode, 0.18, 0.7);
    close(collectives(order, [1, 1.12, 1.7, 1.73, 1.76, 2.5]), [trim, 0.18, 0.18, 0.09, 0, 0]);
    expect(order.duration).toBeCloseTo(3.7, 12);
  });

  it("pumps go up and down once in each period, and rest at the hover's pitch", () => {
    const order = pumps(mode, { highest: 0.18, lowest: -0.05, count: 3, period: 0.6 });
    const peaks = [1.25, 1.85, 2.45].map((t) => [t, 0.18] as const);
    const lows = [1.55, 2.15, 2.75].map((t) => [t, -0.05] as const);
    const all = [...peaks, ...lows, [2.95, trim] as const, [4, trim] as const];
    close(
      collectives(
        order,
        all.map(([t]) => t),
      ),
      all.map(([, c]) => c),
    );
    expect(order.duration).toBeCloseTo(1 + 3 * 0.6 + 2.5, 12);
  });

  it("an autorotation begins at its height; after a bail-out and its ramp the hand goes for half of it", () => {
    const order = autorotation(mode, { height: 24, cut: 0.5, bailOut: 2 });
    expect(order.start.height).toBe(24);
    expect(order.collective.at(-1)).toEqual({ from: 2 + sample.controller.bailOutRamp, kind: "height", height: 12 });
    expect(order.throttle.map(({ from, kind }) => [from, kind])).toEqual([
      [0, "speed"],
      [0.5, "off"],
      [2, "speed"],
    ]);
    expect(order.duration).toBeCloseTo(2 + sample.controller.bailOutRamp + 4, 12);
    const flare = autorotation(mode, { flare: 3 });
    expect(flare.collective.at(-1)).toEqual({
      from: 3,
      kind: "hold",
      collective: sample.rotor.highestCollective,
      over: 0.6,
    });
  });

  it("a spool-up lasts the ramp to its own speed, and a while", () => {
    const { startRamp, reference } = sample.controller;
    expect(spoolUp(mode, 0, 3).duration).toBeCloseTo((startRamp * 220 * sample.gearRatio) / reference + 3, 12);
  });

  it("a whole pack flies its mix over and over, each load for its time, changing in 0.2 s, to the last second", () => {
    const mix = [
      { collective: 0.08, seconds: 2 },
      { collective: 0.16, seconds: 0.1 },
    ];
    const order = wholePack(mode, mix, 10);
    expect(order.start.collective).toBe(0.08);
    expect(order.machine.controller.loopRate).toBe(250);
    expect(
      wholePack({ ...mode, machine: withParts({ controller: { loopRate: 100 } }) }, mix).machine.controller.loopRate,
    ).toBe(100);
    // 2 s and at least 0.2 s: a cycle of 2.2 s.
    close(
      collectives(order, [1, 2, 2.1, 2.2, 2.3, 2.4, 4.2, 4.4, 8.8, 9.9]),
      [0.08, 0.08, 0.12, 0.16, 0.12, 0.08, 0.08, 0.16, 0.16, 0.08],
    );
    const [curve] = order.collective;
    expect(curve?.kind === "curve" && curve.times[curve.times.length - 1]!).toBeGreaterThanOrEqual(10);
  });

  it("a drawn flight holds its height only when it is told to", () => {
    const climbs = (held: boolean) => Math.max(...fly(drawn(mode, [0, 0.5], [0.08, 0.18], 1, held)).trace.climb);
    expect(climbs(true)).toBe(0);
    expect(climbs(false)).toBeGreaterThan(1);
  });

  it("a machine that nothing carries begins at its highest pitch", () => {
    const heavy = { ...mode, machine: withParts({ mass: 30 }) };
    expect(hover(heavy).start.collective).toBe(sample.rotor.highestCollective);
  });

  it("begin with a duty for the pack as it is, no lower than the lowest", () => {
    const start = { speed: 220, collective: trim, height: 9, climb: 0 };
    const duty = (parts: Parameters<typeof withParts>[0]) => startDuty(withParts(parts), start);
    // Duty times voltage is what the motor needs, but for the little that the pack's own resistance takes.
    const volts = (charge: number) => sample.pack.openVoltage(charge);
    expect((duty({ pack: { charge: 0.4 } }) * volts(0.4)) / (duty({}) * volts(1))).toBeCloseTo(1, 2);
    expect(duty({ pack: { charge: 0.4 } })).toBeGreaterThan(1.05 * duty({}));
    expect(duty({ controller: { lowestDuty: 0.9 } })).toBe(0.9);
  });
});
