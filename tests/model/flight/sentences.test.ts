import { describe, expect, it } from "vitest";
import { endWords, flightEvents } from "#model/flight/events";
import { modeLost } from "#model/flight/findings";
import { type End, fly } from "#model/flight/run";
import { hover } from "#model/flight/scenarios";
import type { Kind, Span } from "#model/flight/watch";
import { sample } from "./sample.ts";

const rpm = Math.PI / 30;
const flown = fly(hover({ machine: sample, setSpeed: 220 }, 0.5));
const span = (kind: Kind, value: number, level: number, more: Partial<Span> = {}): Span => ({
  kind,
  from: 1.25,
  to: 2,
  ended: true,
  value,
  at: 1.5,
  level,
  ...more,
});
const told = (...spans: Span[]) => flightEvents({ ...flown, spans });
const words = (one: Span): string => told(one)[0]!.words;

describe("each thing that happens", () => {
  it.each<[Kind, number, number, string, string]>([
    ["duty-at-limit", 1, 1, "%", "Duty at its limit from 1.25 s to 2.00 s: the controller has no more to give."],
    [
      "speed-low",
      2000 * rpm,
      2100 * rpm,
      "rpm",
      "Head speed low from 1.25 s to 2.00 s: down to 2000 rpm at 1.50 s, 100 rpm below the set speed; within 1 % again after 0.75 s.",
    ],
    [
      "speed-high",
      2250 * rpm,
      2100 * rpm,
      "rpm",
      "Overspeed from 1.25 s to 2.00 s: up to 2250 rpm at 1.50 s, 150 rpm above the set speed, for 0.75 s.",
    ],
    [
      "motor-over-limit",
      37_000 * rpm,
      36_000 * rpm,
      "rpm",
      "The motor turns faster than it is rated for from 1.25 s to 2.00 s: 37000 rpm at 1.50 s, the limit is 36000 rpm.",
    ],
    [
      "electrical-over-limit",
      250_000 * rpm,
      240_000 * rpm,
      "rpm",
      "The electrical speed is above the controller's limit from 1.25 s to 2.00 s: 250000 rpm at 1.50 s, the limit is 240000 rpm.",
    ],
    [
      "blades-over-limit",
      2900 * rpm,
      2800 * rpm,
      "rpm",
      "The head turns faster than the blades' maker allows from 1.25 s to 2.00 s: 2900 rpm at 1.50 s, the limit is 2800 rpm.",
    ],
    [
      "current-over-limit",
      120,
      100,
      "A",
      "The pack gives more current than it should from 1.25 s to 2.00 s: 120 A at 1.50 s, the limit is 100 A.",
    ],
    [
      "winding-over-limit",
      403.15,
      393.15,
      "°C",
      "The motor's winding is too hot from 1.25 s to 2.00 s: 130 °C at 1.50 s, the limit is 120 °C.",
    ],
    [
      "controller-over-limit",
      383.15,
      373.15,
      "°C",
      "The controller is too hot from 1.25 s to 2.00 s: 110 °C at 1.50 s, the limit is 100 °C.",
    ],
    [
      "overrunning",
      220,
      0,
      "rpm",
      "The rotor runs ahead of the motor from 1.25 s to 2.00 s: the one-way clutch is loose.",
    ],
    [
      "hunting",
      0.0123,
      5.04,
      "%",
      "The governor hunts from 1.25 s to 2.00 s: the head speed swings by up to 1.2 % about the set speed, 5.0 times a second.",
    ],
    ["charge-low", 0.15, 0.2, "%", "The pack is below 20 % from 1.25 s: land."],
  ])("%s is said with its figures", (kind, value, level, unit, sentence) => {
    const [event] = told(span(kind, value, level));
    expect(event!.words).toBe(sentence);
    expect(event!.unit).toBe(unit);
    const scale = unit === "rpm" ? rpm : unit === "%" ? 0.01 : 1;
    const zero = unit === "°C" ? 273.15 : 0;
    expect(event!.value).toBeCloseTo((value - zero) / scale, 9);
    // Swings are counted in a second; every other level has the value's unit.
    expect(event!.level).toBeCloseTo(kind === "hunting" ? level : (level - zero) / scale, 9);
  });

  it("is said to go on where it did not end", () => {
    const open = { ended: false };
    expect(words(span("duty-at-limit", 1, 1, open))).toMatch(/from 1\.25 s to the end:/);
    expect(words(span("speed-low", 2000 * rpm, 2100 * rpm, open))).toMatch(/set speed, and not back by the end\.$/);
  });

  it("has its times to a hundredth, from ten seconds on to a tenth", () => {
    expect(words(span("overrunning", 220, 0, { from: 9.994, to: 10.04 }))).toMatch(/from 9\.99 s to 10\.0 s/);
  });

  it("is told only where it was longest, when it happened too often, and still in order", () => {
    const many = [0.1, 0.4, 0.2, 0.3].map((length, i) => span("overrunning", 220, 0, { from: i, to: i + length }));
    const [first, second, ...rest] = flightEvents({ ...flown, spans: many }, 2);
    expect(rest).toEqual([]);
    expect([first!.from, second!.from]).toEqual([1, 3]);
  });
});

