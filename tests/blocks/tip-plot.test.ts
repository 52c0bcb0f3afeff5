import { describe, expect, it } from "vitest";
import { tipPlot } from "#blocks/tip-plot";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain } from "./mounted.ts";

const shown = (changes: Readonly<Record<string, unknown>> = {}, mode = 0) =>
  tipPlot(figuresOf(machineWith(changes)), mode);
const metres = (headRpm: number) => headRpm * ((2 * Math.PI) / 60) * 0.485;

describe("tip speed against the pinion", () => {
  it("has a dot for each pinion, and the mark on the one that is fitted", () => {
    const { curves, handles, x } = shown().state;
    expect(Array.from(curves[0]!.xs)).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    expect(curves[0]!.dots).toBe(true);
    expect(x.ticks).toEqual(expect.arrayContaining([...Array.from(curves[0]!.xs)]));
    expect(handles?.[0]).toMatchObject({ path: "gears.pinionTeeth", x: 13, value: 13, min: 8, max: 20, step: 1 });
    // V = omega R.
    expect(handles?.[0]?.y).toBeCloseTo(metres(1850), 9);
    expect(handles?.[0]?.valueText).toBe("13 teeth");
  });

  it("hatches the blade maker's limit", () => {
    const zone = shown().state.zones?.[0];
    expect(zone?.y?.[0]).toBeCloseTo(metres(2800), 9);
    expect([zone?.y?.[1], zone?.words]).toEqual([null, "over the blades' printed limit"]);
    expect(shown({ "mainRotor.ratedRpm": null }).state.zones).toEqual([]);
  });

  it("says from which pinion on the limit is passed", () => {
    const words = (changes: Readonly<Record<string, unknown>>, mode = 0) => plain(shown(changes, mode).state.words);
    expect(words({})).toBe(
      "With 13 teeth the tips move at 94 m/s. The limit lies at 142 m/s. From 20 teeth on, the old throttle value takes them over the printed limit.",
    );
    expect(words({ "modes.0.headRpm": 1400 })).toMatch(/No pinion drawn here takes them over the printed limit/);
    // 2450 x 15 / 13 = 2827 rpm: the second tooth more is too many.
    expect(words({}, 2)).toMatch(/From 15 teeth on, the old throttle value takes them over/);
    expect(words({ "modes.0.headRpm": 2900 })).toMatch(/That is over the limit that the maker/);
    expect(words({ "mainRotor.ratedRpm": null })).toMatch(/94 m\/s\. The maker of these blades prints no speed limit/);
  });

  it("is on the page by its name, and stays in place", () => {
    const { one, host, update } = mounted(shown());
    expect(one("figure").dataset.plot).toBe("tip-speed");
    expect(leavesElements(host, () => update(shown({ "modes.0.headRpm": 1900 })))).toBe(true);
  });
});
