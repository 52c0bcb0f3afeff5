/** The workbook at a field without a network: every page opens again, with the machine that was on the bench. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { type } from "../support/hands.ts";
import { breaches, figures, ready, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe("without a network", () => {
  it("opens the page again, and one that was never visited, with the same machine", async () => {
    const open = await visit(browser, "/", { serviceWorkers: "allow" });
    const { page } = open;
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await type(page, "gears.pinionTeeth", "15");
    const before = await figures(page);
    await page.context().setOffline(true);
    await page.reload();
    await ready(page);
    expect(await figures(page)).toEqual(before);
    await page.goto(new URL("the-card.html", page.url()).href);
    await ready(page);
    expect(await page.locator('[data-input="gears.pinionTeeth"] input[type=range]').first().inputValue()).toBe("15");
    expect(await breaches(open)).toEqual([]);
  });

  it("still says of a page that isn't there that it isn't", async () => {
    const { page } = await visit(browser, "/", { serviceWorkers: "allow" });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.context().setOffline(true);
    await expect(page.goto(new URL("no-such-page.html", page.url()).href)).rejects.toThrow();
  });
});
