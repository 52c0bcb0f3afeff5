import { describe, expect, it } from "vitest";
import { type FlightOrder, fly } from "#model/flight/run";
import { autorotation, punch, spoolUp, suddenUnload } from "#model/flight/scenarios";
import { oracle, worstDifference } from "./oracle.ts";
import { sample, withParts } from "./sample.ts";

const mode = { machine: sample, setSpeed: (2100 * Math.PI) / 30 };
const full = 0.19;
/** The oracle takes seconds where other work is on the machine. */
const patience = 60_000;

describe("a flight against an adaptive integrator", { timeout: patience }, () => {
  const all = { samples: 1e6 };
  const openLoop: FlightOrder = {
    ...punch(mode, { collective: full, at: 0.3, hold: 0.6 }),
    duration: 2,
    throttle: [{ from: 0, kind: "duty", duty: 0.7, ramp: 0 }],
    ...all,
  };
  const pulled: FlightOrder = { ...autorotation(mode), duration: 2, ...all };
  const cases: [string, FlightOrder][] = [
    ["a punch", openLoop],
    [
      "a spool-up",
      { ...spoolUp(mode), throttle: [{ from: 0, kind: "duty", duty: 0.5, ramp: 1 }], duration: 2, ...all },
    ],
    [
      "a motor cut, the clutch loose",
      {
        ...pulled,
        throttle: [
          { from: 0, kind: "duty", duty: 0.68, ramp: 0 },
          { from: 1, kind: "off" },
        ],
      },
    ],
  ];

  it.each(cases)("%s without governor: within 1e-5 in every state at every sample", (_, order) => {
    const flight = fly(order);
    expect(flight.ticks).toBeGreaterThan(1000);
    const states = oracle(order, flight);
    // Relative to each state, from 5 % of its largest value up: a state that passes through nothing has no relative error there.
    expect(worstDifference(flight, states, 0.05).value).toBeLessThan(1e-5);
  });

  it("comes closer with finer steps", () => {
    const worst = (stepShare: number) => {
      const order = { ...openLoop, stepShare };
      const flight = fly(order);
      return worstDifference(flight, oracle(order, flight), 0.01).value;
    };
    const [coarse, fine] = [worst(0.2), worst(0.05)];
    expect(fine).toBeLessThan(coarse / 4);
    expect(fine).toBeLessThan(1e-6);
  });

  const governed: [string, (m: typeof mode) => FlightOrder][] = [
    ["a punch", (m) => ({ ...punch(m, { collective: full, at: 0.2, hold: 0.4 }), duration: 1.6 })],
    ["an unload", (m) => ({ ...suddenUnload(m, full, 0.5), duration: 2.2 })],
    ["a bail-out", (m) => ({ ...autorotation(m, { cut: 0.2, bailOut: 0.8 }), duration: 2.4 })],
  ];

  it.each(governed)("%s with the governor: within 1e-4", (_, make) => {
    const machine = withParts({ controller: { clockStep: 1e-12, dutySteps: 1e12 } });
    const order = { ...make({ ...mode, machine }), ...all };
    const flight = fly(order);
    expect(flight.ticks).toBeGreaterThan(1000);
    expect(worstDifference(flight, oracle(order, flight), 0.05).value).toBeLessThan(1e-4);
  });

  // Where the clock and the duty move in steps, one count that falls the other way sends two integrators on different,
  // equally good ways: the steps have to be fine enough for none to do so.
  it.each(governed)("%s with the governor, its clock and its duty in steps: within 1e-4", (_, make) => {
    const order = { ...make(mode), ...all, stepShare: 0.02 };
    const flight = fly(order);
    expect(worstDifference(flight, oracle(order, flight), 0.05).value).toBeLessThan(1e-4);
  });
});
