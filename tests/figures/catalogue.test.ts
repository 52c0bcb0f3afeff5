import { describe, expect, it } from "vitest";
import { catalogue, quantityNames } from "#figures/catalogue";
import { everyQuantity, figuresOf } from "#figures/figures";
import { defaultMachine } from "#machine/machine";
import { machineWith } from "./machines.ts";

/** The names and units that links, files and other programs rely on. */
const promised = `
gear-ratio 1, pack-open-voltage V, pack-resistance ohm, air-density kg/m3, no-load-head-speed rpm,
learning-head-speed rpm, learned-motor-speed rpm, learned-head-speed rpm, usable-low-head-speed rpm,
usable-high-head-speed rpm, reference-state text`;
const promisedEach = `
set-head-speed rpm, throttle percent, throttle-entered percent, head-speed-entered rpm, ceiling-hover rpm,
ceiling-full-pitch rpm, speed-headroom-hover rpm, speed-headroom-full-pitch rpm, duty-hover percent,
duty-full-pitch percent, motor-speed rpm, electrical-speed rpm, tail-rotor-speed rpm, tip-speed m/s, tip-mach 1,
blade-pull N, rotor-energy J, hover-collective deg, hover-power W, hover-motor-current A, hover-pack-current A,
hover-duration min, full-pitch-power W, full-pitch-pack-current A, lowest-charge percent,
hover-board-heat W, hover-efficiency percent, full-pitch-motor-current A, full-pitch-board-heat W,
full-pitch-efficiency percent, full-pitch-duration min`;

const listed = (text: string): string[][] => text.split(",").map((each) => each.trim().split(" "));

describe("the catalogue", () => {
  it.each([
    ["whole", promised, false],
    ["each mode's", promisedEach, true],
  ] as const)("keeps the names and units of the %s figures", (_, text, perMode) => {
    for (const [name, unit] of listed(text)) {
      expect([name, catalogue[name as keyof typeof catalogue]]).toMatchObject([name, { unit, perMode }]);
    }
  });

  it("names figures in kebab-case, each with a title of its own", () => {
    for (const name of quantityNames) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    const titles = quantityNames.map((name) => catalogue[name].title);
    expect(new Set(titles).size).toBe(titles.length);
    for (const title of titles) expect(title).toMatch(/^[a-z].*[^.]$/);
  });

  it("lists every figure once, those of the modes once for each", () => {
    const one = everyQuantity(figuresOf(machineWith({ modes: [defaultMachine.modes[0]] })));
    expect(one.map(({ name }) => name)).toEqual(quantityNames);
    const three = everyQuantity(figuresOf(defaultMachine));
    expect(three.filter(({ name }) => name === "throttle").map(({ mode }) => mode)).toEqual([0, 1, 2]);
    expect(three.filter(({ name }) => name === "gear-ratio")).toEqual([{ name: "gear-ratio", mode: null }]);
  });
});
