import { describe, expect, it } from "vitest";
import { referenceState } from "#blocks/reference-words";
import { figuresOf } from "#figures/figures";
import type { Machine } from "#machine/machine";
import { learnedAt, machineWith, tenToOne } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const fresh = learnedAt(15_000, 50, machineWith(tenToOne));
const stale = machineWith({ "gears.pinionTeeth": 13 }, fresh);
const shown = (machine: Machine) => referenceState(figuresOf(machine));

describe("the state of the reference", () => {
  it.each([
    ["expected", machineWith({}), /^Nothing was measured yet.*100 % now means [\d,]+ rpm at the motor/],
    ["fresh", fresh, /^The reference belongs.*30,000 rpm at the motor: 3,000 rpm at the rotor\.$/],
    [
      "stale",
      stale,
      /learned with other parts \(pinion\).*8\.3 % more.*30,000 rpm at the motor: 3,250 rpm at the rotor\.$/,
    ],
  ] as const)("%s is said in words and figures", (state, machine, words) => {
    const { one } = mounted(shown(machine));
    expect(one("p").dataset.state).toBe(state);
    expect(one("output").dataset).toMatchObject({ quantity: "reference-state", value: state, unit: "text" });
    expect(plain(wordsOf(shown(machine)))).toMatch(words);
    expect(plain(one("span").textContent)).toBe(plain(wordsOf(shown(machine))));
  });

  it("is a warning while it is stale, and only then", () => {
    const { host, one, update } = mounted(shown(fresh));
    expect(one("p").dataset.warning).toBeUndefined();
    expect(leavesElements(host, () => update(shown(stale)))).toBe(true);
    expect(one("p").dataset.warning).toBe("stale-reference");
    update(shown(fresh));
    expect(one("p").dataset.warning).toBeUndefined();
  });

  it("says that there is none where the motor doesn't turn", () => {
    const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    expect(wordsOf(shown(dead))).toBe("There is no reference yet, so a throttle has no head speed.");
  });
});
