import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { endWords, flightEvents } from "#model/flight/events";
import type { Collective, Throttle } from "#model/flight/orders";
import { type Flight, type FlightOrder, fly } from "#model/flight/run";
import { hover, punch, wholePack } from "#model/flight/scenarios";
import { sample, withParts } from "./sample.ts";

const mode = { machine: sample, setSpeed: 220 };

/** Nothing but numbers in all that a flight gives, and words for whatever end it came to. */
function sound(flight: Flight, order: FlightOrder): void {
  for (const column of Object.values(flight.trace)) expect(column.every(Number.isFinite)).toBe(true);
  for (const span of flight.spans) {
    expect([span.from, span.to, span.value, span.at, span.level].every(Number.isFinite)).toBe(true);
    expect(span.to).toBeGreaterThanOrEqual(span.from);
  }
  expect(flightEvents(flight).every((event) => !/NaN|Infinity|undefined/.test(event.words))).toBe(true);
  const words = endWords(flight.end, order.machine);
  if (flight.end.why === "flown") expect(words).toBeNull();
  else expect(words).toMatch(/^[A-Z].*\.$/);
  if (words) expect(words).not.toMatch(/NaN|Infinity|undefined/);
}

const wild = (low: number, high: number) =>
  fc.oneof(
    { weight: 60, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e300, 1e-300) },
  );

