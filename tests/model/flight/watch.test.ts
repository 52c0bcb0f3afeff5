import { describe, expect, it } from "vitest";
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
}

/** What the watch makes of a course over time, looked at each millisecond. */
function watched(course: (t: number) => Moment, duration: number): Span[] {
  const plant = createPlant(sample)!;
  const watch = createWatch(plant, sample);
  const y = new Float64Array(at.SIZE);
  for (let k = 1; k * 0.001 <= duration; k++) {
    const t = k * 0.001;
    const { speed = set, duty = 0.7, collective = 0.1, current = 20, engaged = true, holds = true } = course(t);
    y[at.ROTOR] = speed;
    y[at.MOTOR] = speed * 9;
    y[at.CHARGE] = 0.9;
    y[at.WINDING] = 300;
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
});
