import { beforeEach, describe, expect, it, vi } from "vitest";
import { modesTable } from "#blocks/modes-table";
import { makePin } from "#blocks/pin";
import { pinnedAs } from "#blocks/pin-words";
import { quantity } from "#blocks/quantity";
import { headroomPlot } from "#blocks/room-plot";
import { together } from "#blocks/together";
import { figuresOf } from "#figures/figures";
import { socketFor } from "#inputs/bound";
import { createBench } from "#machine/bench";
import { demos } from "#machine/demos";
import { defaultMachine, type Machine } from "#machine/machine";
import { pin, pinNow } from "#view/pin";
import type { Shown } from "#view/shown";
import { machineWith } from "../figures/machines.ts";
import { mounted, plain } from "./mounted.ts";

const more = machineWith({ "gears.pinionTeeth": 15 });

beforeEach(() => pin(null));

describe("what a pinned machine has other", () => {
  it.each([
    [{ "gears.pinionTeeth": 14 }, "14 t"],
    [{ "pack.chargePercent": 40 }, "charge 40 %"],
    [{ "gears.mainTeeth": 110, "gears.pinionTeeth": 14 }, "14 t, main gear 110 t"],
    [{ "modes.1.headRpm": 2000 }, "club 2,000 rpm"],
    [{ "pack.chemistry": "lihv" }, "cell chemistry high-voltage lithium"],
    [{ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }, "second stage"],
    [{ "pack.cells": 5, "motor.poles": 14, "gears.pinionTeeth": 14 }, "3 changes"],
  ])("%j: %s", (changes, words) => {
    const pinned = machineWith(changes);
    expect(plain(pinnedAs(defaultMachine, pinned))).toContain(words);
  });

  it("is its name when it is another machine", () => {
    expect(pinnedAs(defaultMachine, demos[1]!)).toBe(demos[1]!.name);
    expect(pinnedAs(defaultMachine, { ...defaultMachine, name: "the same, renamed" })).toBe("");
  });
});

describe("the strip", () => {
  function strip() {
    const bench = createBench();
    const element = makePin(socketFor(document.body, bench));
    document.body.replaceChildren(element);
    const button = (act: string) => element.querySelector<HTMLButtonElement>(`[data-pin-act="${act}"]`)!;
    return { bench, element, button, words: () => plain(element.querySelector(".pin-words")?.textContent) };
  }

  it("pins the machine as it is, tells what changes, and goes back to it in one step", async () => {
    const { bench, element, button, words } = strip();
    expect([element.dataset.pin, button("back").hidden, button("drop").hidden]).toEqual(["none", true, true]);
    button("set").click();
    expect(pinNow()).toBe(bench.now);
    expect([element.dataset.pin, button("set").hidden]).toEqual(["same", true]);
    bench.set("gears.pinionTeeth", 15);
    bench.set("pack.chargePercent", 50);
    expect(element.dataset.pin).toBe("differs");
    await vi.waitFor(() => expect(words()).toContain("13 t"));
    expect(words()).toBe("Pinned, and dashed on the plots: charge 100 %, 13 t.");
    button("back").click();
    expect([bench.now.gears.pinionTeeth, bench.now.pack.chargePercent]).toEqual([13, 100]);
    bench.undo();
    expect([bench.now.gears.pinionTeeth, bench.now.pack.chargePercent]).toEqual([15, 50]);
  });

  it("pins anew, and unpins", () => {
    const { bench, element, button } = strip();
    button("set").click();
    bench.set("gears.pinionTeeth", 15);
    button("set").click();
    expect(pinNow()?.gears.pinionTeeth).toBe(15);
    button("drop").click();
    expect([pinNow(), element.dataset.pin]).toEqual([null, "none"]);
  });
});

describe("a block for several machines", () => {
  const beside = <S>(make: (machine: Machine) => Shown<S>, pinned: Machine = defaultMachine) => {
    const shown = make(more);
    return {
      view: shown.view,
      state: together(
        shown as unknown as Shown,
        { pinned: make(pinned) as unknown as Shown },
        { now: more, pinned },
      ) as S,
    };
  };

  it("draws the pinned curves of a plot of this machine", () => {
    const { state } = beside((machine) => headroomPlot(figuresOf(machine)));
    const dashed = state.curves.filter(({ ink }) => ink === "pinned-now");
    expect(dashed.map(({ ys }) => ys)).toEqual(
      headroomPlot(figuresOf(defaultMachine))
        .state.curves.map(({ ys }) => ys)
        .reverse(),
    );
    expect(dashed.some(({ label }) => plain(label) === "pinned: 13 t")).toBe(true);
  });

  it("has a second line in the cells of the modes that differ, and in no other", () => {
    const table = mounted(beside((machine) => modesTable(figuresOf(machine))));
    const row = table.all("tbody tr")[2]!;
    const then = (name: string) =>
      plain(row.querySelector(`td:has([data-quantity=${name}]) .pinned-value:not([hidden])`)?.textContent);
    const value = figuresOf(defaultMachine).number("throttle", 2) ?? 0;
    expect(then("throttle")).toBe(`${value.toFixed(1)} %`);
    expect(then("set-head-speed")).toBe("");
    expect(row.querySelector("th .pinned-value")?.textContent).toBe("pinned");
    table.update(modesTable(figuresOf(more)));
    expect(table.all(".pinned-value:not([hidden])")).toEqual([]);
  });

  it("marks a figure in the text, and tells the gap where it is opened", () => {
    const number = mounted(beside((machine) => quantity(figuresOf(machine), "gear-ratio")));
    expect(Number(number.one("output").dataset.pinned)).toBeCloseTo(120 / 13, 9);
    number.one("button").click();
    const gap = plain(number.one(".worked .pinned-value").textContent);
    expect(gap).toMatch(/^9\.23 · now .1\.23$/);
    number.update(quantity(figuresOf(more), "gear-ratio"));
    expect(number.one("output").dataset.pinned).toBeUndefined();
    expect(number.one(".worked .pinned-value").hidden).toBe(true);
  });

  it("shows other blocks as they are", () => {
    const odd: Shown = { view: { name: "odd", words: String, mount: () => () => {} }, state: 1 };
    expect(together(odd, { pinned: { ...odd, state: 2 } }, { now: more, pinned: defaultMachine })).toBe(1);
  });
});
