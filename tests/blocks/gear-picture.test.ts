import { describe, expect, it, vi } from "vitest";
import { gearPicture } from "#blocks/gear-picture";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const shown = (changes: Readonly<Record<string, unknown>> = {}) => gearPicture(machineWith(changes));
/** The outline of a gear; empty where it isn't drawn. */
const outline = (path: Element | undefined) => path?.getAttribute("d") ?? "";

describe("the two gears", () => {
  it("are a figure with a name, a caption and a label for those who don't see it", () => {
    const { one } = mounted(shown());
    expect(one("figure").dataset.picture).toBe("gears");
    expect(one("figcaption").textContent).toBe(wordsOf(shown()));
    expect(one("svg").getAttribute("aria-label")).toBe(wordsOf(shown()));
  });

  it("say counts, ratio and when the same teeth meet again", () => {
    // 13 and 120 have no common divisor: 120 turns of the pinion (Foiles, Gear frequencies using the Euclidean algorithm).
    expect(plain(wordsOf(shown()))).toMatch(
      /pinion of 13 teeth .* main gear of 120: the motor turns 9\.23 times.*Every tooth meets every other.* 120 turns/,
    );
    // 12 and 120: after 10 turns.
    expect(plain(wordsOf(shown({ "gears.pinionTeeth": 12 })))).toMatch(/The same two teeth meet again after 10 turns/);
  });

  it("are drawn anew when their teeth change, in the same elements", () => {
    const { host, all, update } = mounted(shown());
    const before = all(".gear-teeth").map(outline);
    expect(leavesElements(host, () => update(shown({ "gears.pinionTeeth": 17 })))).toBe(true);
    const after = all(".gear-teeth").map(outline);
    // Another pinion changes the scale of both gears: together they fill the picture.
    after.forEach((path, i) => {
      if (before[i]) expect(path).not.toBe(before[i]);
    });
    expect(before.some(Boolean)).toBe(true);
  });

  it("follow a second stage in words", () => {
    const { one, update } = mounted(shown());
    update(shown({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }));
    expect(one("figcaption").textContent).toContain("18.46");
  });

  it("turn at their ratio and stop, when the reader wants it", () => {
    const { one, all, button } = mounted(shown());
    const cancel = vi.fn();
    const spins: [Element, number, string][] = [];
    for (const group of all<SVGElement & HTMLElement>("g")) {
      group.animate = (frames, options) => {
        const { duration } = options as KeyframeAnimationOptions;
        spins.push([group, Number(duration), String((frames as Keyframe[])[1]?.transform)]);
        return { cancel } as unknown as Animation;
      };
    }
    const turn = one<HTMLButtonElement>("button");
    turn.click();
    const [slow, fast] = [Math.max(...spins.map(([, ms]) => ms)), Math.min(...spins.map(([, ms]) => ms))];
    expect(slow / fast).toBeCloseTo(120 / 13, 9);
    expect(new Set(spins.map(([, , way]) => way)).size).toBe(2);
    button("stop the gears").click();
    expect(cancel).toHaveBeenCalledTimes(spins.length);
    expect(turn.textContent).toBe("turn the gears");
  });
});
