import { beforeEach, describe, expect, it } from "vitest";
import { mainFive } from "#blocks/parts-list";
import { mountParts } from "#blocks/parts-panel";
import { type Bench, createBench } from "#machine/bench";
import { demos } from "#machine/demos";
import { fields, voltageField } from "#machine/fields";
import { fittedNow } from "#machine/machine";
import { box, complaint, drag, press, slider, type } from "../inputs/hand.ts";

let host: HTMLElement;
let bench: Bench;

const input = (path: string): HTMLElement => host.querySelector<HTMLElement>(`[data-input="${path}"]`)!;
const button = (words: string): HTMLButtonElement =>
  [...host.querySelectorAll("button")].find((each) => each.textContent === words)!;
const radio = (words: string): HTMLInputElement =>
  [...host.querySelectorAll("label.radio")].find((each) => each.textContent === words)!.querySelector("input")!;
const choose = (words: string) => {
  radio(words).checked = true;
  radio(words).dispatchEvent(new Event("change"));
};
const learned = () => bench.now.controller.learned;

beforeEach(() => {
  host = document.createElement("div");
  document.body.replaceChildren(host);
  bench = createBench();
  mountParts(host, bench);
});

/** Opens every section, which builds it. */
const openAll = () => {
  for (const section of host.querySelectorAll<HTMLDetailsElement>("details.section")) {
    section.open = true;
    section.dispatchEvent(new Event("toggle"));
  }
};

describe("the parts panel", () => {
  it("puts the nearest demo machine on the bench, and undo takes it off", () => {
    const choice = host.querySelector<HTMLSelectElement>(".start-from select")!;
    const before = bench.now;
    choice.value = "2";
    choice.dispatchEvent(new Event("change"));
    expect(bench.now).toEqual(demos[2]);
    expect(choice.value).toBe("");
    choice.dispatchEvent(new Event("change"));
    expect(bench.now).toEqual(demos[2]);
    bench.undo();
    expect(bench.now).toEqual(before);
  });

  it("has the main inputs at once", () => {
    for (const path of mainFive) expect(input(path), path).not.toBeNull();
    expect(input("mainRotor.diameterMm")).toBeNull();
  });

  it("has an input for every field of the machine, once", () => {
    bench.set("gears.secondStage", { driverTeeth: 20, drivenTeeth: 40 });
    bench.set("controller.learned.fittedWith", fittedNow(bench.now));
    openAll();
    const found = [...host.querySelectorAll<HTMLElement>("[data-input]")].map(({ dataset }) => dataset.input ?? "");
    const wanted = [...fields, voltageField].map(({ path }) => path.replace("*", "0"));
    expect(wanted.filter((path) => !found.includes(path))).toEqual([]);
    expect(found.filter((path, i) => found.indexOf(path) !== i)).toEqual([]);
  });

  it("builds a section when it is opened", () => {
    const section = host.querySelector<HTMLDetailsElement>('[data-section="mainRotor"]')!;
    section.open = true;
    section.dispatchEvent(new Event("toggle"));
    expect(input("mainRotor.diameterMm")).not.toBeNull();
  });

  it("says where a field is read, what is allowed and what it was at first", () => {
    openAll();
    const note = input("mainRotor.diameterMm").parentElement?.querySelector(".read")?.textContent;
    expect(note).toMatch(/^Ruler: .*Allowed: 50 to 5,000\u00a0mm\. Set at first: 970\u00a0mm\.$/);
    expect(input("mainRotor.ratedRpm").textContent).toContain("not printed");
  });

  it("tells of a folded section what it holds, and keeps it up to date", async () => {
    const gist = host.querySelector('[data-section="mainRotor"] .gist');
    expect(gist?.textContent).toBe("2 blades, 970\u00a0mm");
    bench.set("mainRotor.blades", 3);
    await expect.poll(() => gist?.textContent).toBe("3 blades, 970\u00a0mm");
  });

  it("hides the second stage until there is one", () => {
    openAll();
    const teeth = () => input("gears.secondStage.driverTeeth").closest<HTMLElement>(".second-stage")!;
    expect(teeth().hidden).toBe(true);
    box(input("gears.secondStage")).checked = true;
    box(input("gears.secondStage")).dispatchEvent(new Event("change"));
    expect(teeth().hidden).toBe(false);
    type(box(input("gears.secondStage.driverTeeth")), "17");
    expect(bench.now.gears.secondStage).toEqual({ driverTeeth: 17, drivenTeeth: 40 });
  });

  it("opens and folds its bar", () => {
    const bar = host.querySelector<HTMLButtonElement>(".parts-bar")!;
    bar.click();
    expect([bar.getAttribute("aria-expanded"), host.querySelector(".parts.is-open")]).not.toContain(null);
    bar.click();
    expect(bar.getAttribute("aria-expanded")).toBe("false");
    bar.click();
    type(box(input("gears.pinionTeeth")), "abc");
    press(box(input("gears.pinionTeeth")), "Escape");
    expect(bar.getAttribute("aria-expanded")).toBe("true");
    press(box(input("gears.pinionTeeth")), "Escape");
    expect(bar.getAttribute("aria-expanded")).toBe("false");
  });
});