describe("each end", () => {
  const light = { ...sample, motor: { ...sample.motor, inertia: 1.25e-10 } };
  it.each<[End, string]>([
    [{ why: "pack-empty", time: 3.456 }, "The pack is empty at 3.46 s: the motor stops."],
    [{ why: "ground", time: 5, value: -7.25 }, "The machine hits the ground at 5.00 s, sinking at 7.3 m/s."],
    [{ why: "ground", time: 5, value: -1.99 }, "The machine is on the ground at 5.00 s."],
    [
      { why: "ran-away", time: 2, value: 9000 * rpm },
      "The head runs away at 2.00 s: 9000 rpm, four times the learned reference.",
    ],
    [
      { why: "too-quick", time: 0, value: 2.5e-6 },
      "This machine can't be followed: something in it settles within 2.5 µs. Look at the motor's inertia and resistance (0.0013 g cm²).",
    ],
    [{ why: "too-long", time: 0 }, "The flight is too long to be computed at this loop rate."],
    [
      { why: "too-long", time: 12.34 },
      "The computation was stopped at 12.3 s: this machine wants steps so short that nobody would wait for the rest.",
    ],
    [
      { why: "not-a-number", time: 1 },
      "The computation left the numbers at 1.00 s: with these figures no machine moves.",
    ],
    [
      { why: "clutch-chatters", time: 1 },
      "The one-way clutch takes and lets go without end at 1.00 s: no real machine would stand it. Lower the gains.",
    ],
    [
      { why: "impossible-machine", time: 0, what: "gear ratio", value: 0.12345 - 0.5 },
      "No flight is possible: the gear ratio is -0.377.",
    ],
    [
      { why: "impossible-machine", time: 0, what: "gear ratio", value: Number.NaN },
      "No flight is possible: the gear ratio is not a number.",
    ],
  ])("%o is said", (end, sentence) => {
    expect(endWords(end, light)).toBe(sentence);
  });
});

describe("what is found in a flight", () => {
  const trace = { ...flown.trace, time: Float64Array.of(0, 4), charge: Float64Array.of(1, 0.6) };
  const lost = (...spans: Span[]) => modeLost({ trace, spans });
  const low = span("speed-low", 200, 220, { from: 1, to: 1.5 });
  const limit = span("duty-at-limit", 1, 1, { from: 1.1, to: 1.4 });

  it("a mode is lost in a long drop with the duty at its limit: when, at what charge, how low", () => {
    expect(lost(limit, low)).toEqual({ time: 1, charge: 0.9, lowest: 200, set: 220 });
  });

  it("no mode is lost in a short dip, with duty to spare, or when the limit was met at another time", () => {
    expect(lost(limit, { ...low, to: 1.39 })).toBeNull();
    expect(lost(low)).toBeNull();
    expect(lost(low, { ...limit, from: 2, to: 3 })).toBeNull();
    // 0.1 s of it within the drop are too few, however long it lasts outside.
    expect(lost(low, { ...limit, from: 0, to: 1.1 }, { ...limit, from: 1.45, to: 3 })).toBeNull();
    expect(lost(low, { ...limit, from: 0, to: 1.1 }, { ...limit, from: 1.35, to: 3 })).not.toBeNull();
  });
});
