import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { box, complaint, reach, slider, type, typed, unfold } from "../support/hands.ts";
import { breaches, emptyWords, figures, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** The five inputs of the first page, and a value to type. */
const main: [path: string, text: string][] = [
  ["motor.poles", "12"],
  ["gears.pinionTeeth", "14"],
  ["gears.mainTeeth", "111"],
  ["pack.voltage", "23.5"],
  ["motor.kvRpmPerVolt", "1234"],
];

/** Input that can't be taken: where, what, and what the words at the place must speak of. */
const refused: [path: string, text: string, words: RegExp][] = [
  ["gears.pinionTeeth", "abc", /number/i],
  ["gears.pinionTeeth", "", /number|empty|blank/i],
  ["gears.pinionTeeth", "-3", /\d/],
  ["gears.pinionTeeth", "12.5", /whole/i],
  ["gears.mainTeeth", "1e9", /\d/],
  ["motor.poles", "7", /even/i],
  ["motor.kvRpmPerVolt", "0", /\d/],
  ["pack.cells", "0", /\d/],
  ["pack.voltage", "400", /\d/],
];

describe("the inputs of the first page", () => {
  it.each(main)("%s follows the keys, and figures follow it", async (path) => {
    const { page } = await visit(browser);
    const before = await figures(page);
    const was = await typed(page, path);
    // Downwards, because the pack is full at first.
    await slider(await reach(page, path)).press("ArrowLeft");
    await settled(page);
    expect(await typed(page, path)).toBeLessThan(was);
    expect(await figures(page)).not.toEqual(before);
  });

  it.each(main)("%s takes %s when it is typed", async (path, text) => {
    const open = await visit(browser);
    const before = await figures(open.page);
    await type(open.page, path, text);
    expect(await typed(open.page, path)).toBe(Number(text));
    expect(await figures(open.page)).not.toEqual(before);
    expect(await breaches(open)).toEqual([]);
  });

  it.each(refused)("%s doesn't take '%s' and says why", async (path, text, words) => {
    const open = await visit(browser);
    const { page } = open;
    const before = await figures(page);
    const was = await typed(page, path);
    await type(page, path, text);
    expect(await complaint(page, path)).toMatch(words);
    expect(await figures(page)).toEqual(before);
    await box(await reach(page, path)).press("Escape");
    await settled(page);
    expect(await complaint(page, path)).toBe("");
    expect(await typed(page, path)).toBe(was);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("keep voltage and charge of the pack together", async () => {
    const { page } = await visit(browser);
    await type(page, "pack.chargePercent", "100");
    const full = await typed(page, "pack.voltage");
    await type(page, "pack.chargePercent", "40");
    const lower = await typed(page, "pack.voltage");
    expect(lower).toBeLessThan(full);
    await type(page, "pack.voltage", String(full));
    expect(await typed(page, "pack.chargePercent")).toBeCloseTo(100, 0);
  });
});

/** Changes an input by keys alone, whatever control it has. */
async function byKeys(input: Locator): Promise<void> {
  const none = input.locator("button.none[aria-pressed=true]");
  if (await none.count()) return none.press("Enter");
  const control = input.locator("input, select").first();
  const kind = await control.evaluate((e) => (e instanceof HTMLInputElement ? `${e.type} ${e.inputMode}` : "select"));
  if (kind.startsWith("checkbox")) return control.press("Space");
  if (kind.startsWith("range")) {
    const full = await control.evaluate((e) => (e as HTMLInputElement).value === (e as HTMLInputElement).max);
    return control.press(full ? "ArrowLeft" : "ArrowRight");
  }
  if (kind === "select") {
    const last = await control.evaluate((e) => (e as HTMLSelectElement).selectedIndex > 0);
    return control.press(last ? "ArrowUp" : "ArrowDown");
  }
  // A name, or a number that isn't known yet.
  const words = kind === "text " ? "another name" : (await control.inputValue()) === "" ? "1800" : null;
  if (words !== null) {
    await control.fill(words);
    return control.press("Enter");
  }
  await control.press("ArrowUp");
}

const held = (input: Locator): Promise<string> =>
  input
    .locator("input, select")
    .evaluateAll((controls) =>
      (controls as (HTMLInputElement | HTMLSelectElement)[])
        .map((c) => (c instanceof HTMLInputElement && c.type === "checkbox" ? String(c.checked) : c.value))
        .join(" "),
    );

/** Opens all parts, with everything that a machine can have. */
async function openAll(page: Page): Promise<void> {
  const sections = page.locator(".parts details.section");
  for (const section of await sections.all()) {
    await section.evaluate((fold) => ((fold as HTMLDetailsElement).open = true));
    await section.locator("[data-input]").first().waitFor({ state: "attached" });
  }
  const stage = page.locator('[data-input="gears.secondStage"] input[type=checkbox]');
  if (!(await stage.isChecked())) await stage.check();
  await page.locator(".parts fieldset.learned input[type=radio]").last().check();
  await unfold(page.locator('[data-input^="controller.learned.fittedWith"]').first());
  await settled(page);
}

describe("every input among the parts", () => {
  it("can be changed by keys, and the change undone and done again", async () => {
    const open = await visit(browser);
    const { page } = open;
    await openAll(page);
    const inputs = page.locator(".parts [data-input]:visible");
    const count = await inputs.count();
    expect(count).toBeGreaterThan(45);
    for (let i = 0; i < count; i++) {
      const input = inputs.nth(i);
      const path = await input.getAttribute("data-input");
      const before = await held(input);
      await byKeys(input);
      await settled(page);
      const after = await held(input);
      expect(after, `changed: ${path}`).not.toBe(before);
      await page.getByRole("button", { name: /^undo/ }).click();
      expect(await held(input), `undone: ${path}`).toBe(before);
      await page.getByRole("button", { name: /^redo/ }).click();
      expect(await held(input), `done again: ${path}`).toBe(after);
      await page.getByRole("button", { name: /^undo/ }).click();
    }
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });
});
