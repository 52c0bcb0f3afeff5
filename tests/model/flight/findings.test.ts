import { describe, expect, it } from "vitest";
import { modeLost } from "#model/flight/findings";
import { fly } from "#model/flight/run";
import { hover, wholePack } from "#model/flight/scenarios";
import { valueAt } from "#model/flight/trace";
import { sample, withParts } from "./sample.ts";

const rpm = Math.PI / 30;
const mode = { machine: sample, setSpeed: 2100 * rpm };

describe("findings", () => {
  // Two uniform blades with 1403.6 J at 2000 rpm, down to 1600 rpm at a mean power of 400 W: 505.3 J in 1.263 s (closed form,
  // delta(I w^2 / 2) / P). The load here rises with the square of the speed: t = I / c (1 / w1 - 1 / w0).
  it("stored energy pays for as long as the closed form says", () => {
    const [fast, slow] = [2000 * rpm, 1600 * rpm];
    const inertia = (2 * 1403.677) / fast ** 2;
    const load = (inertia * (1 / slow - 1 / fast)) / 1.263309363;
    const machine = withParts({
      rotor: { inertia, map: { thrust: () => 0, torque: (speed) => load * speed * speed } },
    });
    const flight = fly({
      machine: { ...machine, tail: null },
      start: { speed: fast, collective: 0, height: 0, climb: 0 },
      throttle: [{ from: 0, kind: "off" }],
      collective: [],
      duration: 1.5,
      held: true,
    });
    const { time, rotorSpeed, airWork } = flight.trace;
    const at = rotorSpeed.findIndex((speed) => speed <= slow);
    expect(Math.abs(airWork[at]! - 505.3)).toBeLessThan(0.6);
    // The first sample past it: at most a tick late; the motor pushes nothing but holds on for the first ticks.
    expect(Math.abs(time[at]! - 1.263)).toBeLessThan(0.003);
  });

  it("a fast mode is lost at more charge than a slow one", () => {
    const machine = withParts({ pack: { capacity: 1200 } });
    const mix = [
      { collective: 0.1, seconds: 2 },
      { collective: 0.19, seconds: 1.5 },
    ];
    const lost = (speed: number) => {
      const flight = fly(wholePack({ machine, setSpeed: speed * rpm }, mix));
      const loss = modeLost(flight);
      if (loss) expect(loss.charge).toBeCloseTo(valueAt(flight.trace, "charge", loss.time), 12);
      return loss;
    };
    expect(lost(2750)!.charge).toBeGreaterThan(lost(2550)!.charge + 0.02);
    expect(modeLost(fly(hover(mode, 2)))).toBeNull();
  });
});
