import { describe, expect, it } from "vitest";
import { gearChoiceMap, gearQuantity, gearQuantityPick } from "#blocks/gear-map";
import { figuresOf } from "#figures/figures";
import type { GearQuantity } from "#figures/gearing";
import { createBench } from "#machine/bench";
import { withValue } from "#machine/paths";
import { answer, answersNow } from "#view/answers";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const trainer = machineWith({});
const map = (machine = trainer, whatIf = trainer, travel = 0.75, quantity: GearQuantity = "speed") =>
  gearChoiceMap(figuresOf(machine), whatIf === trainer ? null : figuresOf(whatIf), 2, quantity, travel);

const stand = (machine = trainer) => mounted(map(machine), createBench(machine));
const cell = (page: ReturnType<typeof stand>, pinion: number, main: number) => {
  const found = page.all("td[role=gridcell]").find((each) => {
    return each.getAttribute("aria-label")?.includes(`Pinion ${pinion}, main gear ${main};`);
  });
  if (!found) throw new Error(`no cell for ${pinion} on ${main}`);
  return found;
};
const key = (element: Element, name: string) =>
  element.dispatchEvent(new KeyboardEvent("keydown", { key: name, bubbles: true, cancelable: true }));

describe("the map of gears", () => {
  it("is a grid with a name, headings and a figure in each cell", () => {
    const page = stand();
    expect(page.one("table[role=grid]").getAttribute("aria-label")).toContain("Most the rotor can turn at full pitch");
    expect(
      page
        .all("th[scope=col][role=columnheader]")
        .slice(0, 9)
        .map((each) => each.textContent),
    ).toContain("13");
    expect(
      page
        .all("th[scope=row]")
        .slice(0, 9)
        .map((each) => each.textContent),
    ).toContain("120");
    const own = figuresOf(trainer).number("ceiling-full-pitch", 2)!;
    expect(cell(page, 13, 120).querySelector("b")?.textContent).toBe(
      Math.round(own).toLocaleString("en-GB").replace(/\s/g, ","),
    );
  });

  it("says what is fitted, what fits and what isn't held: in words, and by marks for the eye", () => {
    const page = stand();
    const own = cell(page, 13, 120);
    expect([own.dataset.machine, own.dataset.fits, own.querySelector("i")?.textContent]).toEqual([
      "now",
      "true",
      "now",
    ]);
    const short = cell(page, 11, 120);
    expect([short.dataset.mark, short.querySelector("i")?.textContent]).toEqual(["short", "short"]);
    expect(short.getAttribute("aria-label")).toContain("full pitch isn't held");
    // It can be called by what is seen in it.
    expect(short.getAttribute("aria-label")).toMatch(/^2,4\d\d short\. /);
    expect(short.textContent).toMatch(/^2,4\d\d short$/);
    const far = cell(page, 17, 120);
    expect(far.dataset.fits).toBe("false");
    expect(plain(far.getAttribute("aria-label"))).toContain(
      "the motor moves 1.40 mm away from the main gear, further than your slot goes",
    );
    const legend = page.all(".gear-map-marks li").map((each) => each.textContent);
    expect(legend).toContain("short: full pitch isn't held.");
    expect(legend.join(" ")).not.toContain("faster than it may");
  });

  it("is shaded from the lowest to the highest", () => {
    const page = stand();
    expect(cell(page, 9, 124).dataset.level).toBe("0");
    expect(cell(page, 17, 116).dataset.level).toBe("6");
    const levels = [9, 11, 13, 15, 17].map((pinion) => Number(cell(page, pinion, 120).dataset.level));
    expect(levels).toEqual([...levels].sort());
    expect(new Set(levels).size).toBeGreaterThan(3);
  });

  it("has one way in, and the arrow keys walk from cell to cell, stopping at the edges", () => {
    const page = stand();
    const open = () => page.all("td[tabindex='0']");
    expect(open()).toEqual([cell(page, 13, 120)]);
    key(cell(page, 13, 120), "ArrowRight");
    key(cell(page, 14, 120), "ArrowDown");
    expect(open()).toEqual([cell(page, 14, 121)]);
    expect(document.activeElement).toBe(cell(page, 14, 121));
    expect(page.one(".gear-map-at").textContent).toContain("Pinion 14, main gear 121");
    key(cell(page, 14, 121), "End");
    key(cell(page, 17, 121), "ArrowRight");
    key(cell(page, 17, 121), "PageUp");
    expect(open()).toEqual([cell(page, 17, 116)]);
    expect(key(cell(page, 17, 116), "a")).toBe(true);
  });

  it("starts the what-if with the pair that is chosen, in one step of undo, and changes it from then on", () => {
    const page = stand();
    cell(page, 15, 118).click();
    expect(page.bench.whatIf?.gears).toEqual({ ...trainer.gears, pinionTeeth: 15, mainTeeth: 118 });
    expect(page.bench.now).toBe(trainer);
    expect(page.one("[role=status]").textContent).toBe("The what-if now has 15 on 118.");
    expect(page.bench.undo()).toBe(true);
    expect(page.bench.whatIf).toBeNull();
    cell(page, 15, 118).click();
    page.bench.set("motor.kvRpmPerVolt", 1000, { machine: "what-if" });
    key(cell(page, 15, 118), "ArrowLeft");
    key(cell(page, 14, 118), "Enter");
    expect(page.bench.whatIf?.gears.pinionTeeth).toBe(14);
    expect(page.bench.whatIf?.motor.kvRpmPerVolt).toBe(1000);
  });

  it("takes the pair that is fitted for no choice", () => {
    const page = stand();
    cell(page, 13, 120).click();
    expect(page.bench.whatIf).toBeNull();
    expect(page.one("[role=status]").textContent).toContain("13 on 120 is what is fitted");
  });

  it("marks the what-if, and writes only what has changed", () => {
    const page = stand();
    const other = withValue(trainer, "gears.pinionTeeth", 14);
    expect(leavesElements(page.host, () => page.update(map(trainer, other)))).toBe(true);
    const chosen = cell(page, 14, 120);
    expect([chosen.dataset.machine, chosen.getAttribute("aria-selected")]).toEqual(["what-if", "true"]);
    expect(leavesElements(page.host, () => page.update(map(withValue(trainer, "pack.chargePercent", 40))))).toBe(true);
    expect(chosen.dataset.machine).toBe("none");
  });

  it("sums up the pairs that fit", () => {
    const words = plain(wordsOf(map()));
    expect(words).toMatch(
      /With 13 on 120: 2,7\d\d rpm\. Of the 39 pairs that fit, 17 on 116 turns fastest: 3,3\d\d rpm\./,
    );
    expect(words).toContain("5 of them: full pitch isn't held.");
    // Pairs with which nobody hovers are no answer, however slow their tips.
    expect(plain(wordsOf(map(trainer, trainer, 0.75, "tip")))).toMatch(/11 on 12\d drives them least/);
    // Without any slot the motor stays, and one tooth more here is one less there.
    expect(plain(wordsOf(map(trainer, trainer, 0)))).toContain("Of the 9 pairs that fit");
  });

  it("fills its table when that is opened, with the pairs that fit and all their figures", () => {
    const page = stand();
    expect(page.all("details tbody tr")).toHaveLength(0);
    const details = page.one<HTMLDetailsElement>("details");
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
    const rows = page.all("details tbody tr");
    expect(rows).toHaveLength(39);
    const own = rows.find((row) => row.firstChild?.textContent === "13 on 120");
    const figures = figuresOf(trainer);
    const texts = [...(own?.children ?? [])].map((each) => plain(each.textContent));
    expect(texts[1]).toBe("9.231");
    expect(texts[9]).toBe(figures.number("hover-duration", 2)!.toFixed(1));
    expect(texts.at(-1)).toBe("–");
  });
});

it("the map shows the figure that is picked", () => {
  expect(gearQuantity({})).toBe("speed");
  expect(gearQuantity({ "gear-map-shows": "nonsense" })).toBe("speed");
  const page = mounted(gearQuantityPick(answersNow()));
  page.all<HTMLInputElement>("input[value=duration]")[0]!.click();
  expect(gearQuantity(answersNow())).toBe("duration");
  answer("gear-map-shows", null);
});
