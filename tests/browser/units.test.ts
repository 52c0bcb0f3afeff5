/** The reader's units: chosen in the menu, taken up at once by all that is read, and by nothing that programs read. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, emptyWords, ready, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const choose = async (page: Page, system: "metric" | "imperial") => {
  await page.getByRole("banner").getByText("more", { exact: true }).click();
  await page.getByRole("radio", { name: system, exact: true }).check();
  await page.keyboard.press("Escape");
  await settled(page);
};

const readByPrograms = (page: Page) =>
  page
    .locator("output[data-quantity]")
    .evaluateAll((all) =>
      all.map((each) => `${each.dataset.quantity} ${each.dataset.mode} ${each.dataset.value} ${each.dataset.unit}`),
    );

/** What the prose and the plots say in units that are metric alone; exercises state their own units. */
const metric = (page: Page) =>
  page.evaluate(() => {
    const parts = [...document.querySelectorAll<HTMLElement>(".prose > *:not(.teacher), .head, .parts")].filter(
      (each) => !each.querySelector(".exercise, .estimate, input.exact") && !each.matches(".exercise"),
    );
    const text = parts.map((each) => each.innerText.replaceAll("\u00a0", " ")).join("\n");
    return [...text.matchAll(/[^\n]{0,30}\d (?:m|mm|kg|g|N|J|m\/s|°C|kg\/m³)(?![\w/Ω])/g)].map(([found]) => found);
  });

describe("the reader's units", () => {
  it("are taken up at once by text, plots and captions, and change nothing that programs read", async () => {
    const open = await visit(browser, "/the-tip-of-the-blade.html");
    const { page } = open;
    const before = await readByPrograms(page);
    const unitOf = (name: string) => page.locator(`figure[data-plot="${name}"] .plot-title .unit`).textContent();
    const plots = await page
      .locator("figure[data-plot]")
      .evaluateAll((all) => all.map((each) => each.dataset.plot ?? ""));
    const units = async () => Promise.all(plots.map(unitOf));
    const metricUnits = await units();
    expect((await metric(page)).length).toBeGreaterThan(3);
    await choose(page, "imperial");
    await expect.poll(() => page.locator('output[data-quantity="tip-speed"]').first().textContent()).toMatch(/mph$/);
    await expect.poll(() => page.locator('output[data-quantity="blade-pull"]').first().textContent()).toMatch(/lbf$/);
    expect(await units()).not.toEqual(metricUnits);
    expect((await units()).join()).toContain("ft lbf");
    expect(await readByPrograms(page)).toEqual(before);
    expect(await emptyWords(page)).toBeNull();
    await page.reload();
    await ready(page);
    await expect.poll(() => metric(page)).toEqual([]);
    await choose(page, "metric");
    await expect.poll(() => page.locator('output[data-quantity="tip-speed"]').first().textContent()).toMatch(/m\/s$/);
    expect(await units()).toEqual(metricUnits);
    expect(await breaches(open)).toEqual([]);
  });

  it.each([
    "/",
    "/what-the-rotor-asks.html",
    "/room-at-the-top-in-motion.html",
    "/before-you-buy.html",
    "/what-a-pack-gives.html",
    "/learning-run.html",
    "/learn-it-again.html",
    "/how-far-to-trust.html",
  ])("leave no metric figure in the text of %s", async (path) => {
    const { page } = await visit(browser, path);
    await choose(page, "imperial");
    await expect.poll(() => metric(page)).toEqual([]);
  });
});
