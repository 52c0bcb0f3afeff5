import { afterEach, describe, expect, it, vi } from "vitest";
import { makeSlider, slider as sliderCell } from "#inputs/slider";
import { createBench } from "#machine/bench";
import { inputValue } from "#machine/voltage";
import { chooseUnits } from "#view/units";
import { lateFrames } from "../support/frames.ts";
import { box, complaint, drag, placed, press, slider, type } from "./hand.ts";

const pinion = "gears.pinionTeeth";
const at = (path: string, options = {}) => placed((socket) => makeSlider(socket, path, options));

afterEach(() => chooseUnits("metric"));

describe("a slider", () => {
  it("shows the machine's value, and says it with its unit", () => {
    const { element } = at(pinion);
    expect(element.dataset.input).toBe(pinion);
    expect(slider(element).value).toBe("13");
    expect(slider(element).getAttribute("aria-valuetext")).toBe("13\u00a0teeth");
    expect(box(element).value).toBe("13");
    expect(element.querySelector("label")?.htmlFor).toBe(box(element).id);
  });

  it("sets the machine in the event itself, and a whole drag is one step of undo", () => {
    const { bench, element } = at(pinion);
    const seen: number[] = [];
    bench.subscribe(() => seen.push(bench.now.gears.pinionTeeth));
    drag(slider(element), [14, 15, 16]);
    expect(seen).toEqual([14, 15, 16]);
    expect(box(element).value).toBe("16");
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(13);
    expect(slider(element).value).toBe("13");
  });

  it("never leaves the box in use behind, however late frames come: leaving it changes nothing", async () => {
    const frames = await lateFrames();
    const { bench, element } = at(pinion);
    box(element).focus();
    for (const teeth of [14, 15, 16, 17]) {
      bench.set(pinion, teeth);
      frames.late();
    }
    bench.set(pinion, 18);
    expect(box(element).value).toBe("18");
    box(element).blur();
    expect(bench.now.gears.pinionTeeth).toBe(18);
    frames.stop();
  });

  it("has a box that waits for its turn where frames come late, and is right in the end", async () => {
    const frames = await lateFrames();
    const { bench, element } = at(pinion);
    for (const teeth of [14, 15, 16]) {
      bench.set(pinion, teeth);
      frames.late();
    }
    bench.set(pinion, 17);
    expect(box(element).value).toBe("16");
    frames.stop();
    expect(box(element).value).toBe("17");
  });

  it("keeps two drags apart", () => {
    const { bench, element } = at(pinion);
    drag(slider(element), [14, 15]);
    drag(slider(element), [16, 17]);
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(15);
  });

  it("takes a held key as one step of undo, and what comes without pointer or key as steps of their own", () => {
    const { bench, element } = at(pinion);
    const range = slider(element);
    const step = (value: number) => {
      range.value = String(value);
      for (const name of ["input", "change"]) range.dispatchEvent(new Event(name));
    };
    press(range, "ArrowRight");
    step(14);
    press(range, "ArrowRight", { repeat: true });
    step(15);
    range.dispatchEvent(new KeyboardEvent("keyup", { key: "ArrowRight" }));
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(13);
    step(16);
    step(17);
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(16);
  });

  it("keeps the thumb at its end for a value beyond it, and shows the value", () => {
    const { bench, element } = at(pinion);
    type(box(element), "44");
    expect(bench.now.gears.pinionTeeth).toBe(44);
    expect(slider(element).value).toBe("30");
    expect(box(element).value).toBe("44");
  });

  it("goes by even numbers for magnets", () => {
    const { bench, element } = at("motor.poles");
    expect([slider(element).min, slider(element).step]).toEqual(["2", "2"]);
    press(box(element), "ArrowUp");
    expect(bench.now.motor.poles).toBe(12);
  });

  it("follows the bench", () => {
    const { bench, element } = at(pinion);
    bench.set(pinion, 20);
    expect([slider(element).value, box(element).value]).toEqual(["20", "20"]);
  });

  it("writes nothing when another field changes", () => {
    const { bench, element } = at(pinion);
    const write = vi.spyOn(slider(element), "setAttribute");
    bench.set("gears.mainTeeth", 100);
    bench.set("motor.kvRpmPerVolt", 900);
    expect(write).not.toHaveBeenCalled();
  });

  it("says why a step can't be taken, and goes back", () => {
    const { bench, element } = at("controller.usableLowPercent");
    bench.set("controller.usableHighPercent", 75);
    drag(slider(element), [78]);
    expect(bench.now.controller.usableLowPercent).toBe(60);
    expect(complaint(box(element))).toMatch(/less than/);
    expect(slider(element).value).toBe("60");
  });

  it("steps with its buttons", () => {
    const { bench, element } = at("motor.kvRpmPerVolt");
    const [less, more] = element.querySelectorAll<HTMLButtonElement>("button.step");
    more?.click();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1130);
    less?.click();
    less?.click();
    expect(bench.now.motor.kvRpmPerVolt).toBe(1110);
    expect(less?.getAttribute("aria-label")).toContain("Motor Kv");
  });

  it("steps from between two steps to the next one", () => {
    const { bench, element } = at("motor.kvRpmPerVolt");
    bench.set("motor.kvRpmPerVolt", 1234);
    press(box(element), "ArrowUp");
    expect(bench.now.motor.kvRpmPerVolt).toBe(1240);
    bench.set("motor.kvRpmPerVolt", 1234);
    press(box(element), "ArrowDown");
    expect(bench.now.motor.kvRpmPerVolt).toBe(1230);
  });

  it("tells an author of a misspelt field", () => {
    expect(() => sliderCell("gears.pinion")).toThrow(/gears\.pinion/);
  });
});

