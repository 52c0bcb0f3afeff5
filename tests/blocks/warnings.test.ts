import { describe, expect, it } from "vitest";
import { warnings } from "#blocks/warnings";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const of = (changes: Readonly<Record<string, unknown>>, mode?: number) =>
  warnings(figuresOf(machineWith(changes)), mode);
/** A machine with a rough mesh, and a first and a third mode that are too fast for the blades. */
const faults = { "gears.pinionTeeth": 9, "mainRotor.ratedRpm": 1800, "modes.1.headRpm": 1700 };

describe("warnings on a page", () => {
  it("each carry their name, the mode and the words", () => {
    const { all } = mounted(of(faults));
    const found = all("li").map(({ dataset }) => `${dataset.warning} ${dataset.mode ?? "-"}`);
    expect(found).toContain("pinion-mesh-poor -");
    expect(found).toContain("blade-speed-over-limit 0");
    expect(found).toContain("blade-speed-over-limit 2");
    for (const item of all("li")) expect(item.textContent).toMatch(/\w+ \w+ \w+.*\.$/);
  });

  it("are those of one mode and of the whole machine where a mode is looked at", () => {
    const { all } = mounted(of(faults, 1));
    const modes = new Set(all("li").map(({ dataset }) => dataset.mode));
    expect(modes).not.toContain("0");
    expect(all('[data-warning="pinion-mesh-poor"]')).toHaveLength(1);
    expect(all('[data-warning="blade-speed-over-limit"]')).toHaveLength(0);
  });

  it("are none where nothing stands against it, and the page says so", () => {
    const { one, all } = mounted(of({}, 0));
    expect(all("li")).toHaveLength(0);
    expect([one("ul").hidden, one(".all-well").hidden]).toEqual([true, false]);
    expect(wordsOf(of({}, 0))).toBe(one(".all-well").textContent);
  });

  it("explain a short tail once, and count it up for the next mode", () => {
    const { all } = mounted(of({ "tailRotor.diameterMm": 120 }));
    const tails = all('[data-warning="tail-thrust-short"]').map(({ textContent }) => plain(textContent));
    expect(tails).toHaveLength(3);
    expect(tails[0]).toMatch(/^At full pitch in "gentle" the tail must push with .* would help\.$/);
    expect(tails[1]).toMatch(/^The same in "club": [\d.]+ N, and the limit is [\d.]+ N\.$/);
    const speeds = mounted(of(faults)).all('[data-warning="blade-speed-over-limit"]');
    for (const { textContent } of speeds) expect(textContent).not.toMatch(/^The same/);
  });

  it("come, change and go with the machine, each item with its own mode", () => {
    const { all, one, update } = mounted(of({}));
    update(of(faults));
    const first = all("li")[0];
    expect(one(".all-well").hidden).toBe(true);
    // The first item becomes another warning: of a mode, where it was of the whole machine.
    expect(first?.dataset).toMatchObject({ warning: "pinion-mesh-poor" });
    update(of({ "mainRotor.ratedRpm": 1800 }));
    expect(all("li")[0]).toBe(first);
    expect(first?.dataset.warning).toBe("blade-speed-over-limit");
    expect(first?.dataset.mode).toBe("0");
    update(of(faults));
    expect(first?.dataset.mode).toBeUndefined();
    update(of({}));
    expect(all("li")).toHaveLength(0);
  });

  it("stay in place while only their figures move", () => {
    const { host, update } = mounted(of({ "modes.0.headRpm": 2900 }));
    expect(leavesElements(host, () => update(of({ "modes.0.headRpm": 2901 })))).toBe(true);
  });

  it("are read out in their own words", () => {
    const shown = of(faults);
    expect(wordsOf(shown)).toBe(shown.state.figures.warnings.map(({ words }) => words).join(" "));
  });
});
