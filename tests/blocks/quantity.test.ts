import { describe, expect, it } from "vitest";
import { fillOutput, quantity, quantityText } from "#blocks/quantity";
import { catalogue, quantityNames } from "#figures/catalogue";
import { figuresOf } from "#figures/figures";
import { defaultMachine } from "#machine/machine";
import { chooseUnits } from "#view/units";
import { learnedAt, machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const figures = figuresOf(defaultMachine);
const dead = figuresOf(machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 }));

describe("a figure in the text", () => {
  it("carries what other programs read: name, unit, unrounded value, mode", () => {
    const { one } = mounted(quantity(figures, "tip-speed", 2));
    const { quantity: name, unit, value, mode, machine } = one("output").dataset;
    expect([name, unit, mode, machine]).toEqual(["tip-speed", "m/s", "2", undefined]);
    // V = omega R: 2450 rpm and 0.485 m.
    expect(Number(value)).toBeCloseTo(2450 * ((2 * Math.PI) / 60) * 0.485, 9);
    expect(plain(one("output").textContent)).toBe("124 m/s");
  });

  it("names the machine where two are compared", () => {
    const { one, update } = mounted(quantity(figures, "gear-ratio", 0, "now"));
    expect(one("output").dataset.machine).toBe("now");
    update(quantity(figures, "gear-ratio", 0, "what-if"));
    expect(one("output").dataset.machine).toBe("what-if");
  });

  it("has no mode where the whole machine has one figure, and the first where each mode has its own", () => {
    expect(mounted(quantity(figures, "gear-ratio", 2)).one("output").dataset.mode).toBeUndefined();
    expect(mounted(quantity(figures, "throttle")).one("output").dataset.mode).toBe("0");
  });

  it("follows the machine without building anything anew", () => {
    const { host, one, update } = mounted(quantity(figures, "gear-ratio"));
    expect(one("output").textContent).toBe("9.23");
    const other = quantity(figuresOf(machineWith({ "gears.pinionTeeth": 12 })), "gear-ratio");
    expect(leavesElements(host, () => update(other))).toBe(true);
    expect([one("output").textContent, one("output").dataset.value]).toEqual(["10.0", "10"]);
  });

  it("is said anew when the units change, and nothing else has", () => {
    const { one, update } = mounted(quantity(figures, "tip-speed", 2));
    chooseUnits("imperial");
    update(quantity(figures, "tip-speed", 2));
    // NIST SP 811 (2008), appendix B.8: 1 mi/h = 0.44704 m/s; 124.43 m/s are 278.3 mi/h.
    expect(plain(one("output").textContent)).toBe("278 mph");
    chooseUnits("metric");
    update(quantity(figures, "tip-speed", 2));
    expect(plain(one("output").textContent)).toBe("124 m/s");
  });

  it("can become another figure", () => {
    const { one, update } = mounted(quantity(figures, "gear-ratio"));
    update(quantity(figures, "motor-speed", 1));
    expect(one("output").dataset).toMatchObject({ quantity: "motor-speed", unit: "rpm", mode: "1" });
    expect(one("button").title).toBe(catalogue["motor-speed"].title);
  });
});

describe("a figure as text", () => {
  const text = (...[name, mode]: [Parameters<typeof quantity>[1], number?]) =>
    plain(quantityText({ figures, name, mode: mode ?? null }));

  it("is rounded and has its unit", () => {
    expect(text("pack-open-voltage")).toBe("25.2 V");
    expect(text("pack-resistance")).toBe("20.5 mΩ");
    expect(text("motor-speed", 1)).toBe("19,385 rpm");
    expect(text("throttle-entered", 0)).toMatch(/^\d+ %$/);
    expect(text("lowest-charge", 2)).toMatch(/^\d+ %$/);
    expect(text("throttle", 0)).toMatch(/^\d+\.\d %$/);
  });

  it("has the figures that it is worth: three for a speed that the model gives, all for what was measured or set", () => {
    const [guessed, known] = [figuresOf(defaultMachine), figuresOf(learnedAt(13_957))];
    const says = (figures: typeof known, name: (typeof quantityNames)[number]) =>
      plain(quantityText({ figures, name, mode: 2 }));
    expect(says(guessed, "learned-motor-speed")).toBe("27,900 rpm");
    expect(says(known, "learned-motor-speed")).toBe("27,914 rpm");
    expect(says(guessed, "learned-head-speed")).toMatch(/0 rpm$/);
    // 27,914 rpm over 120 to 13 teeth.
    expect(says(known, "learned-head-speed")).toBe(`${Math.round((27_914 * 13) / 120).toLocaleString("en")} rpm`);
    for (const figures of [guessed, known]) {
      expect(says(figures, "ceiling-full-pitch")).toMatch(/0 rpm$/);
      expect(says(figures, "speed-headroom-hover")).toMatch(/0 rpm$/);
      expect(says(figures, "motor-speed")).toBe(`${Math.round((2450 * 120) / 13).toLocaleString("en")} rpm`);
    }
  });

  it("says the state of the reference in words", () => {
    expect(text("reference-state")).toBe("expected: nothing measured yet");
    const fresh = figuresOf(learnedAt(15_000));
    expect(quantityText({ figures: fresh, name: "reference-state", mode: null })).toMatch(/^fresh: /);
  });

  it("is words where there is no figure, never a number that isn't one", () => {
    for (const name of quantityNames) {
      expect([name, quantityText({ figures: dead, name, mode: 0 })]).not.toEqual([
        name,
        expect.stringMatching(/NaN|null/),
      ]);
    }
    expect(quantityText({ figures: dead, name: "duty-hover", mode: 0 })).toBe("can't be held");
    expect(quantityText({ figures: dead, name: "throttle", mode: 0 })).toBe("no figure");
    expect(mounted(quantity(dead, "throttle", 0)).one("output").dataset.value).toBe("");
  });

  it("is what the block is read out as", () => {
    expect(wordsOf(quantity(figures, "pack-open-voltage"))).toBe(
      quantityText({ figures, name: "pack-open-voltage", mode: null }),
    );
  });
});

describe("an output of its own", () => {
  it("loses a mode that it no longer has", () => {
    const output = document.createElement("output");
    fillOutput(output, { figures, name: "throttle", mode: 1, machine: "now" });
    expect(output.dataset).toMatchObject({ mode: "1", machine: "now" });
    fillOutput(output, { figures, name: "gear-ratio", mode: null, machine: null });
    expect([output.dataset.mode, output.dataset.machine]).toEqual([undefined, undefined]);
  });
});
