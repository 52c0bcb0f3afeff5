import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { mountParts } from "#blocks/parts-panel";
import { bind, socketFor } from "#inputs/bound";
import { makeSlider } from "#inputs/slider";
import { type Bench, createBench } from "#machine/bench";
import { header } from "#shell/header";
import { listenToKeys } from "#shell/keys";
import { chooseUnits } from "#view/units";
import { box, press, slider, type } from "../inputs/hand.ts";

let bench: Bench;
let head: HTMLElement;
let panel: HTMLElement;
let stop: () => void;

const button = (words: string): HTMLButtonElement =>
  [...head.querySelectorAll("button")].find(({ textContent }) => textContent === words)!;
const pinion = () => bench.now.gears.pinionTeeth;

beforeEach(() => {
  head = document.createElement("div");
  panel = document.createElement("div");
  document.body.replaceChildren(head, panel);
  bench = createBench();
  header().view.mount(head, bench);
  stop = listenToKeys(document, bench);
});
afterEach(() => {
  stop();
  chooseUnits("metric");
  delete document.documentElement.dataset.theme;
  localStorage.clear();
});

describe("the head of a page", () => {
  it("names the machine and follows it", async () => {
    expect(head.querySelector(".machine-name")?.textContent).toBe("6-cell club trainer");
    bench.set("gears.pinionTeeth", 14);
    bench.set("name", "mine");
    await expect
      .poll(() => head.querySelector(".head-machine")?.textContent)
      .toMatch(/^mine 14\u202f:\u202f120 .*1,120\u00a0rpm\/V .*970\u00a0mm$/);
  });

  it("undoes and does again, and tells when there is nothing to", () => {
    expect(button("undo").getAttribute("aria-disabled")).toBe("true");
    bench.set("gears.pinionTeeth", 14);
    expect(button("undo").getAttribute("aria-disabled")).toBe("false");
    button("undo").click();
    expect(pinion()).toBe(13);
    button("redo").click();
    expect(pinion()).toBe(14);
  });

  it("starts a what-if that the panel then changes, and ends it", () => {
    mountParts(panel, bench);
    button("what if").click();
    expect(bench.whatIf).toEqual(bench.now);
    expect(panel.querySelector<HTMLElement>(".parts")?.dataset.machine).toBe("what-if");
    expect(button("what if").getAttribute("aria-pressed")).toBe("true");
    button("what if").click();
    expect(bench.whatIf).toBeNull();
    expect(panel.querySelector<HTMLElement>(".parts")?.dataset.machine).toBe("now");
  });

  it("goes back to a demo machine from its menu", () => {
    button("12-cell long-blade machine").click();
    expect(bench.now.pack.cells).toBe(12);
  });

  it("leads into a room: to present, to print, to plan", () => {
    const words = [...head.querySelectorAll('.menu-group[aria-label="For a room of people"] > :is(a, button)')];
    expect(words.map((each) => each.textContent)).toEqual([
      "present this page",
      "print a handout",
      "print the key",
      "plan an evening",
    ]);
    expect(words[0]?.hasAttribute("data-present")).toBe(true);
    expect(words[3]?.getAttribute("href")).toBe("./to-teach-with-this.html");
    const fold = head.querySelector<HTMLDetailsElement>("details.menu")!;
    fold.open = true;
    (words[3] as HTMLElement).click();
    expect(fold.open).toBe(false);
  });

  it("lets colours and units be chosen, and keeps the choice", async () => {
    const pick = (value: string) => {
      const input = head.querySelector<HTMLInputElement>(`input[value=${value}]`)!;
      input.checked = true;
      input.dispatchEvent(new Event("change"));
    };
    pick("dark");
    expect(document.documentElement.dataset.theme).toBe("dark");
    pick("imperial");
    await expect.poll(() => head.querySelector(".head-machine")?.textContent).toMatch(/38\.\d+\u00a0in$/);
    expect(Object.values({ ...localStorage })).toEqual(expect.arrayContaining(["dark", "imperial"]));
    pick("system");
    expect(document.documentElement.dataset.theme).toBeUndefined();
  });
});

describe("undo by keyboard", () => {
  beforeEach(() => {
    bench.set("gears.pinionTeeth", 14);
  });

  it.each([
    ["Control+Z", { ctrlKey: true }],
    ["Command+Z", { metaKey: true }],
  ])("goes back with %s, and forward with Shift", (_, modifier) => {
    press(document.body, "z", modifier);
    expect(pinion()).toBe(13);
    press(document.body, "Z", { ...modifier, shiftKey: true });
    expect(pinion()).toBe(14);
  });

  it("works on a slider, and in a box whose text is the machine's; not where somebody is typing", () => {
    const socket = socketFor(panel, bench);
    const { element } = bind(socket, makeSlider(socket, "gears.pinionTeeth"));
    panel.append(element);
    press(slider(element), "z", { ctrlKey: true });
    expect(pinion()).toBe(13);
    type(box(element), "15");
    press(box(element), "z", { ctrlKey: true });
    expect(pinion()).toBe(13);
    box(element).value = "16";
    box(element).dispatchEvent(new Event("input", { bubbles: true }));
    bench.set("gears.mainTeeth", 100);
    press(box(element), "z", { ctrlKey: true });
    expect(bench.now.gears.mainTeeth).toBe(100);
    const text = document.createElement("textarea");
    panel.append(text);
    press(text, "z", { ctrlKey: true });
    expect(bench.now.gears.mainTeeth).toBe(100);
  });

  it("leaves other keys alone", () => {
    expect(press(document.body, "z")).toBe(true);
    expect(press(document.body, "a", { ctrlKey: true })).toBe(true);
    expect(pinion()).toBe(14);
  });
});