describe("bad input", () => {
  it("wild machines end in words, never in anything but numbers", { timeout: 60_000 }, () => {
    const machines = fc.record({
      inertia: wild(1e-7, 1e-3),
      constant: wild(1e-4, 0.03),
      resistance: wild(0.001, 1),
      noLoadCurrent: wild(0, 50),
      capacity: wild(1, 2e4),
      packResistance: wild(0, 2),
      loopRate: fc.oneof(fc.constantFrom(20, 50, 1000, 4000), wild(5, 4000)),
      proportionalGain: wild(0, 1000),
      integralGain: wild(0, 10_000),
      dutySteps: wild(2, 1e6),
      rotorInertia: wild(1e-6, 1),
      gearRatio: wild(0.5, 30),
      mass: wild(0.1, 50),
      antiWindup: fc.constantFrom("none", "clamping", "back-calculation"),
      setSpeed: fc.double({ min: 1, max: 2000, noNaN: true }),
    });
    // A gain with which the integral leaves the numbers: found by this very test.
    const overflowing = {
      inertia: 1e-7,
      constant: 1e-4,
      resistance: 0.001,
      noLoadCurrent: 0,
      capacity: 11,
      packResistance: 0,
      loopRate: 578,
      proportionalGain: 0,
      integralGain: 1e300,
      dutySteps: 2,
      rotorInertia: 1.7e-5,
      gearRatio: 14,
      mass: 0.44,
      antiWindup: "back-calculation" as const,
      setSpeed: 1.5,
    };
    // A pack that one tick empties a thousand times over: found by this test too.
    const drained = {
      inertia: 1e-7,
      constant: 0.0016,
      resistance: 0.0011,
      noLoadCurrent: 0,
      capacity: 1,
      packResistance: 0,
      loopRate: 4000,
      proportionalGain: 0,
      integralGain: 0,
      dutySteps: 483,
      rotorInertia: 0.0366,
      gearRatio: 0.604,
      mass: 38.2,
      antiWindup: "none" as const,
      setSpeed: 910.3,
    };
    const ends = new Set<string>();
    fc.assert(
      fc.property(machines, (m) => {
        const machine = withParts({
          motor: { inertia: m.inertia, constant: m.constant, resistance: m.resistance, noLoadCurrent: m.noLoadCurrent },
          pack: { capacity: m.capacity, resistance: m.packResistance },
          controller: {
            loopRate: m.loopRate,
            proportionalGain: m.proportionalGain,
            integralGain: m.integralGain,
            dutySteps: m.dutySteps,
            antiWindup: m.antiWindup,
          },
          rotor: { inertia: m.rotorInertia },
          gearRatio: m.gearRatio,
          mass: m.mass,
        });
        const order = {
          ...punch({ machine, setSpeed: m.setSpeed }, { collective: 0.19, at: 0.2, hold: 0.3 }),
          duration: 1,
        };
        const flight = fly(order);
        ends.add(flight.end.why);
        sound(flight, order);
      }),
      { numRuns: 80, examples: [[overflowing], [drained]] },
    );
    // They must not all have been refused.
    expect([...ends]).toContain("flown");
    expect(ends.size).toBeGreaterThan(2);
  });

  it("wild orders too", { timeout: 60_000 }, () => {
    const time = fc.double({ min: 0, max: 1, noNaN: true });
    const number = wild(-1000, 5000);
    const throttle = fc.oneof(
      fc.record({ from: time, kind: fc.constant("off") }),
      fc.record({ from: time, kind: fc.constant("duty"), duty: wild(0, 1), ramp: wild(0, 1) }),
      fc.record({
        from: time,
        kind: fc.constant("speed"),
        speed: number,
        ramp: fc.constantFrom("start", "bail-out", "none"),
      }),
    ) as fc.Arbitrary<Throttle>;
    const collective = fc.oneof(
      fc.record({ from: time, kind: fc.constant("hold"), collective: wild(-1, 1), over: wild(0, 1) }),
      fc.record({ from: time, kind: fc.constant("height"), height: wild(-10, 100) }),
      fc.record({
        from: time,
        kind: fc.constant("curve"),
        times: fc.array(time, { maxLength: 5 }),
        collectives: fc.array(wild(-1, 1), { maxLength: 5 }),
      }),
    ) as fc.Arbitrary<Collective>;
    const orders = fc.record({
      throttle: fc.array(throttle, { maxLength: 3 }),
      collective: fc.array(collective, { maxLength: 3 }),
      held: fc.boolean(),
    });
    fc.assert(
      fc.property(orders, (o) => {
        const order: FlightOrder = { ...hover(mode, 1), ...o };
        sound(fly(order), order);
      }),
      { numRuns: 150 },
    );
  });

  it("keeps all before the moment that a run left the possible", () => {
    const machine = withParts({ pack: { capacity: 40 } });
    const flight = fly(hover({ ...mode, machine }, 30));
    expect(flight.end.why).toBe("pack-empty");
    const { time, charge } = flight.trace;
    expect(time.at(-1)).toBeCloseTo(flight.end.time, 9);
    expect(charge.at(-1)!).toBeLessThanOrEqual(0);
    expect(charge.at(-2)!).toBeGreaterThan(0);
    expect(time[0]).toBe(0);
  });

  it("ends a clutch that chatters", () => {
    // A duty that jumps between nothing and all, on a machine whose motor is far lighter than its rotor lets it be.
    const machine = withParts({
      motor: { inertia: 2e-7, resistance: 0.005 },
      controller: { loopRate: 2000, proportionalGain: 1000, integralGain: 0, antiWindup: "none" },
    });
    const order = hover({ ...mode, machine }, 5);
    const flight = fly(order);
    expect(flight.end.why).toBe("clutch-chatters");
    expect(flight.end.time).toBeLessThan(5);
    expect(flight.trace.time.length).toBeGreaterThan(100);
    sound(flight, order);
  });

  it("flies a governor at 20 Hz, and says that it hunts where it does", () => {
    const machine = withParts({ controller: { loopRate: 20, proportionalGain: 6 } });
    const order = hover({ ...mode, machine }, 6);
    const flight = fly(order);
    sound(flight, order);
    expect(flight.tick).toBeLessThanOrEqual(0.002);
    expect(flight.spans.some((span) => span.kind === "hunting")).toBe(true);
  });

  it("keeps the samples within their bound", () => {
    const flight = fly({ ...hover(mode, 3), samples: 100 });
    expect(flight.trace.time.length).toBeLessThanOrEqual(102);
    expect(flight.trace.time.at(-1)).toBeCloseTo(3, 9);
  });

  it("a mix of no loads flies on at nothing, and a mix of no time ends", () => {
    for (const mix of [[], [{ collective: 0.05, seconds: 0 }]]) {
      const order = { ...wholePack(mode, mix), duration: 2 };
      sound(fly(order), order);
    }
  });
});
