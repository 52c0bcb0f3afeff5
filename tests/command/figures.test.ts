import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { catalogue, type QuantityName, quantityNames } from "#figures/catalogue";
import { figuresOf } from "#figures/figures";
import { machineToFileText, parseMachineFile } from "#machine/file";
import { machineWith } from "../figures/machines.ts";

const folder = "tests/fixtures/machines";
const files = ["club-trainer", "garden-machine", "long-blades", "learned-two-stage"].map(
  (name) => `${folder}/${name}.json`,
);

interface Quantity {
  readonly name: QuantityName;
  readonly mode?: number;
  readonly value: number | string | null;
  readonly unit: string;
  readonly low: number | null;
  readonly high: number | null;
}
interface Warning {
  readonly name: string;
  readonly quantity?: string;
  readonly mode?: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly words: string;
}
interface Report {
  readonly quantities: readonly Quantity[];
  readonly warnings: readonly Warning[];
}

/** Runs the command as another program would. */
function run(args: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync("node_modules/.bin/tsx", ["src/command/figures.ts", ...args], {
    input,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

function reportOf(args: readonly string[], input = ""): Report {
  const { status, stdout, stderr } = run(args, input);
  expect([status, stderr]).toEqual([0, ""]);
  return JSON.parse(stdout) as Report;
}

/** The report of a file; each is run once. */
const reports = new Map<string, Report>();
function fileReport(file: string): Report {
  const report = reports.get(file) ?? reportOf([file]);
  reports.set(file, report);
  return report;
}

const slow = { timeout: 60_000 };

describe("a good machine file", slow, () => {
  it("is read by the command that the package names", () => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };
    expect(scripts.figures).toBe("tsx src/command/figures.ts");
  });

  it.each(files)("%s gives every figure once, with its unit and band", (file) => {
    const report = fileReport(file);
    expect(Object.keys(report)).toEqual(["quantities", "warnings"]);
    const parsed = parseMachineFile(readFileSync(file, "utf8"));
    if (!parsed.ok) throw new Error("the file is bad");
    const figures = figuresOf(parsed.machine);
    const modes = [...parsed.machine.modes.keys()];
    const wanted = quantityNames.flatMap((name) =>
      catalogue[name].perMode ? modes.map((m) => `${name} ${m}`) : [name],
    );
    expect(report.quantities.map(({ name, mode }) => (mode === undefined ? name : `${name} ${mode}`))).toEqual(wanted);
    for (const { name, mode, value, unit, low, high } of report.quantities) {
      expect([name, unit, value]).toEqual([name, catalogue[name].unit, figures.value(name, mode ?? 0)]);
      if (typeof value !== "number") expect([low, high]).toEqual([null, null]);
      else {
        const [below, above] = [low ?? Number.NaN, high ?? Number.NaN];
        expect([name, below <= value + 1e-9 && above >= value - 1e-9]).toEqual([name, true]);
      }
    }
  });

  it("has keys that other programs know, and no others in a quantity", () => {
    const { quantities } = fileReport(files[0]!);
    for (const quantity of quantities) {
      const keys =
        "mode" in quantity
          ? ["name", "mode", "value", "unit", "low", "high"]
          : ["name", "value", "unit", "low", "high"];
      expect(Object.keys(quantity)).toEqual(keys);
    }
  });

  it("gives warnings with figure, limit, unit and words", () => {
    const machine = machineWith({ "modes.0.headRpm": 2801, "gears.pinionTeeth": 9 });
    const { warnings } = reportOf(["-"], machineToFileText(machine));
    expect(warnings.find(({ name }) => name === "blade-speed-over-limit")).toMatchObject({
      mode: 0,
      value: 2801,
      limit: 2800,
      unit: "rpm",
      words: expect.stringContaining("2,801"),
    });
    expect(warnings.find(({ name }) => name === "pinion-mesh-poor")).not.toHaveProperty("mode");
    for (const warning of warnings) {
      for (const key of ["name", "value", "limit", "unit", "words"]) expect(warning).toHaveProperty(key);
    }
  });

  it("comes by standard input too", () => {
    expect(reportOf(["-"], readFileSync(files[0]!, "utf8"))).toEqual(fileReport(files[0]!));
  });

  it("may hold fields that a machine doesn't have: they are told of, and the figures come all the same", () => {
    const text = readFileSync(files[0]!, "utf8").replace('"version": 1,', '"version": 1, "paint": "red",');
    const { status, stdout, stderr } = run(["-"], text);
    expect([status, stderr.trim().split("\n").length]).toEqual([0, 1]);
    expect(stderr).toMatch(/^paint: /);
    expect(JSON.parse(stdout)).toEqual(fileReport(files[0]!));
  });
});

describe("figures without a value", slow, () => {
  it.each([
    ["a speed that can't be held", { "modes.0.headRpm": 3300 }],
    ["a motor that doesn't turn", { "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 }],
    ["blades that would stall", { "airframe.massG": 50_000 }],
  ])("are null, each with a warning that says why: %s", (_, changes) => {
    const { status, stdout } = run(["-"], machineToFileText(machineWith(changes)));
    expect(status).toBe(0);
    expect(stdout).not.toMatch(/NaN|Infinity|undefined/);
    const { quantities, warnings } = JSON.parse(stdout) as Report;
    const gaps = quantities.filter(({ value }) => value === null);
    expect(gaps.length).toBeGreaterThan(3);
    for (const { name, mode, unit } of gaps) {
      const why = warnings.filter((each) => each.quantity === name && each.mode === mode);
      expect([name, why.length]).toEqual([name, 1]);
      expect(why[0]).toMatchObject({ name: "no-headroom", value: null, limit: null, unit });
      expect(why[0]?.words).toMatch(/: \w.*\.$/);
      expect(why[0]?.words).not.toContain("there is no value for this machine");
    }
  });
});

describe("a bad machine file", slow, () => {
  it("gives nothing but each bad field, what it holds and what is allowed", () => {
    const { status, stdout, stderr } = run([`${folder}/bad-fields.json`]);
    expect([status, stdout]).toEqual([2, ""]);
    const lines = stderr.trim().split("\n");
    const line = (path: string) => lines.find((each) => each.startsWith(`${path}: `)) ?? "";
    expect(line("pack.cells")).toMatch(/0.*1 to 24/);
    expect(line("motor.poles")).toMatch(/7.*even/);
    expect(line("gears.pinionTeeth")).toMatch(/thirteen.*5 to 80/);
    expect(line("gears.mainTeeth")).toMatch(/10 to 500/);
    expect(line("modes.0.headRpm")).toMatch(/-1|−1/);
    expect(line("modes.0.headRpm")).toMatch(/50 to 20,000/);
    expect(line("controller.usableLowPercent")).toMatch(/95.*90/);
  });

  it.each([
    ["no JSON", "{"],
    ["nothing", ""],
    ["a list", "[]"],
    ["another version", readFileSync(files[0]!, "utf8").replace('"version": 1', '"version": 99')],
  ])("is refused in words when it holds %s", (_, text) => {
    const { status, stdout, stderr } = run(["-"], text);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr.trim()).toMatch(/\w+ \w+ \w+/);
    expect(stderr).not.toMatch(/\bat .*\.ts:\d+/);
  });

  it("is told by its name when it isn't there", () => {
    const { status, stdout, stderr } = run([`${folder}/none.json`]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/none\.json can't be read/);
  });

  it("must be named", () => {
    const { status, stdout, stderr } = run([]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/Name a machine file/);
  });
});
