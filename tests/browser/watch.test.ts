/** The watch over a page itself: each kind of fault is planted on a good page and must be found. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, emptyWords, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const plants: [fault: string, plant: () => void, found: RegExp][] = [
  ["an error", () => void setTimeout(() => JSON.parse("{")), /JSON/],
  ["words of an error", () => console.error("planted"), /planted/],
  ["a style attribute", () => document.body.setAttribute("style", "color: red"), /style-src/],
  ["a request to another host", () => new Image().setAttribute("src", "http://elsewhere.invalid/a.png"), /elsewhere/],
  ["a missing file", () => new Image().setAttribute("src", "/missing.png"), /404/],
];

describe("a fault on a page", () => {
  it.each(plants)("is found: %s", async (_, plant, found) => {
    const open = await visit(browser);
    expect(await breaches(open)).toEqual([]);
    await open.page.evaluate(plant);
    await expect.poll(async () => (await breaches(open)).join("\n")).toMatch(found);
  });

  it("is found: a shift of the layout", async () => {
    const { page } = await visit(browser);
    await page.evaluate(() => {
      const block = document.createElement("p");
      block.textContent = "planted";
      block.style.height = "300px";
      document.querySelector("main")?.before(block);
    });
    await settled(page);
    await expect.poll(() => page.evaluate(() => window.watched.shift)).toBeGreaterThan(0.01);
  });

  it("is found: words for a figure that isn't there", async () => {
    const { page } = await visit(browser);
    expect(await emptyWords(page)).toBeNull();
    await page.evaluate(() => document.querySelector("main")?.append("It gives NaN rpm."));
    expect(await emptyWords(page)).toMatch(/NaN/);
  });
});