describe("its box", () => {
  it.each([
    ["12", 12],
    [" 14 teeth", 14],
  ])("takes '%s'", (text, value) => {
    const { bench, element } = at(pinion);
    type(box(element), text, "blur");
    expect(bench.now.gears.pinionTeeth).toBe(value);
    expect(complaint(box(element))).toBe("");
  });

  it("takes a decimal comma", () => {
    const { bench, element } = at("gears.tailRatio");
    type(box(element), "4,75");
    expect(bench.now.gears.tailRatio).toBe(4.75);
  });

  it.each([
    ["abc", /text “abc”.*whole number from 5 to 80/],
    ["", /nothing.*whole number/],
    ["-3", /-3|−3/],
    ["12.5", /12\.5.*whole/],
    ["1e9", /1,000,000,000/],
  ])("doesn't take '%s', says so at the place and keeps the last good value", (text, words) => {
    const { bench, element } = at(pinion);
    type(box(element), text);
    expect(complaint(box(element))).toMatch(words);
    expect(complaint(box(element))).toContain("It stays at 13\u00a0teeth.");
    expect(bench.now.gears.pinionTeeth).toBe(13);
    expect(bench.canUndo).toBe(false);
  });

  it("shows the last good value again when it is left, with the words still there", () => {
    const { element } = at(pinion);
    type(box(element), "abc", "blur");
    expect(box(element).value).toBe("13");
    expect(complaint(box(element))).toMatch(/abc/);
    type(box(element), "14", "blur");
    expect(complaint(box(element))).toBe("");
  });

  it("gives up on Escape", () => {
    const { bench, element } = at(pinion);
    type(box(element), "abc");
    press(box(element), "Escape");
    expect([box(element).value, complaint(box(element))]).toEqual(["13", ""]);
    box(element).value = "15";
    box(element).dispatchEvent(new Event("input"));
    press(box(element), "Escape");
    expect(bench.now.gears.pinionTeeth).toBe(13);
  });

  it("is mended by a change from elsewhere", () => {
    const { bench, element } = at(pinion);
    type(box(element), "abc");
    bench.set(pinion, 17);
    expect([box(element).value, complaint(box(element))]).toEqual(["17", ""]);
  });

  it("leaves what somebody is typing alone while other fields change", () => {
    const { bench, element } = at("pack.voltage");
    box(element).value = "23.";
    box(element).dispatchEvent(new Event("input"));
    bench.set("motor.kvRpmPerVolt", 900);
    expect(box(element).value).toBe("23.");
  });

  it("shows and takes imperial units where they are chosen", () => {
    const { bench, element } = at("mainRotor.diameterMm");
    chooseUnits("imperial");
    expect(element.querySelector(".unit")?.textContent).toBe("in");
    type(box(element), "40");
    expect(bench.now.mainRotor.diameterMm).toBe(1016);
    expect(slider(element).getAttribute("aria-valuetext")).toBe("40\u00a0in");
  });
});

describe("voltage and charge", () => {
  it("move each other", () => {
    const bench = createBench();
    const { element: charge } = placed((socket) => makeSlider(socket, "pack.chargePercent"), bench);
    const { element: volts } = placed((socket) => makeSlider(socket, "pack.voltage"), bench);
    document.body.append(charge);
    type(box(volts), "23.5");
    expect(bench.now.pack.chargePercent).toBeLessThan(100);
    expect(Number(box(charge).value)).toBeCloseTo(bench.now.pack.chargePercent, 1);
    expect(box(volts).value).toBe("23.5");
    type(box(charge), "100");
    expect(Number(box(volts).value)).toBeCloseTo(inputValue(bench.now, "pack.voltage") as number, 2);
  });

  it("reach full at the slider's end, also for another number of cells", () => {
    const { bench, element } = at("pack.voltage");
    bench.set("pack.cells", 3);
    const range = slider(element);
    expect(Number(range.max)).toBeCloseTo(12.6, 6);
    drag(range, [11.5, 12.6]);
    expect(bench.now.pack.chargePercent).toBe(100);
    drag(range, [Number(range.min)]);
    expect(bench.now.pack.chargePercent).toBe(0);
  });

  it("refuse a voltage that the pack can't have", () => {
    const { bench, element } = at("pack.voltage");
    type(box(element), "400");
    expect(complaint(box(element))).toMatch(/400/);
    expect(bench.now.pack.chargePercent).toBe(100);
  });
});

describe("a number that may be missing", () => {
  const limit = "mainRotor.ratedRpm";

  it("is not printed, or known, by its button or a blank box", () => {
    const { bench, element } = at(limit, { none: "not printed" });
    const none = element.querySelector<HTMLButtonElement>("button.none");
    expect(none?.getAttribute("aria-pressed")).toBe("false");
    none?.click();
    expect(bench.now.mainRotor.ratedRpm).toBeNull();
    expect([none?.getAttribute("aria-pressed"), box(element).value]).toEqual(["true", ""]);
    none?.click();
    expect(bench.now.mainRotor.ratedRpm).toBe(2800);
    type(box(element), "");
    expect(bench.now.mainRotor.ratedRpm).toBeNull();
    type(box(element), "3100");
    expect(bench.now.mainRotor.ratedRpm).toBe(3100);
  });
});

describe("a slider that aims at the what-if machine", () => {
  it("changes that one alone", () => {
    const bench = createBench();
    bench.startWhatIf();
    const { element } = placed((socket) => makeSlider(socket, pinion), bench, { which: "what-if" });
    drag(slider(element), [18]);
    expect([bench.now.gears.pinionTeeth, bench.whatIf?.gears.pinionTeeth]).toEqual([13, 18]);
    bench.set(pinion, 11);
    expect(box(element).value).toBe("18");
  });
});
