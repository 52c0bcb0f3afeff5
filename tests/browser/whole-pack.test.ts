/** A whole pack in a real browser: flown by the worker, dropped when its inputs change, scrubbed, taken away. */
import { readFile } from "node:fs/promises";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { logColumns } from "#model/flight/csv";
import { launchChromium } from "../support/chromium.ts";
import { breaches, emptyWords, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const still = { reducedMotion: "reduce" } as const;
const tidy = (text: string) => text.replace(/\s+/g, " ");
const packs = (page: Page) => page.locator('figure[data-plot="whole-pack-modes"]');
const flight = (page: Page) => page.locator('figure[data-plot="whole-pack"]');
const told = async (page: Page) => tidy(await packs(page).locator("figcaption").innerText());
const patient = { timeout: 30_000 };

/** Opens the page and guesses. */
async function guessing(percent: string) {
  const open = await visit(browser, "/whole-pack.html", still);
  const guess = open.page.locator('[data-guess^="whole-pack-mixed"]');
  await guess.locator("input[type=range]").fill(percent);
  await guess.locator("button", { hasText: "Answer" }).click();
  await packs(open.page).scrollIntoViewIfNeeded();
  return open;
}

describe("a whole pack", () => {
  it("is flown in every mode by the worker, and the guess held against it", async () => {
    const open = await guessing("60");
    const { page } = open;
    await expect.poll(() => told(page), patient).toMatch(/sporty is lost at \d+ % of charge, after [\d.]+ min\./);
    expect(await told(page)).toMatch(/You said 60 %: \d+ % too early in the pack\./);
    expect(page.workers().length).toBeGreaterThan(0);
    const table = tidy(await page.locator("[data-facts] table, .facts-table").first().innerText());
    expect(table).toMatch(/sporty \d+ % [\d.]+ min \d+:\d\d \d+:\d0/);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("follows what changes: the last order counts, the last good picture stays dimmed until then", async () => {
    const open = await guessing("60");
    const { page } = open;
    await expect.poll(() => told(page), patient).toMatch(/sporty is lost at/);
    const before = Number(/sporty is lost at (\d+) %/.exec(await told(page))?.[1]);
    // Two tries, one right after the other: the first is dropped in the middle of its flight.
    const [older, slower] = [page.locator('[data-try="older"]'), page.locator('[data-try="slower"]')];
    await older.evaluate((button) => (button as HTMLButtonElement).click());
    await packs(page).scrollIntoViewIfNeeded();
    await expect.poll(() => packs(page).getAttribute("data-busy")).toBeTruthy();
    await slower.evaluate((button) => (button as HTMLButtonElement).click());
    await expect.poll(() => packs(page).getAttribute("data-busy"), patient).toBeNull();
    const words = await told(page);
    expect(Number(/sporty is lost at (\d+) %/.exec(words)?.[1])).toBe(before);
    // A tenth slower is held longer than now; with older cells it would have been lost sooner.
    const other = /sporty \(what if\) is lost at (\d+) %/.exec(words)?.[1];
    expect(other === undefined ? 0 : Number(other)).toBeLessThan(before);
    expect(await breaches(open)).toEqual([]);
  });

  it("can be pulled along and taken away as a table that a log reader takes", async () => {
    const open = await guessing("60");
    const { page } = open;
    await flight(page).scrollIntoViewIfNeeded();
    await expect
      .poll(async () => tidy(await flight(page).locator("figcaption").innerText()), patient)
      .toMatch(/The mode is lost at \d+ % of charge/);
    const time = flight(page).locator(".flight-time");
    await time.focus();
    await time.press("Home");
    await expect.poll(() => time.getAttribute("aria-valuetext")).toMatch(/^0\.00\smin, .*charge 100/);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      flight(page).locator("button", { hasText: "take this run away" }).click(),
    ]);
    const lines = (await readFile((await download.path())!, "utf8")).trim().split("\r\n");
    expect(lines[0]).toBe(logColumns.map((column) => column.header).join(","));
    expect(lines.length).toBeGreaterThan(500);
    const charge = (line: string) => Number(line.split(",")[5]);
    expect(charge(lines[1]!)).toBeCloseTo(100, 1);
    expect(charge(lines.at(-1)!)).toBeLessThan(1);
    expect(await breaches(open)).toEqual([]);
  });
});
