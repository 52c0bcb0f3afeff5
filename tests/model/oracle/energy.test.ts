import { describe, expect, it } from "vitest";
import { fly } from "#model/flight/run";
import { hover, punch } from "#model/flight/scenarios";
import { sample } from "../flight/sample.ts";
import { energiesAt } from "./energy.ts";

describe("energies of a flight", () => {
  const order = punch({ machine: sample, setSpeed: 220 }, { collective: 0.19 });
  const { trace } = fly(order);
  const last = trace.time.length - 1;
  const e = energiesAt(sample, trace, last, false);

  it("add up from the cells to the air, and from the thrust to height and motion", () => {
    const heats = e.packHeat + e.controllerHeat + e.copperHeat + e.frictionHeat + e.meshHeat;
    expect(e.chemical - heats - e.airWork - e.turning - e.sag).toBeCloseTo(e.missing, 9);
    expect(e.potential).toBeCloseTo(sample.mass * 9.80665 * (trace.height[last]! - trace.height[0]!), 9);
    expect(Math.abs(e.missing / e.chemical)).toBeLessThan(1e-6);
  });

  // By the traces alone: trapezoids over voltage and current.
  it("are those of the traces", () => {
    let out = 0;
    for (let i = 1; i <= last; i++) {
      const power = (k: number) => trace.packVoltage[k]! * trace.packCurrent[k]!;
      out += ((power(i) + power(i - 1)) / 2) * (trace.time[i]! - trace.time[i - 1]!);
    }
    expect(e.delivered / out).toBeCloseTo(1, 2);
  });

  it("notice a part that was left out", () => {
    const heavier = { ...sample, rotor: { ...sample.rotor, inertia: 1.5 * sample.rotor.inertia } };
    const wrong = energiesAt(heavier, trace, Math.floor(last / 3), false);
    expect(Math.abs(wrong.missing - energiesAt(sample, trace, Math.floor(last / 3), false).missing)).toBeGreaterThan(
      1e-5,
    );
  });

  it("leave the height out where it is held, whatever the climb", () => {
    const hovering = hover({ machine: sample, setSpeed: 220 }, 0.5);
    const held = fly({
      ...hovering,
      held: true,
      start: { ...hovering.start, climb: 3 },
      collective: [{ from: 0, kind: "hold", collective: 0.1, over: 0 }],
    });
    const all = energiesAt(sample, held.trace, held.trace.time.length - 1, true);
    expect(held.trace.height.at(-1)! - held.trace.height[0]!).toBeCloseTo(1.5, 9);
    expect([all.potential, all.missingVertical]).toEqual([0, 0]);
    expect(Math.abs(all.missing / all.chemical)).toBeLessThan(1e-6);
  });
});
