import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mostMach, type SteadyLoad, steadyLoads } from "#figures/asked";
import { figuresOf } from "#figures/figures";
import { type NotOperating, operatingOf } from "#figures/operating";
import { notOperatingWords } from "#figures/operating-words";
import type { Rig } from "#figures/rig";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { checkAt } from "#machine/validate";
import { gravity, rpm } from "#model/constants";
import { anyMachine } from "../machine/arbitrary.ts";
import { machineWith } from "./machines.ts";

const rigOf = (machine: Machine): Rig => figuresOf(machine).rig;

describe("a load that can't be had", () => {
  const ask = (changes: Readonly<Record<string, unknown>>, load: SteadyLoad): [Machine, NotOperating] => {
    const machine = machineWith(changes);
    const found = operatingOf(rigOf(machine), load, 0);
    if (found.ok) throw new Error("it can be had");
    return [machine, found];
  };
  const works = (machine: Machine, load: SteadyLoad, options = {}) => operatingOf(rigOf(machine), load, 0, options).ok;

  it("for a head speed that carries nothing names one that does", () => {
    const [machine, found] = ask({ "modes.0.headRpm": 500 }, "hover");
    expect(found).toMatchObject({ why: "blades stall", nearest: { change: "head speed" } });
    const to = Math.ceil((found.nearest as { to: number }).to / rpm / 10) * 10;
    expect(notOperatingWords(found)).toContain(`At ${to.toLocaleString("en")} rpm they would carry it.`);
    expect(works(withValue(machine, "modes.0.headRpm", to), "hover")).toBe(true);
  });

  it("for a mass that no speed carries names one that this speed does", () => {
    const [machine, found] = ask({ "airframe.massG": 50_000, "mainRotor.diameterMm": 600 }, "hover");
    expect(found).toMatchObject({ why: "blades stall", nearest: { change: "mass" } });
    const kilograms = (found.nearest as { to: number }).to;
    expect(works(withValue(machine, "airframe.massG", Math.floor(999 * kilograms)), "hover")).toBe(true);
    expect(works(withValue(machine, "airframe.massG", Math.ceil(1020 * kilograms)), "hover")).toBe(false);
  });

  it("for a full pitch that climbs nowhere names the pitch at which climbing begins", () => {
    const [machine, found] = ask({ "modes.0.collectiveMaxDeg": 2 }, "climb");
    expect(found).toMatchObject({ why: "no climb", nearest: { change: "collective" } });
    const pitch = ((found.nearest as { to: number }).to * 180) / Math.PI;
    expect(works(withValue(machine, "modes.0.collectiveMaxDeg", pitch + 0.1), "climb")).toBe(true);
    expect(works(withValue(machine, "modes.0.collectiveMaxDeg", pitch - 0.1), "climb")).toBe(false);
    expect(notOperatingWords(found)).toMatch(/^There is no steady climb at full pitch here: .* begins to climb\.$/);
  });

  it("for a speed above the ceiling names the ceiling, for a flat pack the charge", () => {
    const [machine, found] = ask({ "modes.0.headRpm": 3100 }, "full-pitch");
    expect(found).toMatchObject({ why: "not enough duty", nearest: { change: "head speed" } });
    const to = Math.floor((found.nearest as { to: number }).to / rpm / 10) * 10;
    expect(works(withValue(machine, "modes.0.headRpm", to), "full-pitch")).toBe(true);
  });

  it("for tips too fast names the speed at which the model ends", () => {
    const [machine, found] = ask({ "modes.0.headRpm": 8000 }, "flat");
    expect(found.why).toBe("tips too fast");
    const to = (found.nearest as { to: number }).to;
    expect((to * rigOf(machine).parts.mainRotor.radius) / rigOf(machine).air.soundSpeed).toBeCloseTo(mostMach, 12);
  });

  it("for a flight too fast names the airspeed", () => {
    const machine = machineWith({ "modes.0.headRpm": 1500 });
    const found = operatingOf(rigOf(machine), "forward", 0, { airspeed: 30 });
    expect(found).toMatchObject({ ok: false, why: "retreating blades stall", nearest: { change: "airspeed" } });
    if (found.ok || found.nearest.change === "none") return;
    expect(works(machine, "forward", { airspeed: found.nearest.to - 0.1 })).toBe(true);
    expect(works(machine, "forward", { airspeed: found.nearest.to + 0.1 })).toBe(false);
    // A drag area as large as a parachute's: no blade stalls, but nothing drives it.
    const braked = machineWith({ "airframe.dragAreaM2": 0.4, "modes.0.headRpm": 2400 });
    const short = operatingOf(rigOf(braked), "forward", 0);
    expect(short).toMatchObject({ ok: false, nearest: { change: "airspeed" } });
    if (short.ok || short.nearest.change === "none") return;
    expect(works(braked, "forward", { airspeed: short.nearest.to })).toBe(true);
  });

  it("for a load heavier than the pack's power names cells that would do", () => {
    const [machine, found] = ask({ "pack.cells": 1, "modes.0.headRpm": 1850 }, "hover");
    expect(found.nearest.change).toBe("cells");
    const cells = (found.nearest as { to: number }).to;
    expect(works(withValue(machine, "pack.cells", cells), "hover")).toBe(true);
    expect(works(withValue(machine, "pack.cells", cells - 1), "hover")).toBe(false);
    expect(rigOf(machine).weight).toBeCloseTo(2.05 * gravity, 6);
  });

  it("for any machine that can be built: what is named takes the reason away", () => {
    const reasons = new Set<string>();
    fc.assert(
      fc.property(anyMachine, fc.constantFrom(...steadyLoads), (machine, load) => {
        const found = operatingOf(rigOf(machine), load, 0);
        if (found.ok || found.nearest.change === "none") return;
        const again = tried(machine, load, found);
        if (again === null) return;
        reasons.add(`${found.why}, ${found.nearest.change}`);
        expect([found.why, again.ok ? "held" : again.why]).not.toEqual([found.why, found.why]);
        if (found.why.startsWith("not enough")) expect(again.ok || again.why !== "not enough duty").toBe(true);
      }),
      { seed: 20_260_302, numRuns: 250 },
    );
    expect(reasons.size).toBeGreaterThan(5);
  });
});

/** The same load once more with what was named, rounded as the words round it; null where no machine may have it. */
function tried(
  machine: Machine,
  load: SteadyLoad,
  { why, nearest }: NotOperating,
): ReturnType<typeof operatingOf> | null {
  if (nearest.change === "none") return null;
  const { to, change } = nearest;
  // Slower than this the words say that only hovering is left.
  if (change === "airspeed" && to < 0.1) return operatingOf(rigOf(machine), "hover", 0);
  if (change === "airspeed") return operatingOf(rigOf(machine), load, 0, { airspeed: Math.floor(to * 10) / 10 });
  if (change === "charge")
    return operatingOf(rigOf(machine), load, 0, { charge: Math.min(1, Math.ceil(to * 100) / 100) });
  const headRpm = to / rpm;
  const [path, value] = {
    "head speed": ["modes.0.headRpm", why === "blades stall" ? Math.ceil(headRpm / 10) * 10 : Math.floor(headRpm)],
    collective: ["modes.0.collectiveMaxDeg", Math.ceil((to * 1800) / Math.PI) / 10 + 0.1],
    mass: ["airframe.massG", Math.floor(999 * to)],
    cells: ["pack.cells", to],
  }[change] as [string, number];
  if (!checkAt(path, value).ok) return null;
  return operatingOf(rigOf(withValue(machine, path, value)), load, 0);
}
