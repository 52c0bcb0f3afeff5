import { describe, expect, it } from "vitest";
import { ANGLE, createSpeedMeter, MEASURED, SPEED, TIME } from "#model/flight/commutation";

/** Readings of a motor whose speed is w0 + a t, taken at these times. */
function readings(poles: number, clock: number, w0: number, a: number, times: readonly number[]): number[] {
  const meter = createSpeedMeter(poles, clock);
  meter.reset(0, w0);
  return times.map((t) => {
    meter.port[TIME] = t;
    meter.port[ANGLE] = w0 * t + (a * t * t) / 2;
    meter.port[SPEED] = w0 + a * t;
    meter.read();
    return meter.port[MEASURED]!;
  });
}
const samples = Array.from({ length: 200 }, (_, i) => (i + 1) / 1000);

describe("speed by commutation period", () => {
  it("is the speed of a steady motor, to one step of the clock in a turn", () => {
    const speed = 2000;
    for (const poles of [2, 10, 20]) {
      const turn = (4 * Math.PI) / poles / speed;
      const list = readings(poles, 1e-6, speed, 0, samples);
      const worst = Math.max(...list.map((v) => Math.abs(v / speed - 1)));
      // Resolution of a period counter: one count in (period / clock step).
      expect(worst).toBeLessThan(1.1 * (1e-6 / turn));
      expect(worst).toBeGreaterThan(0.2 * (1e-6 / turn));
    }
  });

  it("is coarser with more poles", () => {
    const spread = (poles: number) => {
      const list = readings(poles, 1e-6, 2003, 0, samples);
      return Math.max(...list) - Math.min(...list);
    };
    expect(spread(20)).toBeGreaterThan(5 * spread(2));
  });

  it("is late by half a turn and what has passed of the next: later with fewer poles", () => {
    const lag = (poles: number) => {
      const list = readings(poles, 0, 500, 1000, samples.slice(100));
      const misses = list.map((v, i) => (500 + 1000 * samples[100 + i]! - v) / 1000);
      return misses.reduce((sum, miss) => sum + miss, 0) / misses.length;
    };
    // On average one electrical turn: half of it, and half of the next.
    const turn = (poles: number) => (4 * Math.PI) / poles / 650;
    expect(lag(2) / turn(2)).toBeGreaterThan(0.8);
    expect(lag(2) / turn(2)).toBeLessThan(1.2);
    expect(lag(2)).toBeGreaterThan(4 * lag(10));
  });

  it("stands still for a motor that turns slower than a turn in 0.1 s", () => {
    expect(readings(2, 1e-6, 20, 0, [0.5])).toEqual([0]);
    expect(readings(2, 1e-6, 0, 0, [0.5])).toEqual([0]);
  });

  it("reads nothing from a motor slower than a turn in 0.1 s, or one that was a turn ago", () => {
    // Two poles: a turn is 2 pi, so 62.8 rad/s is the slowest that counts.
    expect(readings(2, 0, 62, 0, [0.2, 0.3])).toEqual([0, 0]);
    expect(readings(2, 0, 64, 0, [0.2, 0.3]).every((v) => Math.abs(v - 64) < 1e-9)).toBe(true);
    // Fast now, but a turn ago hardly moving: its mean over that turn is too slow to count.
    expect(readings(2, 1e-6, 0, 500, [0.13])).toEqual([0]);
    // Just above it counts: w = a t with the turn's mean speed above 62.8 rad/s.
    expect(readings(2, 0, 0, 500, [0.3])[0]).toBeGreaterThan(62.8);
  });

  it("reads the speed itself where the clock is too coarse to count a turn", () => {
    // A turn of 0.6 ms, clock steps of 10 ms: most turns have no count in them.
    const list = readings(10, 0.01, 2000, 0, samples.slice(0, 9));
    expect(list.every(Number.isFinite)).toBe(true);
    expect(list).toContain(2000);
  });
});
