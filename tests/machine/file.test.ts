import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clubTrainer, demos } from "#machine/demos";
import { machineToFileText, parseMachineFile, readJson, readMachineFile } from "#machine/file";
import { anyMachine } from "./arbitrary.ts";

const folder = new URL("../fixtures/machines/", import.meta.url);
const fixture = (name: string) => readFileSync(new URL(name, folder), "utf8");

/** Machine files as they were written once; they must be read for good. */
const good = readdirSync(folder).filter((name) => !name.startsWith("bad-"));

describe("the machine file", () => {
  it("gives any machine back as it was", () => {
    fc.assert(
      fc.property(anyMachine, (machine) => {
        expect(parseMachineFile(machineToFileText(machine))).toEqual({ ok: true, machine, notes: [] });
      }),
    );
  });

  it("is written in one order, whatever order the record came in", () => {
    const mixed = Object.fromEntries(Object.entries({ ...clubTrainer, gears: { ...clubTrainer.gears } }).reverse());
    const turned = { ...mixed, pack: Object.fromEntries(Object.entries(clubTrainer.pack).reverse()) };
    expect(machineToFileText(turned as typeof clubTrainer)).toBe(machineToFileText(clubTrainer));
    expect(machineToFileText(clubTrainer)).toMatch(/^\{\n {2}"version": 1,\n {2}"name": "6-cell club trainer",/);
  });

  it.each(good)("%s is read whole", (name) => {
    const parsed = parseMachineFile(fixture(name));
    expect(parsed).toMatchObject({ ok: true, notes: [] });
  });

  it("of a time that knew nothing of a second stage while it learned says nothing of it still", () => {
    const text = fixture("learned-two-stage.json");
    const parsed = parseMachineFile(text);
    if (!parsed.ok) throw new Error("the file is bad");
    const { gears, controller } = parsed.machine;
    expect(gears.secondStage).not.toBeNull();
    expect(controller.learned.fittedWith?.secondStage).toBeUndefined();
    expect(machineToFileText(parsed.machine)).toBe(text);
    const none = JSON.stringify(parsed.machine).replace('"chordMm":42}', '"chordMm":42,"secondStage":null}');
    expect(readMachineFile(none).machine.controller.learned.fittedWith?.secondStage).toBeNull();
  });

  it("the files of the demo machines are those that are written today", () => {
    const names = ["club-trainer.json", "garden-machine.json", "long-blades.json"];
    expect(demos.map(machineToFileText)).toEqual(names.map(fixture));
  });

  it("a bad file is refused by a program, with every bad field named", () => {
    const parsed = parseMachineFile(fixture("bad-fields.json"));
    expect(parsed.ok).toBe(false);
    expect(!parsed.ok && parsed.problems.filter((p) => !p.note).map((p) => p.path)).toEqual([
      "pack.cells",
      "motor.poles",
      "gears.pinionTeeth",
      "gears.mainTeeth",
      "modes.0.headRpm",
      "controller.usableLowPercent",
    ]);
  });

  it("a page keeps what is good in it", () => {
    const { machine } = readMachineFile(fixture("bad-fields.json"), clubTrainer);
    expect(machine.name).toBe("a file with faults");
    expect(machine.motor.kvRpmPerVolt).toBe(980);
    expect(machine.gears.pinionTeeth).toBe(13);
  });

  it("strangers alone are no reason to refuse", () => {
    const text = JSON.stringify({ ...clubTrainer, colour: "red" });
    expect(parseMachineFile(`\uFEFF${text}`)).toMatchObject({
      ok: true,
      machine: clubTrainer,
      notes: [{ path: "colour" }],
    });
  });

  it.each([
    ["cut", fixture("club-trainer.json").slice(0, 500), "no JSON"],
    ["empty", "", "no JSON"],
    ["of another kind", "cells,6", "no JSON"],
    ["too long", `"${"x".repeat(1_000_001)}"`, "too long"],
    ["deep", "[".repeat(200_000), "no JSON"],
    ["a list", "[]", "a list"],
    ["of a newer version", '{"version": 7}', "newer workbook"],
  ])("a text that is %s is refused in words", (_, text, words) => {
    const parsed = parseMachineFile(text);
    expect(!parsed.ok && parsed.problems.map((problem) => problem.words).join()).toContain(words);
    expect(readMachineFile(text, demos[1]).machine).toBe(demos[1]);
  });

  it("any text at all is read without a throw", () => {
    fc.assert(fc.property(fc.string(), (text) => typeof parseMachineFile(text).ok === "boolean"));
    expect(readJson("[1]", "It")).toEqual({ ok: true, value: [1] });
  });
});
