import { describe, expect, it } from "vitest";
import { reserveCharge } from "#model/endurance";
import { createPlant } from "#model/flight/plant";
import * as at from "#model/flight/state";
import { createWatch, type Span } from "#model/flight/watch";
import { sample } from "./sample.ts";

const set = 220;

interface Moment {
  readonly speed?: number;
  readonly duty?: number;
  readonly collective?: number;
  readonly current?: number;
  readonly engaged?: boolean;
  readonly holds?: boolean;
  readonly charge?: number;
  readonly motor?: number;
  readonly winding?: number;
}

/** What the watch makes of a course over time, looked at each millisecond. */
function watched(course: (t: number) => Moment, duration: number): Span[] {
  const plant = createPlant(sample)!;
  const watch = createWatch(plant, sample);
  const y = new Float64Array(at.SIZE);
  for (let k = 1; k * 0.001 <= duration; k++) {
    const t = k * 0.001;
    const { speed = set, duty = 0.7, collective = 0.1, current = 20, engaged = true, holds = true } = course(t);
    const { charge = 0.9, motor = speed * 9, winding = 300 } = course(t);
    y[at.ROTOR] = speed;
    y[at.MOTOR] = motor;
    y[at.CHARGE] = charge;
    y[at.WINDING] = winding;
    y[at.CONTROLLER] = 300;
    plant.now[at.DUTY] = duty;
    plant.now[at.COLLECTIVE] = collective;
    plant.now[at.PACK_CURRENT] = current;
    plant.mode[0] = engaged ? 1 : 0;
    watch.port.set([t, holds ? 1 : 0, set]);
    watch.look(y);
  }
  return watch.spans(duration);
}

const between = (t: number, from: number, to: number) => t >= from && t < to;

