import { describe, expect, it } from "vitest";
import { endWords } from "#model/flight/events";
import { impossible } from "#model/flight/machine";
import { fly } from "#model/flight/run";
import { hover } from "#model/flight/scenarios";
import { sample, withParts } from "./sample.ts";

type Make = (bad: number) => Parameters<typeof withParts>[0];

/** Every number that a flight divides by or takes a root of, and the name that its refusal gives. */
const above: [string, Make][] = [
  ["pack's capacity", (v) => ({ pack: { capacity: v } })],
  ["time constant of the sag", (v) => ({ pack: { slowTime: v } })],
  ["motor's torque constant", (v) => ({ motor: { constant: v } })],
  ["motor's inertia", (v) => ({ motor: { inertia: v } })],
  ["motor's heat capacity", (v) => ({ motor: { heatCapacity: v } })],
  ["motor's poles", (v) => ({ motor: { poles: v } })],
  ["winding temperature", (v) => ({ motor: { temperature: v } })],
  ["temperature of the resistance", (v) => ({ motor: { resistanceTemperature: v } })],
  ["controller's heat capacity", (v) => ({ controller: { heatCapacity: v } })],
  ["controller's temperature", (v) => ({ controller: { temperature: v } })],
  ["governor's loop rate", (v) => ({ controller: { loopRate: v } })],
  ["controller's duty steps", (v) => ({ controller: { dutySteps: v } })],
  ["controller's clock step", (v) => ({ controller: { clockStep: v } })],
  ["learned reference", (v) => ({ controller: { reference: v } })],
  ["gear ratio", (v) => ({ gearRatio: v })],
  ["mesh efficiency", (v) => ({ meshEfficiency: v })],
  ["rotor radius", (v) => ({ rotor: { radius: v } })],
  ["rotor's inertia", (v) => ({ rotor: { inertia: v } })],
  ["machine's mass", (v) => ({ mass: v })],
  ["air density", (v) => ({ airDensity: v })],
  ["air temperature", (v) => ({ airTemperature: v })],
  ["open voltage of the pack", (v) => ({ pack: { openVoltage: () => v } })],
];

const orZero: [string, Make][] = [
  ["winding resistance", (v) => ({ motor: { resistance: v }, controller: { resistance: 1 } })],
  ["controller's resistance", (v) => ({ controller: { resistance: v }, motor: { resistance: 1 } })],
  ["pack's resistance", (v) => ({ pack: { resistance: v } })],
  ["resistance of the sag", (v) => ({ pack: { slowResistance: v } })],
  ["no-load current", (v) => ({ motor: { noLoadCurrent: v } })],
  ["motor's cooling", (v) => ({ motor: { cooling: v } })],
  ["controller's cooling", (v) => ({ controller: { cooling: v } })],
  ["proportional gain", (v) => ({ controller: { proportionalGain: v } })],
  ["integral gain", (v) => ({ controller: { integralGain: v } })],
  ["gain of the back-calculation", (v) => ({ controller: { backGain: v } })],
  ["start ramp", (v) => ({ controller: { startRamp: v } })],
  ["bail-out ramp", (v) => ({ controller: { bailOutRamp: v } })],
  ["lowest duty", (v) => ({ controller: { lowestDuty: v } })],
  ["drag area", (v) => ({ dragArea: v })],
  ["charge at the start", (v) => ({ pack: { charge: v } })],
];

const refused = (parts: Parameters<typeof withParts>[0]) => impossible(withParts(parts));

describe("figures with which no flight is possible", () => {
  it.each(above)("the %s has to be above nothing", (what, make) => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(refused(make(bad))?.what).toBe(what);
    const order = hover({ machine: withParts(make(-1)), setSpeed: 220 }, 1);
    const { end, trace } = fly(order);
    expect([end.why, trace.time.length]).toEqual(["impossible-machine", 0]);
    expect(endWords(end, order.machine)).toBe(`No flight is possible: the ${what} is -1.`);
  });

  it.each(orZero)("the %s may be nothing, but not less", (what, make) => {
    expect(refused(make(0))).toBeNull();
    expect(refused(make(-1e-9))?.what).toBe(what);
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) expect(refused(make(bad))).not.toBeNull();
  });

  it.each([
    ["room below full mesh efficiency", { meshEfficiency: 1.0001 }, { meshEfficiency: 1 }],
    ["room below full charge", { pack: { charge: 1.0001 } }, { pack: { charge: 1 } }],
    ["room below full duty", { controller: { highestDuty: 1.0001 } }, { controller: { highestDuty: 1 } }],
    [
      "range of duty",
      { controller: { lowestDuty: 0.6, highestDuty: 0.6 } },
      { controller: { lowestDuty: 0.5, highestDuty: 0.6 } },
    ],
    [
      "resistance of motor and controller",
      { motor: { resistance: 0 }, controller: { resistance: 0 } },
      { motor: { resistance: 0 } },
    ],
  ])("the %s ends where it should", (what, bad, good) => {
    expect(refused(bad)?.what).toBe(what);
    expect(refused(good)).toBeNull();
  });

  it("a machine that is all right flies", () => {
    expect(fly(hover({ machine: sample, setSpeed: 220 }, 0.1)).end.why).toBe("flown");
  });
});
