import { describe, expect, it, vi } from "vitest";
import { setupCard } from "#blocks/card";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { learnedAt, machineWith, tenToOne } from "../figures/machines.ts";
import { emptyWord } from "../support/plain.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const card = (machine: Machine) => setupCard(figuresOf(machine));
/** A reference of 3000 rpm at the rotor. */
const learned = learnedAt(15_000, 50, machineWith({ ...tenToOne, "modes.0.headRpm": 2100 }));
const dead = machineWith({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });

/** The text beside a name of a section. */
function beside(host: HTMLElement, section: string, name: string): string {
  const title = [...host.querySelectorAll("h3")].find((each) => each.textContent === section);
  const terms = [...(title?.parentElement?.querySelectorAll("dt") ?? [])];
  return plain(terms.find((each) => each.textContent === name)?.nextElementSibling?.textContent);
}

describe("the card holds", () => {
  const { host, one, all } = mounted(card(learned));

  it("the machine's name and empty lines for date, place and whoever checked it", () => {
    expect(one("h2").textContent).toBe("Set-up card: 6-cell club trainer, changed");
    expect(all(".fill-in").map((each) => plain(each.textContent))).toEqual(["Date", "Place", "Checked by"]);
  });

  it.each([
    ["Parts", "Pack", "6 cells, lithium polymer, 3,300 mAh"],
    ["Parts", "Motor", "1,120 rpm/V, 10 magnet poles"],
    ["Parts", "Gears", "12 : 120, module 0.7 mm"],
    ["Parts", "Main rotor", "2 blades, 970 mm across"],
    ["Parts", "Tail rotor", "182 mm across, 4.6 turns for one"],
    ["Parts", "Mass", "2,050 g"],
    ["Reference", "State", "fresh: learned with the parts now fitted"],
    ["Reference", "100 % asks for", "3,000 rpm at the rotor, 30,000 rpm at the motor"],
    // Common practice, no source: 60 to 90 %.
    ["Reference", "Usable band 60 to 90 %", "1,800 rpm to 2,700 rpm"],
    ["Limits", "Blades", "2,800 rpm"],
    ["Limits", "Motor", "36,000 rpm"],
    // 240,000 electrical rpm with five pairs of magnets are 48,000 rpm of the motor, over 10.
    ["Limits", "Controller", "240,000 rpm electrical: 4,800 rpm at the rotor"],
    ["Limits", "Land at", "20 % of charge"],
  ])("%s: %s", (section, name, text) => {
    expect(beside(host, section, name)).toBe(text);
  });

  it("each mode with its throttle, exact and entered, and a blank for what is measured", () => {
    const [first] = all("tbody tr");
    expect(all("tbody tr")).toHaveLength(3);
    const outputs = [...first!.querySelectorAll("output")];
    expect(outputs.map(({ dataset }) => [dataset.quantity, dataset.mode])).toEqual([
      ["set-head-speed", "0"],
      ["throttle", "0"],
      ["throttle-entered", "0"],
      ["head-speed-entered", "0"],
      ["lowest-charge", "0"],
    ]);
    // 2100 of 3000 rpm.
    expect(plain(outputs[1]?.textContent)).toBe("70.0 %");
    expect(first!.querySelector("td.blank")?.textContent).toBe("");
    expect(all("thead th").at(-1)?.textContent).toBe("measured");
  });

  it("the steps of end points and learning run, with their cautions", () => {
    const jobs = all("ol").map((list) => plain(list.textContent));
    expect(jobs).toHaveLength(3);
    expect(jobs[0]).toMatch(/pinion and main gear don't touch.*With the pinion in mesh/);
    expect(jobs[0]).toMatch(/Turn the main gear itself by hand, both ways.*Turning the rotor proves nothing/);
    // Learned at 50 % for 15 to 20 s, with flat or light pitch: common practice, no source.
    expect(jobs[1]).toMatch(/throttle curve flat at 50 %/);
    expect(jobs[1]).toMatch(
      /Let the soft start finish; only then count\. Stay at 50 % for 15 to 20 seconds, pitch flat or light/,
    );
    expect(jobs[1]).toMatch(/Expect about [\d,]+ rpm at the rotor \([\d,]+ rpm at the motor\)/);
    // What was set for learning is set back: the governor, and each mode's own throttle.
    expect(jobs[2]).toMatch(/^Governor on.*flat throttle curve at the value on this card/);
    expect(all("ol .hand").length).toBeGreaterThanOrEqual(4);
  });

  it("the speed to expect at the motor: that at the rotor times the gears", () => {
    const [head, motor] = /about ([\d,]+) rpm at the rotor \(([\d,]+)/
      .exec(plain(all("ol")[1]?.textContent))!
      .slice(1)
      .map((text) => Number(text.replaceAll(",", ""))) as [number, number];
    expect(Math.abs(motor - 10 * head)).toBeLessThanOrEqual(5);
  });

  it("first of all, what comes before it", () => {
    expect(one(".maker").textContent).toMatch(/makers' instructions, your club's rules and the law come before/);
  });
});

describe("on other machines", () => {
  it("says what isn't printed, and names a second stage", () => {
    const { host } = mounted(
      card(
        machineWith({
          "mainRotor.ratedRpm": null,
          "mainRotor.blades": 1,
          "gears.moduleMm": 0.75,
          "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 },
          "pack.chemistry": "life",
        }),
      ),
    );
    expect(beside(host, "Limits", "Blades")).toBe("none printed: ask their maker");
    expect(beside(host, "Parts", "Gears")).toBe("13 : 120, module 0.75 mm, then 20 : 40");
    expect(beside(host, "Parts", "Main rotor")).toBe("1 blade, 970 mm across");
    expect(beside(host, "Parts", "Pack")).toContain("lithium iron phosphate");
  });

  it("lists every warning with its name", () => {
    const machine = machineWith({ "modes.0.headRpm": 2900, "gears.pinionTeeth": 9 });
    const { all } = mounted(card(machine));
    expect(all("[data-warning]").map(({ dataset }) => dataset.warning)).toEqual(
      figuresOf(machine).warnings.map(({ name }) => name),
    );
    const none = mounted(card(machineWith({ modes: [machineWith({}).modes[0]] })));
    expect(none.one(".warnings").hidden).toBe(true);
  });

  it("promises no speed where the motor wouldn't turn", () => {
    const { host, all } = mounted(card(dead));
    expect(plain(all("ol")[1]?.textContent)).toMatch(/the motor doesn't turn at that throttle/);
    expect(host.textContent).not.toMatch(emptyWord);
    expect(plain(host.textContent)).not.toMatch(/\b0 rpm at the motor/);
    expect(beside(host, "Reference", "100 % asks for")).toBe("no figure at the rotor, no figure at the motor");
  });

  it("is read out with parts, reference and limits", () => {
    for (const demo of demos) expect(wordsOf(card(demo))).not.toMatch(emptyWord);
    expect(plain(wordsOf(card(learned)))).toMatch(
      /^Set-up card\. 6-cell club trainer(?:, changed)?\. Pack: 6 cells.*Blades: 2,800 rpm/,
    );
  });
});

describe("while the machine changes", () => {
  it("follows in the same elements", () => {
    const { host, one, update } = mounted(card(learned));
    const faster = machineWith({ "modes.0.headRpm": 2160, "gears.tailRatio": 4.75 }, learned);
    expect(leavesElements(host, () => update(card(faster)))).toBe(true);
    expect(plain(one("output[data-quantity=throttle]").textContent)).toBe("72.0 %");
    expect(beside(host, "Parts", "Tail rotor")).toContain("4.75 turns");
  });

  it("follows modes that come and go", () => {
    const { all, update } = mounted(card(learned));
    update(card(machineWith({ modes: [learned.modes[0]] }, learned)));
    expect(all("tbody tr")).toHaveLength(1);
    update(card(learned));
    expect(all("tbody th").map((each) => each.textContent)).toEqual(["gentle", "club", "sporty"]);
  });
});

it("prints at the press of its button", () => {
  const print = vi.fn();
  vi.stubGlobal("print", print);
  mounted(card(learned)).button("Print the card").click();
  expect(print).toHaveBeenCalledTimes(1);
});
