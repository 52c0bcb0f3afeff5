/** The machine stays: over undo and redo, a reload, a link, a full or forbidden store. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { type, typed } from "../support/hands.ts";
import { breaches, emptyWords, figures, ready, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const press = async (page: Page, name: RegExp): Promise<void> => {
  await page.getByRole("button", { name }).first().click();
  await settled(page);
};

/** The words of messages to the reader that stand on the page. */
const messages = (page: Page): Promise<string> =>
  page.evaluate(() =>
    [...document.querySelectorAll("[role=alert], [role=status]")].map((message) => message.textContent).join(" "),
  );

/** The link that the page gives away: it leads to the same page with the machine in it. */
async function link(page: Page): Promise<string> {
  await press(page, /^share/i);
  return page.locator("[role=status] input[readonly]").inputValue();
}

/** Puts the first demo machine on the bench. */
async function toDemo(page: Page): Promise<void> {
  const demos = page.getByRole("group", { name: /demo/i, includeHidden: true });
  await page.locator("details", { has: demos }).locator("> summary").click();
  await demos.getByRole("button").first().click();
  await settled(page);
}

describe("undo and redo", () => {
  it("go back and forth over every change, and to the demo machine", async () => {
    const open = await visit(browser);
    const { page } = open;
    const demo = await figures(page);
    await type(page, "gears.pinionTeeth", "15");
    const first = await figures(page);
    await type(page, "motor.kvRpmPerVolt", "1300");
    const second = await figures(page);
    expect(second).not.toEqual(first);
    await press(page, /^undo/i);
    expect(await figures(page)).toEqual(first);
    await press(page, /^undo/i);
    expect(await figures(page)).toEqual(demo);
    await press(page, /^redo/i);
    await press(page, /^redo/i);
    expect(await figures(page)).toEqual(second);
    await toDemo(page);
    expect(await figures(page)).toEqual(demo);
    await press(page, /^undo/i);
    expect(await figures(page)).toEqual(second);
    expect(await breaches(open)).toEqual([]);
  });
});

describe("the machine is still there", () => {
  it("after a reload", async () => {
    const { page } = await visit(browser);
    await type(page, "gears.pinionTeeth", "15");
    const before = await figures(page);
    await page.reload();
    await ready(page);
    expect(await typed(page, "gears.pinionTeeth")).toBe(15);
    expect(await figures(page)).toEqual(before);
  });

  it("where a link leads", async () => {
    const { page } = await visit(browser);
    await type(page, "gears.pinionTeeth", "15");
    const before = await figures(page);
    const there = await visit(browser, await link(page));
    expect(await figures(there.page)).toEqual(before);
    expect(await breaches(there)).toEqual([]);
  });

  it("on the next page", async () => {
    const { page } = await visit(browser);
    await type(page, "gears.pinionTeeth", "15");
    await page.locator("a[rel=next]").click();
    await page.waitForURL((url) => url.pathname !== "/");
    await ready(page);
    expect(await typed(page, "gears.pinionTeeth")).toBe(15);
  });
});

describe("a bad link", () => {
  const bad: [kind: string, spoil: (url: string) => string, kept: boolean][] = [
    ["cut short", (url) => url.slice(0, -9), false],
    ["spoilt at its end", (url) => `${url.slice(0, -5)}zzzzz`, true],
    ["cut to nothing", (url) => url.replace(/#m=.*/, "#m=1"), false],
    ["of a later version", (url) => url.replace("#m=1", "#m=9"), false],
    ["alien", (url) => url.replace(/#.*/, "#<img src=x onerror=alert(1)>"), false],
  ];

  it.each(bad)("that is %s says so in words, and the page works", async (_, spoil, kept) => {
    const { page } = await visit(browser);
    const demo = await figures(page);
    await type(page, "gears.pinionTeeth", "15");
    const mine = await figures(page);
    const there = await visit(browser, spoil(await link(page)));
    expect(await messages(there.page)).toMatch(/link/i);
    expect(await figures(there.page)).toEqual(kept ? mine : demo);
    expect(await there.page.locator("img[src=x]").count()).toBe(0);
    await type(there.page, "gears.pinionTeeth", "14");
    expect(await typed(there.page, "gears.pinionTeeth")).toBe(14);
    expect(await emptyWords(there.page)).toBeNull();
    expect(await breaches(there)).toEqual([]);
  });
});

describe("a store", () => {
  const spoil = {
    forbidden: () =>
      Object.defineProperty(window, "localStorage", {
        get() {
          throw new DOMException("The store is forbidden.", "SecurityError");
        },
      }),
    full: () => {
      Storage.prototype.setItem = () => {
        throw new DOMException("The store is full.", "QuotaExceededError");
      };
    },
    "full of rubbish": () => {
      for (const key of Object.keys(localStorage)) localStorage.setItem(key, '{"version":1,"pack":{"cells":');
    },
  };

  it.each(Object.entries(spoil))("that is %s is told in words, and the page works", async (_, script) => {
    const open = await visit(browser);
    await type(open.page, "gears.pinionTeeth", "15");
    await open.page.reload();
    await ready(open.page);
    await open.page.addInitScript(script);
    await open.page.reload();
    await ready(open.page);
    await type(open.page, "gears.pinionTeeth", "14");
    expect(await typed(open.page, "gears.pinionTeeth")).toBe(14);
    // The page keeps things a moment after a change; the words come then at the latest.
    await open.page.locator("[role=alert] .message").first().waitFor();
    expect((await messages(open.page)).length).toBeGreaterThan(20);
    expect(await emptyWords(open.page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });
});
