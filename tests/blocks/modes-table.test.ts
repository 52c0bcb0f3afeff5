import { describe, expect, it } from "vitest";
import { modesTable } from "#blocks/modes-table";
import { figuresOf } from "#figures/figures";
import { type Bench, createBench } from "#machine/bench";
import { defaultMachine, type Machine } from "#machine/machine";
import { learnedAt, machineWith, tenToOne } from "../figures/machines.ts";
import { box, complaint, type } from "../inputs/hand.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

/** A reference of 3000 rpm at the rotor. */
const learned = learnedAt(15_000, 50, machineWith({ ...tenToOne, "modes.0.headRpm": 2100 }));
const shown = (machine: Machine, options: { edit?: boolean; stale?: boolean; brief?: boolean } = {}) =>
  modesTable(figuresOf(machine), options);

/** A table that can be typed into, on a bench; it follows the bench as a page does. */
function editable(machine: Machine = learned) {
  const bench: Bench = createBench(machine);
  const block = mounted(shown(machine, { edit: true }), bench);
  bench.subscribe(() => block.update(shown(bench.now, { edit: true })));
  const input = (path: string) => box(block.one(`[data-input="${path}"]`));
  return { ...block, input };
}

describe("the modes in a table", () => {
  it("has a row for each mode with all its figures", () => {
    const { all, one } = mounted(shown(learned));
    expect(all("tbody th").map((each) => each.textContent)).toEqual(["gentle", "club", "sporty"]);
    const names = [...one("tbody tr").querySelectorAll("output")].map(({ dataset }) => dataset.quantity);
    expect(names).toEqual([
      "set-head-speed",
      "throttle",
      "throttle-entered",
      "head-speed-entered",
      "speed-headroom-hover",
      "speed-headroom-full-pitch",
      "lowest-charge",
    ]);
    expect(all("thead th")).toHaveLength(names.length + 1);
    const modes = all("output[data-quantity=throttle]").map(({ dataset }) => dataset.mode);
    expect(modes).toEqual(["0", "1", "2"]);
    expect(Number(all("output[data-quantity=throttle]")[0]?.dataset.value)).toBeCloseTo(70, 9);
  });

  it("leaves two columns to other pages where it is brief", () => {
    const { one, all } = mounted(shown(learned, { brief: true }));
    const names = [...one("tbody tr").querySelectorAll("output")].map(({ dataset }) => dataset.quantity);
    expect(names).toEqual([
      "set-head-speed",
      "throttle",
      "throttle-entered",
      "head-speed-entered",
      "speed-headroom-full-pitch",
    ]);
    expect(all("thead th")).toHaveLength(names.length + 1);
  });

  it("shows what the old throttle gives where it is asked for", () => {
    const stale = machineWith({ "gears.pinionTeeth": 13 }, learned);
    const { one, all } = mounted(shown(stale, { stale: true }));
    // 2100 rpm are 70 % of 3000; with 13 teeth in place of 12 that asks for 2275 rpm: definition of the set speed.
    expect(Number(one("output[data-quantity=stale-head-speed]").dataset.value)).toBeCloseTo(2275, 6);
    expect(all("thead th").some((each) => each.textContent === "old throttle now gives")).toBe(true);
    expect(mounted(shown(stale)).all("output[data-quantity=stale-head-speed]")).toHaveLength(0);
  });

  it("marks what is short, in words too", () => {
    const { one } = mounted(shown(machineWith({ "modes.0.headRpm": 2900 }, learned)));
    const room = one("output[data-quantity=speed-headroom-full-pitch]");
    expect(room.closest("td")?.className).toBe("is-short");
    expect(room.textContent).toMatch(/^\u2212/);
    expect(one("output[data-quantity=lowest-charge]").textContent).toBe("never");
  });

  it("follows the machine without building rows anew, and modes that come and go", () => {
    const { host, all, update } = mounted(shown(learned));
    const faster = machineWith({ "modes.0.headRpm": 2200 }, learned);
    expect(leavesElements(host, () => update(shown(faster)))).toBe(true);
    expect(plain(all("output[data-quantity=set-head-speed]")[0]?.textContent)).toBe("2,200 rpm");
    update(shown(machineWith({ modes: [learned.modes[0]] })));
    expect(all("tbody tr")).toHaveLength(1);
    update(shown(learned));
    expect(all("tbody tr")).toHaveLength(3);
  });

  it("is read out mode by mode", () => {
    const words = plain(wordsOf(shown(machineWith({ "modes.1.name": "" }, learned))));
    expect(words).toContain("gentle: 2,100 rpm is 70.0 % of throttle; enter 70 % and get 2,100 rpm.");
    expect(words).toContain(" 2: 2,100 rpm is");
  });
});

describe("typing into the table", () => {
  it("a head speed gives the throttle", () => {
    const { input, bench } = editable();
    type(input("modes.0.headRpm"), "2400");
    expect(bench.now.modes[0]?.headRpm).toBe(2400);
    expect(input("modes.0.throttle").value).toBe("80");
  });

  it.each([
    ["75", 2250],
    ["75 %", 2250],
    ["62,5", 1875],
    ["101.5", 3045],
  ])("a throttle of %s gives the head speed", (text, head) => {
    const { input, bench } = editable();
    type(input("modes.0.throttle"), text);
    expect(bench.now.modes[0]?.headRpm).toBe(head);
    expect(input("modes.0.headRpm").value.replace(",", "")).toBe(String(head));
  });

  it.each(["", "much", "0", "151", "-5", "0x32", "1 2"])(
    "a throttle of '%s' is answered in words at the place",
    (text) => {
      const { input, bench } = editable();
      type(input("modes.0.throttle"), text);
      expect(complaint(input("modes.0.throttle"))).toMatch(/type a number from 1 to 150.*It stays at 70\.0\s%/);
      expect(bench.now).toBe(learned);
      type(input("modes.0.throttle"), "71");
      expect(complaint(input("modes.0.throttle"))).toBe("");
    },
  );

  it("a throttle means nothing without a reference", () => {
    const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    const { input, bench } = editable(dead);
    expect(input("modes.0.throttle").value).toBe("");
    type(input("modes.0.throttle"), "70");
    expect(complaint(input("modes.0.throttle"))).toMatch(/no reference/);
    expect(bench.now).toBe(dead);
  });

  it("a throttle can be taken back", () => {
    const { input, bench } = editable();
    type(input("modes.0.throttle"), "75");
    bench.undo();
    expect(input("modes.0.throttle").value).toBe("70");
  });

  it("leaves elements where they are", () => {
    const { host, bench } = editable();
    expect(leavesElements(host, () => void bench.set("modes.0.headRpm", 2345))).toBe(true);
  });

  it("has an id of its own for every box, also with two tables on a page", () => {
    const bench = createBench(defaultMachine);
    const both = document.createElement("div");
    for (let i = 0; i < 2; i++) {
      const { host } = mounted(shown(defaultMachine, { edit: true }), bench);
      both.append(host);
    }
    const ids = [...both.querySelectorAll("input")].map(({ id }) => id);
    expect(ids).toHaveLength(12);
    expect(new Set(ids).size).toBe(12);
  });
});
