import { describe, expect, it } from "vitest";
import { BROKEN, CHATTERS, createTicker } from "#model/flight/clutch";
import { endWords } from "#model/flight/events";
import { createPlant } from "#model/flight/plant";
import type { RotorMap } from "#model/flight/rotor-map";
import { type FlightOrder, fly } from "#model/flight/run";
import { drawn, hover, suddenUnload } from "#model/flight/scenarios";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { valueAt } from "#model/flight/trace";
import { sample, withParts } from "./sample.ts";

const mode = { machine: sample, setSpeed: 220 };
const nothing: RotorMap = { thrust: () => 0, torque: () => 0 };
const bare = (parts: Parameters<typeof withParts>[0] = {}) => ({
  ...withParts({ rotor: { map: nothing, inertia: 1e-6 }, ...parts }),
  tail: null,
});

describe("the end of a flight", () => {
  it("comes when the head is past four times the reference, at the tick when it is", () => {
    // A motor whose free speed is some 2,900 rad/s, and a reference of 500.
    const order: FlightOrder = {
      machine: bare({ controller: { reference: 500 } }),
      start: { speed: 0, collective: 0, height: 0, climb: 0 },
      throttle: [{ from: 0, kind: "duty", duty: 1, ramp: 0 }],
      collective: [],
      duration: 5,
      held: true,
    };
    const { end, trace } = fly(order);
    const limit = (4 * 500) / sample.gearRatio;
    expect(end).toMatchObject({ why: "ran-away", value: trace.rotorSpeed.at(-1) });
    expect(trace.rotorSpeed.at(-1)!).toBeGreaterThan(limit);
    expect(trace.rotorSpeed.at(-2)!).toBeLessThanOrEqual(limit);
    expect(trace.time.at(-1)).toBeCloseTo(end.time, 12);
    expect(endWords(end, order.machine)).toMatch(/^The head runs away at .* four times the learned reference\.$/);
    // With a reference of 800 the same motor stays below.
    const calm = fly({ ...order, machine: bare({ controller: { reference: 800 } }), duration: 1 });
    expect(calm.end.why).toBe("flown");
  });

  it("comes when the steps have become so short that nobody would wait, after some of them", {
    timeout: 180_000,
  }, () => {
    // A motor so light that each tick wants two hundred steps while the rotor runs ahead.
    const machine = withParts({ motor: { inertia: 1.6e-7 } });
    const ticker = createTicker(createPlant(machine)!, 0.001)!;
    expect(ticker.steps[1]).toBeGreaterThan(150);
    const { end, trace } = fly({
      ...hover({ machine, setSpeed: 220 }, 1000),
      throttle: [{ from: 0, kind: "off" }],
      collective: [{ from: 0, kind: "hold", collective: 0, over: 0 }],
      held: true,
    });
    expect(end.why).toBe("too-long");
    expect(end.time).toBeGreaterThan(3_000_000 / (ticker.steps[1] + 40) / 1000 - 1);
    expect(end.time).toBeLessThan(3_000_000 / 100 / 1000);
    expect(trace.time.length).toBeGreaterThan(50);
    expect(endWords(end, machine)).toMatch(/^The computation was stopped at/);
  });

  it("comes when a tick gives no number, and takes that tick back", () => {
    // A curve that is fine wherever its table looks, with a state that is not.
    const plant = createPlant(sample)!;
    const ticker = createTicker(plant, 0.001)!;
    const y = startState(sample, { speed: 220, collective: 0, height: 0, climb: 0 });
    y[at.SAG] = Number.POSITIVE_INFINITY;
    expect(ticker.tick(y)).toBe(BROKEN);
    const order = { ...hover(mode, 1), start: { speed: 220, collective: 0.09, height: 1e300, climb: 1e300 } };
    const { end, trace } = fly(order);
    expect(end.why).toBe("not-a-number");
    for (const column of Object.values(trace)) expect(column.every(Number.isFinite)).toBe(true);
  });

  it("comes when the clutch takes and lets go without end within one tick", () => {
    const plant = createPlant(sample)!;
    // Equations that push the motor ahead when it is loose and hold it back when it is engaged.
    const stubborn = {
      ...plant,
      derivative: (y: Float64Array, dy: Float64Array) => {
        plant.derivative(y, dy);
        if (plant.mode[0] === 0) dy[at.MOTOR] = 1e6;
        plant.now[at.CLUTCH] = -1;
      },
    };
    const ticker = createTicker(stubborn, 0.001)!;
    const y = startState(sample, { speed: 220, collective: 0.09, height: 9, climb: 0 });
    expect(ticker.tick(y)).toBe(CHATTERS);
    // Soon: a page waits for it.
    expect(ticker.changes[0]).toBeLessThan(100);
  });

  it("doesn't come for a clutch that changes often in a long flight, as long as it is not at once", () => {
    // A throttle that goes off and on five times a second, at flat pitch.
    const order: FlightOrder = {
      ...hover(mode, 24),
      throttle: Array.from({ length: 240 }, (_, i) => ({
        from: i * 0.1,
        kind: "duty" as const,
        duty: i % 2 === 0 ? 0.75 : 0,
        ramp: 0,
      })),
      collective: [{ from: 0, kind: "hold", collective: 0, over: 0 }],
      held: true,
    };
    const flight = fly(order);
    expect(flight.clutchChanges).toBeGreaterThan(160);
    expect(flight.end.why).toBe("flown");
  });

  it("doesn't come at the ground for a height that is held, whatever the climb", () => {
    const order = hover(mode, 1);
    const sinking = { ...order, held: true, start: { ...order.start, height: 0.1, climb: -2 } };
    const { end, trace } = fly({ ...sinking, collective: [{ from: 0, kind: "hold", collective: 0.09, over: 0 }] });
    expect(end.why).toBe("flown");
    expect(trace.height.at(-1)).toBeCloseTo(-1.9, 9);
  });

  it.each([
    ["length of the flight", { duration: 0 }],
    ["length of the flight", { duration: -1 }],
    ["length of the flight", { duration: Number.NaN }],
    ["rotor speed at the start", { start: { speed: -1, collective: 0, height: 9, climb: 0 } }],
    ["collective at the start", { start: { speed: 220, collective: Number.NaN, height: 9, climb: 0 } }],
    ["height at the start", { start: { speed: 220, collective: 0, height: Number.NaN, climb: 0 } }],
    ["vertical speed at the start", { start: { speed: 220, collective: 0, height: 9, climb: Number.NaN } }],
    ["time of a throttle order", { throttle: [{ from: Number.NaN, kind: "off" }] }],
    ["duty", { throttle: [{ from: 0, kind: "duty", duty: Number.NaN, ramp: 0 }] }],
    ["ramp of the duty", { throttle: [{ from: 0, kind: "duty", duty: 1, ramp: Number.NaN }] }],
    ["speed asked for", { throttle: [{ from: 0, kind: "speed", speed: Number.NaN, ramp: "none" }] }],
    ["time of a collective order", { collective: [{ from: Number.NaN, kind: "height", height: 9 }] }],
    ["collective", { collective: [{ from: 0, kind: "hold", collective: Number.NaN, over: 0 }] }],
    ["time of a collective's move", { collective: [{ from: 0, kind: "hold", collective: 0, over: Number.NaN }] }],
    ["height to hold", { collective: [{ from: 0, kind: "height", height: Number.NaN }] }],
    ["number of points of the drawn curve", { collective: [{ from: 0, kind: "curve", times: [], collectives: [] }] }],
    [
      "number of points of the drawn curve",
      { collective: [{ from: 0, kind: "curve", times: [0, 1], collectives: [0] }] },
    ],
    ["time in the drawn curve", { collective: [{ from: 0, kind: "curve", times: [0, 2, 1], collectives: [0, 0, 0] }] }],
    [
      "collective in the drawn curve",
      { collective: [{ from: 0, kind: "curve", times: [0], collectives: [Number.NaN] }] },
    ],
  ] as const)("is its beginning where the %s makes no sense", (what, part) => {
    const { end, trace } = fly({ ...hover(mode, 1), ...(part as Partial<FlightOrder>) });
    expect(end).toMatchObject({ why: "impossible-machine", what });
    expect(trace.time.length).toBe(0);
  });

  it("is where it was ordered, to the tick, with the collective of that moment", () => {
    for (const duration of [0.57, 0.29, 0.1]) {
      const flight = fly(drawn(mode, [0, 10], [0.05, 1.05 * 0.1], duration));
      expect(flight.ticks).toBe(Math.round(duration * 1000));
      expect(flight.trace.time.at(-1)).toBeCloseTo(duration, 12);
      expect(flight.trace.collective.at(-1)).toBeCloseTo(0.05 + 0.0055 * duration, 9);
    }
  });

  it("what was watched stands in the trace at the time that is told, and the set speed is the head's", () => {
    const order = { ...suddenUnload({ ...mode, setSpeed: 288 }, 0.19), samples: 1e6 };
    const { spans, trace } = fly(order);
    const told = spans.filter(({ kind }) => kind === "speed-high" || kind === "blades-over-limit");
    expect(told.length).toBeGreaterThan(0);
    for (const span of told) expect(span.value).toBe(valueAt(trace, "rotorSpeed", span.at));
    expect(trace.setSpeed.every((speed) => Math.abs(speed - 288) < 1e-9)).toBe(true);
  });
});
