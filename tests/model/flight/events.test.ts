import { describe, expect, it } from "vitest";
import { endWords, flightEvents } from "#model/flight/events";
import { type End, fly } from "#model/flight/run";
import { autorotation, hover, punch, suddenUnload } from "#model/flight/scenarios";
import { sample, withParts } from "./sample.ts";

const rpm = Math.PI / 30;

describe("events in words", () => {
  const flight = fly(punch({ machine: sample, setSpeed: 2900 * rpm }, { collective: 0.19 }));
  const events = flightEvents(flight);

  it("say when the duty was at its limit and how far the speed fell", () => {
    const limit = events.find((e) => e.kind === "duty-at-limit")!;
    expect(limit.words).toMatch(/^Duty at its limit from \d\.\d\d s to \d\.\d\d s/);
    const low = events.find((e) => e.kind === "speed-low")!;
    expect(low.unit).toBe("rpm");
    expect(low.value).toBeCloseTo(
      Math.min(...flight.trace.rotorSpeed.filter((_, i) => flight.trace.time[i]! < 2)) / rpm,
      -1,
    );
    expect(low.words).toContain(`down to ${low.value.toFixed(0)} rpm`);
    expect(low.words).toContain(`${(2900 - low.value).toFixed(0)} rpm below the set speed`);
  });

  it("say how far and how long a head ran over, and which limit it passed", () => {
    const unload = flightEvents(fly(suddenUnload({ machine: sample, setSpeed: 2750 * rpm }, 0.19)));
    expect(unload.find((e) => e.kind === "speed-high")!.words).toMatch(
      /Overspeed from .* up to \d{4} rpm .* for \d\.\d\d s/,
    );
    expect(unload.find((e) => e.kind === "blades-over-limit")!.words).toContain("the limit is 2800 rpm");
  });

  it("come in order and are at most so many of a kind", () => {
    expect(events.every((e, i) => i === 0 || e.from >= events[i - 1]!.from)).toBe(true);
    const many = {
      ...flight,
      spans: Array.from({ length: 50 }, (_, i) => ({ ...flight.spans[0]!, from: i, to: i + 0.5 })),
    };
    expect(flightEvents(many, 3)).toHaveLength(3);
  });

  it("say temperatures in degrees Celsius", () => {
    const hot = fly(
      punch({ machine: withParts({ motor: { temperature: 400 } }), setSpeed: 220 }, { collective: 0.15 }),
    );
    expect(flightEvents(hot).find((e) => e.kind === "winding-over-limit")!.words).toContain("the limit is 120 °C");
  });
});

describe("ends in words", () => {
  const machine = (parts: Parameters<typeof withParts>[0]) => hover({ machine: withParts(parts), setSpeed: 220 }, 5);
  const said = (end: End) => endWords(end, sample);

  it.each([
    ["an empty pack", machine({ pack: { charge: 0.001 } }), /^The pack is empty at \d/],
    ["no inertia", machine({ motor: { inertia: 0 } }), /the motor's inertia is 0\.$/],
    [
      "an inertia that isn't a number",
      machine({ motor: { inertia: Number.NaN } }),
      /the motor's inertia is not a number\.$/,
    ],
    ["hardly any inertia", machine({ motor: { inertia: 1e-13 } }), /settles within/],
    ["a fall", machine({ mass: 40 }), /^The machine hits the ground at .* sinking at/],
    ["a loop rate beyond reason", machine({ controller: { loopRate: 1e7 } }), /too long/],
    ["a map without figures", machine({ rotor: { map: { thrust: () => Number.NaN, torque: () => 1 } } }), /no figure/],
  ])("%s", (_, order, words) => {
    expect(said(fly(order).end)).toMatch(words);
  });

  it("a flight to its end needs none, every other end has some", () => {
    expect(said({ why: "flown", time: 1 })).toBeNull();
    expect(said({ why: "clutch-chatters", time: 1 })).toMatch(/clutch/);
    expect(said({ why: "ran-away", time: 1, value: 900 })).toMatch(/rpm/);
    expect(said({ why: "not-a-number", time: 1 })).toMatch(/numbers/);
    expect(said(fly(autorotation({ machine: sample, setSpeed: 220 }, { flare: 5.2 })).end)).toMatch(/ground/);
  });
});
