import { expect, it, vi } from "vitest";
import { figuresOf } from "#figures/figures";
import { aheadOfFlight } from "#flights/ahead";
import { flightOf } from "#flights/flight";
import { withValue } from "#machine/paths";
import { machineWith } from "../figures/machines.ts";

it("leaves few rows to be asked for when the gears are moved, and none where nothing flies", () => {
  // Blades of their own: what other tests have asked for is no help.
  const machine = machineWith({ "mainRotor.chordMm": 52.5 });
  const scenario = { kind: "punch" } as const;
  const thrust = vi.spyOn(figuresOf(machine).rig.main, "thrustAt");
  for (const piece of aheadOfFlight({ machine, mode: 1, scenario })) piece();
  expect(thrust.mock.calls.length).toBeGreaterThan(1000);
  thrust.mockClear();
  const other = withValue(machine, "gears.pinionTeeth", 17);
  expect(figuresOf(other).rig.main).toBe(figuresOf(machine).rig.main);
  expect(flightOf({ machine: other, mode: 1, scenario }).ok).toBe(true);
  expect(thrust.mock.calls.length).toBeLessThan(300);
  thrust.mockRestore();
  const dead = withValue(machine, "motor.kvRpmPerVolt", 1);
  expect([...aheadOfFlight({ machine: dead, mode: 99, scenario })]).toEqual([]);
});
