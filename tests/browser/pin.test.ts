/** The pin: an earlier machine stays on the plots, in the table and in the figures, over a reload, and goes again. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { slider, type } from "../support/hands.ts";
import { breaches, emptyWords, phone, ready, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const dashed = (page: Page) => page.locator("figure[data-plot] path.ink.pinned-now");
const act = (page: Page, name: string) => page.locator(`[data-pin-act="${name}"]`).click();

describe("the pin", () => {
  it("keeps what was pinned on every plot with ink, over a reload, until it is taken away", async () => {
    const open = await visit(browser);
    const { page } = open;
    expect(await dashed(page).count()).toBe(0);
    await act(page, "set");
    await type(page, "gears.pinionTeeth", "15");
    await dashed(page).first().waitFor();
    const plots = page.locator("figure[data-plot]", { has: page.locator("path.ink.pinned-now") });
    expect(await plots.count()).toBe(3);
    expect(await plots.first().locator("svg.plot-drawing").textContent()).toContain("pinned: 13");
    expect(await page.locator("output[data-pinned]").count()).toBeGreaterThan(3);
    expect(await page.locator(".modes-table .pinned-value:visible").count()).toBeGreaterThan(3);
    await page.reload();
    await ready(page);
    await dashed(page).first().waitFor();
    expect(await page.locator(".pin").getAttribute("data-pin")).toBe("differs");
    await act(page, "drop");
    await settled(page);
    expect(await page.locator("path.ink.pinned-now:visible").count()).toBe(0);
    expect(await page.locator("output[data-pinned]").count()).toBe(0);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("shows the what-if on plots that know nothing of it", async () => {
    const { page } = await visit(browser);
    await page
      .getByRole("button", { name: /what if/i })
      .first()
      .click();
    await slider(page.locator('.parts [data-input="gears.pinionTeeth"]')).press("ArrowRight");
    await page.locator('figure[data-plot="tip-speed"] path.ink.what-if').first().waitFor();
  });

  it("is flown beside every flight, off the page where that takes long, and has its column in a table", async () => {
    const open = await visit(browser, "/learning-run.html", { reducedMotion: "reduce" });
    const { page } = open;
    const figure = page.locator('figure[data-plot="learning-run"]');
    await figure.scrollIntoViewIfNeeded();
    await expect.poll(() => figure.locator("figcaption").innerText()).toMatch(/Stored as 100/);
    await act(page, "set");
    await type(page, "gears.pinionTeeth", "15");
    await expect.poll(() => figure.locator("figcaption").innerText()).toMatch(/Pinned \(13\st\): The head turns/);
    expect(await figure.locator("path.ink.pinned-now:visible").count()).toBeGreaterThan(2);
    expect(await figure.locator("svg.plot-drawing").getAttribute("aria-label")).toMatch(/Pinned \(13\st\): The head/);
    // The pin goes along to the next page.
    await page.goto(new URL("/another-pinion.html", page.url()).href);
    await ready(page);
    const column = page.locator('[data-facts="gear-compare"] .pinned-column');
    await column.first().waitFor();
    expect(await page.locator('[data-facts="gear-compare"] thead').innerText()).toMatch(/pinned: 13 on 120/);
    expect(await column.first().innerText()).toBe("9.23");
    await act(page, "drop");
    await expect.poll(() => column.count()).toBe(0);
    expect(await breaches(open)).toEqual([]);
  });

  it("goes no wider than a phone", async () => {
    const { page } = await visit(browser, "/", { viewport: phone });
    await page.locator(".parts-bar").click();
    await act(page, "set");
    await type(page, "gears.pinionTeeth", "15");
    await dashed(page).first().waitFor({ state: "attached" });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });
});
