import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, pages, visit } from "../support/page.ts";
import { pdfPages } from "../support/site.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const gears = (): string => pages().find((path) => path.includes("two-gears")) ?? "";

/** Opens a page and asks for its handout or key; the browser's own dialogue stays away. */
async function sheet(words: string) {
  const open = await visit(browser, gears());
  const { page } = open;
  await page.evaluate(() => {
    window.print = () => document.documentElement.setAttribute("data-printed", "true");
  });
  await page.locator("details.teacher > summary").click();
  await page.getByRole("button", { name: words }).click();
  await page.waitForSelector("html[data-printed]");
  return open;
}

async function printed(page: Page): Promise<string> {
  await page.emulateMedia({ media: "print" });
  return page.locator("body").innerText();
}

describe("a page's handout", () => {
  it.each(["A4", "Letter"])("prints alone, on a few pages of %s", async (format) => {
    const open = await sheet("print a handout");
    const count = pdfPages(await open.page.pdf({ format }));
    expect(count).toBeGreaterThan(1);
    expect(count).toBeLessThanOrEqual(5);
    expect(await breaches(open)).toEqual([]);
  });

  it("asks, leaves room, shows the plots, and gives no answer away", async () => {
    const { page } = await sheet("print a handout");
    const live = await page.locator("main figure svg[role=img]").count();
    const words = await printed(page);
    expect(words).toContain("How far must the motor move");
    expect(words).toContain("Name");
    expect(words).not.toMatch(/The model says|Right:|In flight a bigger pinion costs/);
    expect(await page.locator("header:visible, nav:visible, input:visible, button:visible").count()).toBe(0);
    expect(await page.locator(".sheet figure svg[role=img]:visible").count()).toBe(live);
    expect(await page.locator(".sheet ol > li .ruled p").count()).toBeGreaterThan(6);
    const ids = await page.evaluate(() => [...document.querySelectorAll("[id]")].map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("goes when it is printed, and the page stands as before", async () => {
    const { page } = await sheet("print a handout");
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    expect(await page.locator(".sheet").count()).toBe(0);
    expect(await page.locator("main").isVisible()).toBe(true);
  });
});

describe("its key", () => {
  it("has the answers to the very same numbers, and the teacher's words", async () => {
    const { page } = await sheet("print a handout");
    const asked = await page.locator(".sheet ol .sheet-ask").allTextContents();
    await page.evaluate(() => delete document.documentElement.dataset.printed);
    await page.getByRole("button", { name: "print the key" }).click();
    await page.waitForSelector("html[data-printed]");
    expect(await page.locator(".sheet").count()).toBe(1);
    expect(await page.locator(".sheet ol .sheet-ask").allTextContents()).toEqual(asked);
    const words = await printed(page);
    expect(words).toMatch(/The model says [\d.]+\s?mm/);
    expect(words).toContain("Ask the room");
    expect(await page.locator(".sheet ol math:visible").count()).toBeGreaterThan(2);
    expect(await page.locator(".sheet .ruled").count()).toBe(0);
  });
});

describe("a starting link", () => {
  it("opens from the fold with its code, dark on white in the dark too", async () => {
    const open = await visit(browser, gears(), { colorScheme: "dark" });
    const { page } = open;
    await page.locator("details.teacher > summary").click();
    await page.getByRole("button", { name: "starting link" }).click();
    await page.waitForSelector(".qr-dark[d^=M]");
    const fills = await page.evaluate(() =>
      [".qr-ground", ".qr-dark"].map((part) => getComputedStyle(document.querySelector(part)!).fill),
    );
    expect(fills).toEqual(["rgb(255, 255, 255)", "rgb(0, 0, 0)"]);
    expect(await page.locator(".start-note").innerText()).toContain("phone can't reach it");
    const link = await page.locator(".start-link .copy").inputValue();
    await page.locator(".start-link input[type=number]").fill("23");
    await page.locator(".start-link input[type=number]").press("Enter");
    const other = await page.locator(".start-link .copy").inputValue();
    expect(other).not.toBe(link);
    const first = await page.locator(".exercises legend").first().innerText();
    const phone = await visit(browser, other);
    expect(await phone.page.locator(".exercises legend").first().innerText()).toBe(first);
    expect(await breaches(open)).toEqual([]);
  });
});
