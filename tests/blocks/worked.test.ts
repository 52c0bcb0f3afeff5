import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { mountParts } from "#blocks/parts-panel";
import { quantity } from "#blocks/quantity";
import type { QuantityName } from "#figures/catalogue";
import { figuresOf } from "#figures/figures";
import { createBench } from "#machine/bench";
import type { Machine } from "#machine/machine";
import { chooseUnits } from "#view/units";
import { machineWith } from "../figures/machines.ts";
import { press } from "../inputs/hand.ts";
import { mounted, plain } from "./mounted.ts";

const shown = (machine: Machine, name: QuantityName = "gear-ratio") => quantity(figuresOf(machine), name, 0);

/** A number in a paragraph, as a page has it. */
function opened(machine: Machine = machineWith({}), name: QuantityName = "gear-ratio") {
  const block = mounted(shown(machine, name));
  const paragraph = document.createElement("p");
  document.body.replaceChildren(paragraph);
  paragraph.append(block.host);
  const button = block.one<HTMLButtonElement>("button");
  button.click();
  return { ...block, paragraph, button };
}

const panel = (): HTMLElement | null => document.querySelector(".worked");
/** The text behind a heading of the panel. */
function row(title: string): string {
  const heading = [...(panel()?.querySelectorAll("dt") ?? [])].find((each) => each.textContent === title);
  return plain(heading?.nextElementSibling?.textContent);
}
const heading = (title: string): HTMLElement | undefined =>
  [...(panel()?.querySelectorAll("dt") ?? [])].find((each) => each.textContent === title);
const formulas = () => [...(panel()?.querySelectorAll(".formula") ?? [])].map((each) => plain(each.textContent));
/** Waits for the typesetter, which comes on demand. */
const set = () => vi.waitFor(() => expect(panel()?.querySelectorAll("math")).toHaveLength(2));

// The typesetter works on a page of today's standard alone; this document has no line that says it is one.
Object.defineProperty(document, "compatMode", { value: "CSS1Compat" });

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

