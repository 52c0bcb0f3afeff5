import { describe, expect, it } from "vitest";
import { learnedInput } from "#blocks/learned-input";
import { fittedNow } from "#machine/machine";
import { box, type } from "../inputs/hand.ts";
import { mounted, wordsOf } from "./mounted.ts";

describe("what the controller has learned, in the middle of a page", () => {
  it("is told there: yes, and the speed that was measured", () => {
    const { one, all, bench } = mounted(learnedInput());
    const [notYet, yes] = all<HTMLInputElement>("input[type=radio]");
    expect([notYet?.checked, yes?.checked]).toEqual([true, false]);
    yes!.checked = true;
    yes!.dispatchEvent(new Event("change"));
    expect(bench.now.controller.learned.fittedWith).toEqual(fittedNow(bench.now));
    type(box(one('[data-input="controller.learned.motorRpm"]')), "14,000");
    expect(bench.now.controller.learned.motorRpm).toBe(14_000);
  });

  it("follows the bench by itself", () => {
    const { all, bench, update } = mounted(learnedInput());
    bench.set("controller.learned.motorRpm", 14_000);
    expect(all<HTMLInputElement>("input[type=radio]")[1]?.checked).toBe(true);
    expect(() => update(learnedInput())).not.toThrow();
  });

  it("has a name", () => {
    expect(wordsOf(learnedInput())).toBe("What the controller has learned");
  });
});
