import { describe, expect, it } from "vitest";
import { discPicture } from "#blocks/disc-picture";
import { gearPicture } from "#blocks/gear-picture";
import { magnetPicture } from "#blocks/magnet-picture";
import { packPicture } from "#blocks/pack-picture";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

type Changes = Readonly<Record<string, unknown>>;
const count = (path: Element, sign: RegExp) => path.getAttribute("d")?.match(sign)?.length ?? 0;

describe("the motor's magnets", () => {
  it("are drawn to their count, half of them of either kind", () => {
    const { one, update, all } = mounted(magnetPicture(machineWith({})));
    for (const poles of [10, 14, 2, 60]) {
      update(magnetPicture(machineWith({ "motor.poles": poles })));
      expect(count(one(".north"), /M/g) + count(one(".south"), /M/g)).toBe(poles);
      expect(count(one(".north"), /M/g)).toBe(poles / 2);
    }
    // Sixty have no room for letters.
    expect(all(".magnet-letters text")).toHaveLength(0);
    expect(wordsOf(magnetPicture(machineWith({})))).toContain("10 magnets are 5 pairs");
  });

  it("let the controller count a pair at a time while the bell turns", () => {
    const { one } = mounted(magnetPicture(machineWith({})));
    const range = one<HTMLInputElement>("input");
    range.value = "180";
    range.dispatchEvent(new Event("input"));
    expect(one(".count").textContent).toBe("2.50");
    expect(range.getAttribute("aria-valuetext")).toBe("0.50 of a turn, 2.50 counted");
  });
});

describe("another pinion beside the one fitted", () => {
  it("says how far the motor moves, and which way", () => {
    const words = (other: number) => plain(wordsOf(gearPicture(machineWith({}), { other })));
    // Half a module of 0.7 mm for each tooth: any gear handbook.
    expect(words(15)).toContain("For 15 teeth (dashed) the motor moves 0.70 mm away from the main gear.");
    expect(words(12)).toContain("the motor moves 0.35 mm towards the main gear.");
    expect(words(13)).toContain("The other pinion is the one that is fitted.");
  });

  it("fills in the teeth that one tooth of the pinion meets", () => {
    const met = (changes: Changes) => {
      const { one } = mounted(gearPicture(machineWith(changes), { meeting: true }));
      return count(one(".gear-main .gear-met"), /M/g);
    };
    // 120 over the greatest common divisor with 13, 12 and 16.
    expect([met({}), met({ "gears.pinionTeeth": 12 }), met({ "gears.pinionTeeth": 16 })]).toEqual([120, 10, 15]);
  });
});

describe("the pack", () => {
  const shown = (changes: Changes = {}) => packPicture(figuresOf(machineWith(changes)), 2);

  it("has as many cells as the machine, filled as far as they are charged", () => {
    const { one, host, update } = mounted(shown());
    const boxes = () => count(one(".cell-fill"), /Z/g);
    const height = () => /v([\d.]+)h-/.exec(one(".cell-fill").getAttribute("d") ?? "")?.[1];
    const full = Number(height());
    expect(boxes()).toBe(6);
    expect(leavesElements(host, () => update(shown({ "pack.chargePercent": 40, "pack.cells": 4 })))).toBe(true);
    expect(boxes()).toBe(4);
    expect(Number(height()) / full).toBeCloseTo(0.4, 2);
  });

  it("says what it rests at and what full pitch leaves", () => {
    expect(plain(wordsOf(shown()))).toMatch(
      /6 cells at 100 %: each rests at 4\.20 V, the pack at 25\.2 V\. Full pitch draws \d+ A and leaves 2\d\.\d V/,
    );
  });
});

describe("the rotor's disc", () => {
  it("has as many blades as the machine, and says tip speed and pull in weights", () => {
    const shown = (changes: Changes) => discPicture(figuresOf(machineWith(changes)), 0);
    const { one, update } = mounted(shown({}));
    expect(count(one(".disc-blades"), /Z/g)).toBe(2);
    update(shown({ "mainRotor.blades": 5 }));
    expect(count(one(".disc-blades"), /Z/g)).toBe(5);
    // 76 g at 255 mm and 1850 rpm: m r w² = 727 N, over 9.80665 m/s² 74 kg.
    expect(plain(wordsOf(shown({})))).toBe(
      "Your rotor from above. 2 blades on a circle of 970 mm: the tips move at 94 m/s. Each blade pulls at its bolt with 727 N, the weight of 74 kg.",
    );
  });
});
