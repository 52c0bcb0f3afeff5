/** The learning run in a real browser: spoilt, guessed, flown, taken over and taken back; and a list that keeps its ticks. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, emptyWords, phone, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const address = "/learning-run.html";
const tidy = (text: string) => text.replace(/\s+/g, " ");

describe("a learning run with half a pack", () => {
  it("is guessed, flown, and its reference taken over and back", async () => {
    const open = await visit(browser, address, { reducedMotion: "reduce" });
    const { page } = open;
    const run = page.locator('figure[data-plot="learning-run"]');
    const stored = page.locator(".learning-stored");
    await page.locator('[data-slip="pack"] input[type=checkbox]').uncheck();
    await page.locator('[data-guess="learning-guess-pack"]').waitFor();
    await run.scrollIntoViewIfNeeded();
    await expect.poll(() => run.locator("figcaption").innerText()).toMatch(/as soon as you have guessed/);
    await page.locator('[data-guess="learning-guess-pack"] label', { hasText: "too little" }).click();
    await expect
      .poll(async () => tidy(await run.locator("figcaption").innerText()))
      .toMatch(/The head turns at 1,3\d\d rpm/);
    await stored.scrollIntoViewIfNeeded();
    await expect.poll(async () => tidy(await stored.innerText())).toMatch(/That is 9\.\d % too low/);
    // The slider is free now: less pack, less speed, without another question.
    const off = async () => Number(/That is ([\d.]+) % too low/.exec(tidy(await stored.innerText()))?.[1]);
    const before = await off();
    await page.locator('[data-slip="pack"] input[type=range]').fill("30");
    // The table is worked out when it comes into view.
    await stored.scrollIntoViewIfNeeded();
    await expect.poll(off).toBeGreaterThan(before);
    await stored.locator("button").click();
    await expect.poll(async () => tidy(await stored.innerText())).toMatch(/stands in your machine now/);
    await page.locator("header button", { hasText: /^undo$/ }).click();
    await expect.poll(async () => tidy(await stored.innerText())).not.toMatch(/stands in your machine now/);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });
});

describe("the list for the field", () => {
  it("keeps its ticks over a reload, on a phone, and nothing goes past its edge", async () => {
    const open = await visit(browser, address, { viewport: phone, hasTouch: true });
    const { page } = open;
    const boxes = page.locator(".learning-checklist input");
    await boxes.nth(0).check();
    await boxes.nth(3).check();
    await page.reload();
    await page.waitForSelector("html[data-live]");
    await expect.poll(() => boxes.nth(3).isChecked()).toBe(true);
    expect(tidy(await page.locator(".learning-done").innerText())).toMatch(/^2 of \d+ ticked\./);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await breaches(open)).toEqual([]);
  });
});