describe("what the controller has learned", () => {
  beforeEach(openAll);

  it("is nothing yet at first", () => {
    expect(radio("not yet: take the speed to expect").checked).toBe(true);
  });

  it("keeps the parts that are fitted when it has learned, as one step of undo", () => {
    choose("yes");
    expect(learned().fittedWith).toEqual(fittedNow(bench.now));
    bench.set("gears.pinionTeeth", 15);
    expect(host.querySelector(".then")?.textContent).toContain("13\u202f:\u202f120");
    button("it learned with the present parts").click();
    expect(learned().fittedWith?.pinionTeeth).toBe(15);
    choose("not yet: take the speed to expect");
    expect(learned()).toMatchObject({ motorRpm: null, fittedWith: null });
    bench.undo();
    expect(learned().fittedWith?.pinionTeeth).toBe(15);
  });

  it("takes a measured speed at the motor or at the rotor: the gears turn one into the other", () => {
    choose("yes");
    type(box(input("controller.learned.headRpm")), "1300");
    // Head speed times gear ratio, by definition: 1300 rpm x 120 / 13.
    expect(learned().motorRpm).toBeCloseTo(12_000, 6);
    expect(box(input("controller.learned.motorRpm")).value).toBe("12,000");
    type(box(input("controller.learned.motorRpm")), "11 076,9");
    expect(box(input("controller.learned.headRpm")).value).toBe("1200");
    type(box(input("controller.learned.headRpm")), "");
    expect(learned().motorRpm).toBeNull();
  });

  it("refuses a speed in words", () => {
    choose("yes");
    type(box(input("controller.learned.headRpm")), "soon");
    expect(complaint(box(input("controller.learned.headRpm")))).toMatch(/soon/);
  });

  it("lets each part that was fitted be mended", () => {
    choose("yes");
    type(box(input("controller.learned.fittedWith.pinionTeeth")), "12");
    expect(learned().fittedWith?.pinionTeeth).toBe(12);
  });

  it("knows the second stage that was fitted, and lets it be mended", () => {
    bench.set("gears.secondStage", { driverTeeth: 20, drivenTeeth: 24 });
    choose("yes");
    expect(host.querySelector(".then")?.textContent).toContain("20\u202f:\u202f24");
    type(box(input("controller.learned.fittedWith.secondStage.drivenTeeth")), "18");
    expect(learned().fittedWith?.secondStage).toEqual({ driverTeeth: 20, drivenTeeth: 18 });
    const tick = input("controller.learned.fittedWith.secondStage")!.querySelector("input")!;
    tick.click();
    expect(learned().fittedWith?.secondStage).toBeNull();
    expect(bench.now.gears.secondStage).toEqual({ driverTeeth: 20, drivenTeeth: 24 });
  });
});

describe("flight modes in the panel", () => {
  beforeEach(openAll);

  it("come and go, one to six of them", () => {
    const add = button("add a flight mode");
    for (let i = 0; i < 3; i++) add.click();
    expect(bench.now.modes).toHaveLength(6);
    expect(add.hidden).toBe(true);
    expect(input("modes.5.headRpm")).not.toBeNull();
    for (const name of ["gentle", "club", "sporty"]) button(`take away ${name}`).click();
    expect(bench.now.modes).toHaveLength(3);
    expect(input("modes.3.headRpm")).toBeNull();
  });

  it("are set one by one", () => {
    type(box(input("modes.1.headRpm")), "2222");
    expect(bench.now.modes[1]?.headRpm).toBe(2222);
  });
});

describe("now and what if in the panel", () => {
  const panel = () => host.querySelector<HTMLElement>(".parts")!;

  it("changes the what-if machine once one is tried, and says so", () => {
    expect(panel().dataset.machine).toBe("now");
    button("try a what-if").click();
    expect(panel().dataset.machine).toBe("what-if");
    expect(host.querySelector(".changing")?.textContent).toMatch(/what-if machine/);
    drag(slider(input("gears.pinionTeeth")), [16]);
    expect([bench.now.gears.pinionTeeth, bench.whatIf?.gears.pinionTeeth]).toEqual([13, 16]);
  });

  it("switches back to the machine as it is", () => {
    button("try a what-if").click();
    drag(slider(input("gears.pinionTeeth")), [16]);
    choose("now");
    expect([panel().dataset.machine, box(input("gears.pinionTeeth")).value]).toEqual(["now", "13"]);
  });

  it("falls back to now when the what-if goes, also by undo", async () => {
    button("try a what-if").click();
    bench.undo();
    await Promise.resolve();
    expect([panel().dataset.machine, button("try a what-if").hidden]).toEqual(["now", false]);
    type(box(input("gears.pinionTeeth")), "19");
    expect(bench.now.gears.pinionTeeth).toBe(19);
  });
});
