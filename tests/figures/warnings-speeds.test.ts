import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import type { WarningName } from "#figures/warning";
import type { Machine } from "#machine/machine";
import { learnedAt, machineWith } from "./machines.ts";

describe("the old throttle under a stale reference", () => {
  // Learned with 10 teeth, and flown with 13: 30 % more head speed, by definition of the set speed.
  const changed = machineWith(
    { "gears.pinionTeeth": 13 },
    learnedAt(13_500, 50, machineWith({ "gears.pinionTeeth": 10 })),
  );
  const over = (machine: Machine, name: WarningName) =>
    figuresOf(machine)
      .warnings.filter((warning) => warning.name === name)
      .map(({ mode, value, limit, words }) => ({ mode, value: Math.round(value ?? 0), limit, words }));

  it("is told where it takes the blades past their limit, with the speed that it really gives", () => {
    expect(over(changed, "blade-speed-over-limit")).toEqual([
      { mode: 2, value: 3188, limit: 2800, words: expect.stringContaining('In "sporty" the rotor turns 3,188') },
    ]);
    const { words } = over(changed, "blade-speed-over-limit")[0]!;
    expect(words).toMatch(
      /with the old throttle; the maker of the blades prints 2,800\srpm as the limit\. Don't fly it\.$/,
    );
    expect(over(learnedAt(13_500, 50, changed), "blade-speed-over-limit")).toEqual([]);
  });

  it("is told of motor and controller too", () => {
    const motor = 3188.25 * (120 / 13);
    const tight = (path: string, limit: number) => machineWith({ [path]: limit }, changed);
    const rated = tight("motor.ratedRpm", Math.floor(motor));
    expect(over(rated, "motor-speed-over-limit")).toMatchObject([{ mode: 2, value: Math.round(motor) }]);
    expect(over(tight("motor.ratedRpm", Math.ceil(motor)), "motor-speed-over-limit")).toEqual([]);
    const field = tight("controller.electricalRpmLimit", Math.floor(5 * motor));
    expect(over(field, "electrical-speed-over-limit")).toMatchObject([{ mode: 2, value: Math.round(5 * motor) }]);
  });

  it("stands beside what the mode itself asks for", () => {
    const both = over(machineWith({ "modes.2.headRpm": 2900 }, changed), "blade-speed-over-limit");
    expect(both.map(({ mode, value }) => [mode, value > 2900])).toEqual([
      [2, false],
      [2, true],
    ]);
  });

  it("isn't put right by learning alone", () => {
    expect(figuresOf(changed).warnings.find(({ name }) => name === "stale-reference")?.words).toMatch(
      /Learn again, and enter the new throttle values before you fly\.$/,
    );
  });
});
