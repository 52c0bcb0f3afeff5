import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { barriers, breaches, desktop, emptyWords, figures, pages, phone, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Answers every question, opens how the first figure came about, the parts, and every fold. */
async function openEverything(page: Page): Promise<void> {
  const shows = page.getByRole("button", { name: "show me" });
  for (let left = await shows.count(); left > 0; left--) await shows.first().click();
  const figure = page.locator("main button:has(> output[data-quantity])");
  if (await figure.count()) await figure.first().click();
  const bar = page.locator(".parts-bar:visible");
  if (await bar.count()) await bar.click();
  await page.locator("details").evaluateAll((folds) => {
    for (const fold of folds as HTMLDetailsElement[]) fold.open = true;
  });
  await page.waitForLoadState("networkidle");
  await settled(page);
}

describe.each(pages())("%s", (path) => {
  it("opens without an error, a breach of its policy, a request elsewhere or a shift of its layout", async () => {
    const open = await visit(browser, path);
    await open.page.waitForLoadState("networkidle");
    expect(await breaches(open)).toEqual([]);
    expect(await open.page.evaluate(() => window.watched.shift)).toBeLessThan(0.001);
  });

  it("shows figures with units, and no empty words", async () => {
    const open = await visit(browser, path);
    const bare = await open.page.evaluate(() =>
      [...document.querySelectorAll<HTMLOutputElement>("output[data-quantity]")]
        .filter(
          ({ dataset: d }) =>
            !d.unit ||
            d.value === undefined ||
            (d.value !== "" && d.unit !== "text" && !Number.isFinite(Number(d.value))),
        )
        .map((output) => output.outerHTML),
    );
    expect(bare).toEqual([]);
    expect(Object.keys(await figures(open.page)).length).toBeGreaterThan(0);
    expect(await emptyWords(open.page)).toBeNull();
  });

  it("has a title, one main heading and a summary and a table for each plot", async () => {
    const open = await visit(browser, path);
    expect(await open.page.title()).not.toBe("");
    expect(await open.page.locator("h1").count()).toBe(1);
    for (const plot of await open.page.locator("figure[data-plot]").all()) {
      expect((await plot.locator("figcaption").innerText()).length).toBeGreaterThan(20);
      expect(await plot.locator("details").count(), `table of ${await plot.getAttribute("data-plot")}`).toBeGreaterThan(
        0,
      );
      // A plot is drawn when it comes into sight, and the place of its table with it: a click may just miss that.
      const table = plot.locator("details").last();
      const rows = async () => {
        if ((await table.getAttribute("open")) === null) await table.locator("> summary").click();
        return plot.locator("table tr").count();
      };
      await expect.poll(rows, { timeout: 10_000 }).toBeGreaterThan(2);
    }
    expect(await emptyWords(open.page)).toBeNull();
  });

  it.each([
    ["desktop", "light", desktop],
    ["desktop", "dark", desktop],
    ["phone", "light", phone],
    ["phone", "dark", phone],
  ] as const)(
    "puts up no barrier on a %s in %s colours, and doesn't scroll sideways",
    async (_, colorScheme, viewport) => {
      const open = await visit(browser, path, { colorScheme, viewport });
      expect(await barriers(open.page)).toEqual([]);
      const beyond = await open.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(beyond).toBeLessThanOrEqual(0);
    },
  );

  it.each([
    ["desktop", desktop],
    ["phone", phone],
  ] as const)("puts up no barrier on a %s with everything open", async (_, viewport) => {
    const open = await visit(browser, path, { viewport });
    await openEverything(open.page);
    expect(await barriers(open.page)).toEqual([]);
    const beyond = await open.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect(await emptyWords(open.page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("gives its prose before any script has run", async () => {
    const open = await visit(browser, path, { javaScriptEnabled: false });
    const text = await open.page.locator("main").innerText();
    expect(text.split(/\s+/).length).toBeGreaterThan(120);
  });
});
