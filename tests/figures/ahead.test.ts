import { afterEach, expect, it, vi } from "vitest";
import { aheadOf } from "#figures/ahead";
import { ceilingCurve } from "#figures/curves";
import { figuresOf } from "#figures/figures";
import { withValue } from "#machine/paths";
import { machineWith } from "./machines.ts";

afterEach(() => void vi.restoreAllMocks());

it("leaves no rotor to be solved when gears, motor or pack are moved", () => {
  // A mass of its own: what other tests have solved is no help.
  const machine = machineWith({ "airframe.massG": 2931 });
  const figures = figuresOf(machine);
  const { main, tail } = figures.rig;
  const work = [main, tail.rotor].flatMap((rotor) => [vi.spyOn(rotor, "torqueForThrust"), vi.spyOn(rotor, "torqueAt")]);
  const solved = () => work.reduce((sum, { mock }) => sum + mock.calls.length, 0);
  for (const piece of aheadOf(figures)) piece();
  const before = solved();
  expect(before).toBeGreaterThan(300);
  for (const [path, ...ends] of [
    ["gears.pinionTeeth", 8, 30],
    ["gears.mainTeeth", 60, 200],
    ["pack.cells", 2, 14],
    ["pack.chargePercent", 0, 100],
    ["motor.kvRpmPerVolt", 300, 4000],
  ] as const) {
    for (const value of ends) {
      const moved = figuresOf(withValue(machine, path, value));
      // The rotor is the same one, and its points with it.
      expect(moved.rig.main).toBe(main);
      for (const load of ["hover", "full-pitch"] as const) ceilingCurve(moved, load, 0);
      moved.number("learning-head-speed");
    }
  }
  expect(solved()).toBe(before);
});

it("is cut in small pieces, nearest to the speed that is set first", () => {
  const figures = figuresOf(machineWith({ "airframe.massG": 2933 }));
  const set = figures.rig.parts.modes[0]!.headSpeed;
  const asked: number[] = [];
  const piece = aheadOf(figures).next().value;
  const { main } = figures.rig;
  const solve = main.torqueForThrust;
  vi.spyOn(main, "torqueForThrust").mockImplementation((task) => {
    asked.push(task.speed / set);
    return solve(task);
  });
  if (piece) piece();
  expect(asked.length).toBeGreaterThan(0);
  expect(asked.length).toBeLessThan(12);
  for (const share of asked) expect(Math.abs(Math.log(share))).toBeLessThan(0.1);
});