describe("watch", () => {
  it("says nothing of a quiet flight", () => {
    expect(watched(() => ({}), 1)).toEqual([]);
  });

  it("finds when the duty was at its limit, to a few milliseconds, and not when it only jumps there", () => {
    const [span, ...rest] = watched((t) => ({ duty: between(t, 0.3, 0.6) ? 1 : 0.7 }), 1);
    expect(rest).toEqual([]);
    expect(span!.kind).toBe("duty-at-limit");
    expect(span!.from).toBeCloseTo(0.3, 2);
    expect(Math.abs(span!.to - 0.6)).toBeLessThan(0.01);
    expect(watched((t) => ({ duty: Math.round(t * 1000) % 2 }), 1)).toEqual([]);
  });

  it("finds a drop of the speed, how far and how long", () => {
    const [span, ...rest] = watched(
      (t) => ({ speed: between(t, 0.3, 0.8) ? set - 20 * Math.sin(Math.PI * 2 * (t - 0.3)) : set }),
      1,
    );
    expect(rest).toEqual([]);
    expect(span).toMatchObject({ kind: "speed-low", ended: true, level: set });
    expect(span!.value).toBeCloseTo(set - 20, 3);
    expect(span!.at).toBeCloseTo(0.55, 2);
    // Below 99 % from asin(2.2 / 20) / (2 pi) on.
    expect(span!.from).toBeCloseTo(0.3 + Math.asin(0.11) / (2 * Math.PI), 2);
    expect(span!.to).toBeCloseTo(0.8 - Math.asin(0.11) / (2 * Math.PI), 2);
  });

  it("finds an overspeed, and one that goes on at the end", () => {
    const [span] = watched((t) => ({ speed: t > 0.5 ? set * 1.05 : set }), 1);
    expect(span).toMatchObject({ kind: "speed-high", ended: false, to: expect.closeTo(1, 2) });
  });

  it("counts no speed as low before the set speed was reached, or while a ramp is on", () => {
    expect(watched((t) => ({ speed: Math.min(1, t) * set }), 0.9)).toEqual([]);
    expect(watched((t) => ({ speed: 0.9 * set, holds: t < 0 }), 0.9)).toEqual([]);
  });

  it("finds a current over the limit, and a clutch that is loose", () => {
    const spans = watched((t) => ({ current: between(t, 0.2, 0.4) ? 120 : 20, engaged: !between(t, 0.6, 0.8) }), 1);
    expect(spans.map((s) => s.kind)).toEqual(["current-over-limit", "overrunning"]);
    expect(spans[0]).toMatchObject({ value: 120, level: 100 });
    expect(spans[1]!.to - spans[1]!.from).toBeCloseTo(0.2, 2);
  });

  it("finds hunting, its swing and how often, but not what the collective does", () => {
    const swing = (t: number) => set * (1 + 0.006 * Math.sin(2 * Math.PI * 5 * t));
    const [span, ...rest] = watched((t) => ({ speed: swing(t) }), 3);
    expect(rest).toEqual([]);
    expect(span!.kind).toBe("hunting");
    expect(span!.value).toBeCloseTo(0.006, 4);
    expect(Math.abs(span!.level - 5)).toBeLessThan(0.3);
    expect(watched((t) => ({ speed: swing(t), collective: 0.1 + 0.02 * Math.sin(10 * t) }), 3)).toEqual([]);
  });

  const kindsOf = (course: (t: number) => Moment, duration: number) => watched(course, duration).map((s) => s.kind);

  it("finds a pack below a fifth of its charge, and how low it went: common practice", () => {
    const [span, ...rest] = watched((t) => ({ charge: 0.25 - 0.1 * t }), 1);
    expect(rest).toEqual([]);
    expect(span).toMatchObject({ kind: "charge-low", ended: false, level: reserveCharge });
    expect(span!.from).toBeCloseTo(0.5, 2);
    expect(span!.value).toBeCloseTo(0.15, 9);
  });

  it("holds motor and controller each against its own limit: electrical speed is motor speed times half the poles", () => {
    const rpm = Math.PI / 30;
    const [motor] = watched((t) => ({ motor: between(t, 0.2, 0.3) ? 37_000 * rpm : 1000 }), 0.6);
    expect(motor).toMatchObject({ kind: "motor-over-limit", ended: true });
    expect(motor!.value).toBeCloseTo(37_000 * rpm, 9);
    // 10 poles: 47,000 rpm are 235,000 electrical, 49,000 are 245,000; the limit is 240,000.
    expect(kindsOf(() => ({ motor: 47_000 * rpm }), 0.2)).toEqual(["motor-over-limit"]);
    const both = watched(() => ({ motor: 49_000 * rpm }), 0.2);
    expect(both.map((s) => s.kind).toSorted()).toEqual(["electrical-over-limit", "motor-over-limit"]);
    expect(both.find((s) => s.kind === "electrical-over-limit")!.value).toBeCloseTo(245_000 * rpm, 6);
    expect(kindsOf(() => ({ winding: 394 }), 0.2)).toEqual(["winding-over-limit"]);
    expect(kindsOf(() => ({ winding: 393 }), 0.2)).toEqual([]);
  });

  it("tells of no clutch that only rattles for a moment, or before the rotor turns", () => {
    expect(kindsOf((t) => ({ engaged: !between(t, 0.3, 0.34) }), 0.8)).toEqual([]);
    expect(kindsOf((t) => ({ engaged: !between(t, 0.3, 0.4) }), 0.8)).toEqual(["overrunning"]);
    // A fifth of the reference: 2910 / 9 x 0.2 = 64.7 rad/s.
    expect(kindsOf((t) => ({ speed: 60, holds: t < 0, engaged: false }), 0.8)).toEqual([]);
    expect(kindsOf((t) => ({ speed: 70, holds: t < 0, engaged: false }), 0.8)).toEqual(["overrunning"]);
  });

  it("joins what a moment parts, and parts what lies further from each other", () => {
    const loose = (rest: number) =>
      watched((t) => ({ engaged: !(between(t, 0.2, 0.3) || between(t, 0.3 + rest, 0.5)) }), 1).length;
    expect(loose(0.02)).toBe(1);
    expect(loose(0.06)).toBe(2);
    const low = (rest: number) =>
      watched((t) => ({ speed: t < 0.1 || !(between(t, 0.2, 0.3) || between(t, 0.3 + rest, 0.5)) ? set : 200 }), 1)
        .length;
    expect(low(0.01)).toBe(1);
    expect(low(0.06)).toBe(2);
  });

  it("tells of no duty and no speed that was out for a hundredth of a second", () => {
    const out = (length: number) => (t: number) => ({ speed: between(t, 0.3, 0.3 + length) ? 210 : set });
    expect(kindsOf(out(0.01), 0.6)).toEqual([]);
    expect(kindsOf(out(0.04), 0.6)).toEqual(["speed-low"]);
    const full = (length: number) => (t: number) => ({ duty: between(t, 0.3, 0.3 + length) ? 1 : 0.7 });
    expect(kindsOf(full(0.02), 0.6)).toEqual([]);
    expect(kindsOf(full(0.1), 0.6)).toEqual(["duty-at-limit"]);
  });

  it("counts a hunt from its sixth swing to the other side on, and its pace from one swing to the next", () => {
    const swing = (hertz: number, until: number) => (t: number) => ({
      speed: t < until ? set * (1 + 0.006 * Math.sin(2 * Math.PI * hertz * t)) : set,
    });
    // Two and a half rounds have five swings.
    expect(kindsOf(swing(2, 1.25), 4)).toEqual([]);
    const [hunt] = watched(swing(2, 5), 5);
    expect(hunt!.kind).toBe("hunting");
    expect(Math.abs(hunt!.level - 2)).toBeLessThan(0.02);
    // Slower than one swing in a second is wandering, not hunting.
    expect(kindsOf(swing(0.4, 20), 20)).toEqual([]);
    // The hand that moved just before is what the first swings come from.
    const moved = (t: number) => ({
      ...swing(5, 0.9)(t),
      collective: t < 0.1 ? 0.1 : between(t, 0.1, 0.4) ? 0.12 : 0.14,
    });
    expect(kindsOf(moved, 2)).toEqual([]);
  });

  it("hears no hunt in swings of less than three thousandths", () => {
    const swing = (size: number) => (t: number) => ({ speed: set * (1 + size * Math.sin(2 * Math.PI * 5 * t)) });
    expect(kindsOf(swing(0.0025), 3)).toEqual([]);
    expect(kindsOf(swing(0.0035), 3)).toEqual(["hunting"]);
  });

  it("keeps the first stretches of a flight with too many, and all of them whole", () => {
    const spans = watched((t) => ({ current: Math.floor(t / 0.03) % 2 === 1 ? 120 : 20 }), 40);
    expect(spans.length).toBe(512);
    expect(spans.every((s, i) => s.kind === "current-over-limit" && s.from > (spans[i - 1]?.from ?? 0))).toBe(true);
  });
});
