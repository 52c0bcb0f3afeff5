import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, it, vi } from "vitest";
import { createBench, MOST_STEPS } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";
import { fields, shapeAt } from "#machine/fields";
import { fittedNow, machineSchema } from "#machine/machine";
import { valueAt, withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { anyMachine, anyValueFor } from "./arbitrary.ts";

const [, small, large] = demos;

/** A path of a first or second flight mode for one of any, and a value that may or may not fit it. */
const anyChange = fc
  .constantFrom(...fields.map((field) => field.path.replace("*", "1")), "gears.secondStage", "modes", "pack.voltage")
  .chain((path) => fc.tuple(fc.constant(path), anyValueFor(shapeAt(path) ?? shapeAt("pack.cells")!)));

describe("the bench", () => {
  it("takes a good change and tells its listeners before it returns", () => {
    const bench = createBench();
    const heard = vi.fn(() => expect(bench.now.gears.pinionTeeth).toBe(14));
    const leave = bench.subscribe(heard);
    expect(bench.set("gears.pinionTeeth", 14)).toBeNull();
    expect(heard).toHaveBeenCalledTimes(1);
    expect(bench.changedPaths).toEqual(["gears.pinionTeeth"]);
    leave();
    bench.set("gears.pinionTeeth", 15);
    expect(heard).toHaveBeenCalledTimes(1);
    expect(bench.version).toBe(2);
  });

  it.each([
    ["gears.pinionTeeth", 12.5, "a whole number"],
    ["gears.pinionTeeth", "fourteen", "the text “fourteen”"],
    ["pack.cells", 0, "from 1 to 24"],
    ["controller.usableLowPercent", 95, "less than the high end"],
    ["controller.usableHighPercent", 55, "more than the low end"],
    ["mainRotor.diameterMm", 500, "more than twice the blade's centre of mass, 510 mm"],
    ["modes.3.headRpm", 2000, "no flight mode 4"],
    ["gears.secondStage.driverTeeth", 20, "Set all fields of its group at once"],
    ["pack.voltage", 30, "to 25.2 V"],
    ["gears.size", 1, "no field “gears.size”"],
  ])("refuses %s = %j in words and changes nothing", (path, value, words) => {
    const bench = createBench();
    const heard = vi.fn();
    bench.subscribe(heard);
    const problem = bench.set(path, value);
    expect(problem).toMatchObject({ path, value });
    expect(problem?.words).toContain(words);
    expect(bench.now).toBe(clubTrainer);
    expect([heard.mock.calls.length, bench.canUndo, bench.version]).toEqual([0, false, 0]);
  });

  it("does nothing for a value that is there already", () => {
    const bench = createBench();
    expect(bench.set("gears.pinionTeeth", 13)).toBeNull();
    expect(bench.set("controller.learned.fittedWith", null)).toBeNull();
    expect([bench.canUndo, bench.version]).toEqual([false, 0]);
  });

  it("sets the charge by the voltage", () => {
    const bench = createBench();
    expect(bench.set("pack.voltage", 23)).toBeNull();
    expect(bench.now.pack.chargePercent).toBeGreaterThan(40);
    expect(bench.now.pack.chargePercent).toBeLessThan(80);
    expect(bench.changedPaths).toEqual(["pack.chargePercent"]);
  });

  it("sets groups that may be null, whole", () => {
    const bench = createBench();
    expect(bench.set("gears.secondStage", { driverTeeth: 20 })?.words).toContain("missing");
    expect(bench.set("gears.secondStage", { driverTeeth: 20, drivenTeeth: 40 })).toBeNull();
    expect(bench.set("gears.secondStage.drivenTeeth", 42)).toBeNull();
    expect(bench.set("controller.learned.fittedWith", fittedNow(bench.now))).toBeNull();
    expect(bench.now.gears.secondStage).toEqual({ driverTeeth: 20, drivenTeeth: 42 });
  });

  it("makes several changes at once, or none", () => {
    const bench = createBench();
    const problems = bench.change((m) => withValue(withValue(m, "pack.cells", 3), "motor.poles", 7));
    expect(problems.map((problem) => problem.path)).toEqual(["motor.poles"]);
    expect(bench.now).toBe(clubTrainer);
    const scaled = { ...clubTrainer.mainRotor, diameterMm: 500, bladeCentreMm: 130, rootCutoutMm: 50 };
    expect(bench.change((m) => ({ ...m, mainRotor: scaled }))).toEqual([]);
    expect(bench.changedPaths).toEqual(["mainRotor.diameterMm", "mainRotor.rootCutoutMm", "mainRotor.bladeCentreMm"]);
    bench.undo();
    expect(bench.now).toEqual(clubTrainer);
  });

  it("joins the steps of a drag, and forgets a drag that went nowhere", () => {
    const bench = createBench();
    for (const kv of [1130, 1140, 1150]) bench.set("motor.kvRpmPerVolt", kv, { gesture: "a" });
    for (const kv of [1160, 1170]) bench.set("motor.kvRpmPerVolt", kv, { gesture: "b" });
    bench.undo();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1150);
    bench.undo();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1120);
    expect(bench.canUndo).toBe(false);
    bench.set("motor.kvRpmPerVolt", 1130, { gesture: "c" });
    bench.set("motor.kvRpmPerVolt", 1120, { gesture: "c" });
    expect(bench.canUndo).toBe(false);
    bench.set("motor.kvRpmPerVolt", 1200, { gesture: "c" });
    bench.undo();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1120);
  });

  it("does not join a drag with what came between, or with what was undone", () => {
    const bench = createBench();
    bench.set("motor.kvRpmPerVolt", 1130, { gesture: "a" });
    bench.set("pack.cells", 5);
    bench.set("motor.kvRpmPerVolt", 1140, { gesture: "a" });
    bench.undo();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1130);
    bench.set("motor.kvRpmPerVolt", 1150, { gesture: "a" });
    bench.undo();
    expect([bench.now.motor.kvRpmPerVolt, bench.now.pack.cells]).toEqual([1130, 5]);
  });

  it("goes back and forth over every change", () => {
    const bench = createBench();
    bench.set("pack.cells", 5);
    bench.replace(large!);
    expect(bench.undo()).toBe(true);
    expect(bench.now.pack.cells).toBe(5);
    expect(bench.changedPaths).toContain("motor.kvRpmPerVolt");
    expect(bench.redo()).toBe(true);
    expect(bench.now).toEqual(large);
    expect([bench.canRedo, bench.redo()]).toEqual([false, false]);
    bench.backToDemo();
    expect(bench.now).toBe(clubTrainer);
    bench.undo();
    expect(bench.now).toEqual(large);
    bench.set("pack.cells", 11);
    expect(bench.canRedo).toBe(false);
  });

  it("keeps a second machine beside the first", () => {
    const bench = createBench();
    expect(bench.set("pack.cells", 5, { machine: "what-if" })?.words).toContain("no what-if machine");
    bench.startWhatIf();
    expect(bench.whatIf).toBe(clubTrainer);
    expect(bench.set("pack.cells", 5, { machine: "what-if" })).toBeNull();
    expect([bench.now.pack.cells, bench.whatIf?.pack.cells]).toEqual([6, 5]);
    expect(bench.changedPaths).toEqual(["pack.cells"]);
    bench.startWhatIf();
    expect(bench.whatIf?.pack.cells).toBe(5);
    bench.swap();
    expect([bench.now.pack.cells, bench.whatIf?.pack.cells]).toEqual([5, 6]);
    bench.dropWhatIf();
    expect(bench.whatIf).toBeNull();
    bench.undo();
    expect(bench.whatIf?.pack.cells).toBe(6);
    bench.replace(small!, large);
    expect([bench.now, bench.whatIf]).toEqual([small, large]);
  });

  it("remembers so many steps and no more", () => {
    const bench = createBench();
    for (let i = 0; i < MOST_STEPS + 20; i++) bench.set("motor.kvRpmPerVolt", 1000 + i);
    let steps = 0;
    while (bench.undo()) steps += 1;
    expect(steps).toBe(MOST_STEPS);
    expect(bench.now.motor.kvRpmPerVolt).toBe(1019);
  });

  it("takes up the steps of an earlier page", () => {
    const first = createBench();
    first.set("pack.cells", 5);
    first.set("pack.cells", 4);
    first.undo();
    const next = createBench(first.now, first.whatIf, first.history);
    next.undo();
    expect(next.now.pack.cells).toBe(6);
    next.redo();
    next.redo();
    expect(next.now.pack.cells).toBe(4);
  });

  it("is as it was after any change and undo, valid all the while, and as it became after redo", () => {
    fc.assert(
      fc.property(anyMachine, fc.array(anyChange, { minLength: 1, maxLength: 6 }), (start, changes) => {
        const bench = createBench(start);
        for (const [path, value] of changes) {
          const before = bench.now;
          const problem = bench.set(path, value);
          const after = bench.now;
          expect(v.is(machineSchema, after)).toBe(true);
          expect(brokenRules(after)).toEqual([]);
          if (problem) expect(after).toBe(before);
          else if (path !== "pack.voltage" && valueAt(after, path) !== undefined) {
            expect(JSON.stringify(valueAt(after, path))).toBe(JSON.stringify(value));
          }
          if (after !== before) {
            bench.undo();
            expect(bench.now).toBe(before);
            bench.redo();
            expect(bench.now).toBe(after);
          }
        }
      }),
    );
  });
});
