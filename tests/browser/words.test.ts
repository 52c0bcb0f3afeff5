import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, figures, pages, ready, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const pageOf = (name: string): string => pages().find((path) => path.includes(name)) ?? "";

describe("the first use of a word", () => {
  it("leads to what it means, with the reader's own number beside it", async () => {
    const open = await visit(browser, "/");
    const { page } = open;
    const own = (await figures(page))["learned-head-speed"];
    const link = page.locator("a.term", { hasText: /^reference$/ });
    expect(await link.count()).toBe(1);
    await link.click();
    await ready(page);
    expect(new URL(page.url()).hash).toBe("#reference");
    const entry = page.locator("#reference");
    await expect.poll(() => entry.evaluate((e) => e.getBoundingClientRect().top < innerHeight)).toBe(true);
    expect(await entry.locator('[data-quantity="learned-head-speed"]').getAttribute("data-value")).toBe(own);
    expect(await breaches(open)).toEqual([]);
  });

  it("leads to a word that is there, on every page", async () => {
    const { page } = await visit(browser, pageOf("words"));
    const ids = new Set(await page.locator("section.word").evaluateAll((all) => all.map(({ id }) => id)));
    const origin = new URL(page.url()).origin;
    let count = 0;
    for (const path of pages()) {
      const html = await (await page.request.get(origin + path)).text();
      for (const [, id] of html.matchAll(/<a class="term" href="[^"#]*#([^"]*)"/g)) {
        count++;
        expect([path, id, ids.has(id ?? "")]).toEqual([path, id, true]);
      }
    }
    expect(count).toBeGreaterThan(60);
  });
});

describe("the page of words", () => {
  it("narrows while somebody types", async () => {
    const { page } = await visit(browser, pageOf("words"));
    const all = await page.locator("section.word:visible").count();
    await page.locator(".word-finder input").fill("pinion");
    const few = await page.locator("section.word:visible").count();
    expect(few).toBeGreaterThan(0);
    expect(few).toBeLessThan(all / 2);
    expect(await page.locator(".word-finder [role=status]").innerText()).toBe(`${few} of ${all} words`);
  });
});

describe("the page for teachers", () => {
  it("plans an evening from the page's own words, and opens its pages", async () => {
    const open = await visit(browser, pageOf("to-teach"));
    const { page } = open;
    await page.locator(".plan-idea select").selectOption({ label: "“Droop means bad gains.”" });
    await expect.poll(() => page.locator(".plan li").count()).toBe(2);
    await page.locator(".plan a", { hasText: "hands" }).first().click();
    await ready(page);
    expect(await page.locator("details.teacher").count()).toBe(1);
    expect(await breaches(open)).toEqual([]);
  });
});