describe("an opened number", () => {
  it("stands behind the paragraph that the number stands in", () => {
    const { paragraph, button } = opened();
    expect(paragraph.nextElementSibling).toBe(panel());
    expect(button.getAttribute("aria-expanded")).toBe("true");
  });

  it("says what it is, where it comes from, what it assumes and its source", () => {
    opened();
    expect(panel()?.querySelector("b")?.textContent).toBe("Motor turns for one turn of the rotor");
    expect(row("It comes from")).toBe("teeth of the pinion: 13 · teeth of the main gear: 120");
    expect(row("Assumes")).toMatch(/Every tooth counted/);
    expect(row("Source")).toBe("definition");
  });

  it("sets the formula, and the same with the reader's numbers", async () => {
    vi.useRealTimers();
    opened();
    await set();
    const [general, numbers] = formulas();
    expect(general).toContain("z");
    expect(numbers).toMatch(/120.*13.*9\.23/);
    expect(numbers).not.toContain("z1");
  });

  it.each([
    ["hover-motor-current", (q, k, ratio, mesh, idle) => q / (k * ratio * mesh) + idle],
    ["ceiling-hover", (kv, volts, current, milliohm, ratio) => (kv * (volts - (current * milliohm) / 1000)) / ratio],
    ["tip-speed", (turning, radius) => turning * radius],
  ] as [QuantityName, (...terms: number[]) => number][])(
    "%s: what is printed follows from what is printed",
    async (name, by) => {
      vi.useRealTimers();
      opened(machineWith({}), name);
      await set();
      const printed = formulas()[1]!
        .match(/[\d,]*\.?\d+/g)!
        .map((text) => text.replaceAll(",", ""));
      const decimals = printed.at(-1)!.split(".")[1]?.length ?? 0;
      expect(by(...printed.slice(0, -1).map(Number)).toFixed(decimals)).toBe(printed.at(-1));
    },
  );

  it("raises a number with its unit, not the unit alone", async () => {
    vi.useRealTimers();
    opened(machineWith({}), "blade-pull");
    await set();
    expect(formulas()[1]).toMatch(/\(193\.73.rad\/s\)2/);
  });

  it("keeps to units that fit together in the formula, and adds the reader's to the result", async () => {
    vi.useRealTimers();
    chooseUnits("imperial");
    opened(machineWith({}), "tip-speed");
    await set();
    chooseUnits("metric");
    expect(formulas()[1]).toMatch(/rad\/s.*m=93\.96.m\/s=210.mph/);
  });

  it("closes at its button, at the number, and by Escape in either", () => {
    const { button } = opened();
    const close = () => [...panel()!.querySelectorAll("button")].find((each) => each.textContent === "close")!;
    close().click();
    expect(panel()).toBeNull();
    expect(document.activeElement).toBe(button);
    button.click();
    button.click();
    expect(panel()).toBeNull();
    button.click();
    press(close(), "Escape");
    expect(panel()).toBeNull();
    button.click();
    press(button, "Escape");
    expect(panel()).toBeNull();
    expect(button.getAttribute("aria-expanded")).toBe("false");
    press(button, "Escape");
    expect(panel()).toBeNull();
  });

  /** The hand rests, and what works bands out has come. */
  const restedAndLoaded = async () => {
    vi.advanceTimersByTime(200);
    await import("#figures/bands");
    await Promise.resolve();
  };

  it("tells how sure the figure is once the hand rests", async () => {
    opened(machineWith({}), "tail-rotor-speed");
    expect(row("How sure")).toBe("");
    await restedAndLoaded();
    // 1850 x 4.6 and 1 % of it.
    expect(row("How sure")).toBe("8,510 ± 90 rpm (mostly from tail ratio)");
  });

  it("tells how sure the newest figure is, never an older one", async () => {
    const { update } = opened(machineWith({}), "tail-rotor-speed");
    vi.advanceTimersByTime(200);
    update(shown(machineWith({ "gears.tailRatio": 5 }), "tail-rotor-speed"));
    await import("#figures/bands");
    await Promise.resolve();
    expect(row("How sure")).toBe("");
    await restedAndLoaded();
    expect(row("How sure")).toMatch(/^9,250 ± /);
  });

  it("tells an exact figure without a doubt", async () => {
    opened();
    await restedAndLoaded();
    expect(row("How sure")).toBe("9.23");
  });

  it("shows only how sure it is where no one relation stands behind it", async () => {
    opened(machineWith({}), "hover-collective");
    expect(heading("Formula")?.hidden).toBe(true);
    expect(heading("Source")?.hidden).toBe(true);
    expect(heading("How sure")?.hidden).toBe(false);
    await restedAndLoaded();
    expect(row("How sure")).toMatch(/°|mostly/);
  });
});

describe("while the machine changes", () => {
  it("follows, and leaves its links where they are", async () => {
    vi.useRealTimers();
    const { update } = opened();
    await set();
    const links = [...panel()!.querySelectorAll(".link")];
    update(shown(machineWith({ "gears.pinionTeeth": 12 })));
    expect(row("It comes from")).toBe("teeth of the pinion: 12 · teeth of the main gear: 120");
    expect([...panel()!.querySelectorAll(".link")]).toEqual(links);
    expect(links[0]).toBe(panel()!.querySelector(".link"));
    await vi.waitFor(() => expect(formulas()[1]).toMatch(/120.*12.*10/));
  });

  it("takes in the terms of a second stage", () => {
    const { update } = opened();
    update(shown(machineWith({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } })));
    expect(row("It comes from")).toMatch(/driving teeth of the second pair: 20 · driven teeth of the second pair: 40$/);
  });

  it("has no formula left where the figure is lost", () => {
    const { update } = opened(machineWith({}), "duty-hover");
    expect(heading("Formula")?.hidden).toBe(false);
    update(shown(machineWith({ "modes.0.headRpm": 3300 }), "duty-hover"));
    expect(heading("Formula")?.hidden).toBe(true);
  });
});

describe("a term", () => {
  it("that the reader can change leads to its input", () => {
    opened();
    const parts = document.createElement("div");
    document.body.append(parts);
    mountParts(parts, createBench());
    const link = panel()!.querySelector<HTMLButtonElement>(".link")!;
    expect(link.title).toBe("Pinion");
    link.click();
    expect(document.activeElement?.closest("[data-input]")?.getAttribute("data-input")).toBe("gears.pinionTeeth");
  });

  it("that is worked out on the way is only text", () => {
    opened(machineWith({}), "hover-pack-current");
    expect(panel()!.querySelectorAll(".link")).toHaveLength(0);
    expect(row("It comes from")).toMatch(/^duty: .* % · motor current: .* A$/);
  });
});
