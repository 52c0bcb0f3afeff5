import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { complaint, reach, type, typed } from "../support/hands.ts";
import { breaches, figures, pages, visit } from "../support/page.ts";
import { pdfPages } from "../support/site.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const pageOf = (name: string): string => {
  const found = pages().find((path) => path.includes(name));
  if (!found) throw new Error(`There is no page ${name} among ${pages().join(", ")}.`);
  return found;
};

describe("the set-up card", () => {
  it.each(["A4", "Letter"])("is one page of %s", async (format) => {
    const { page } = await visit(browser, pageOf("card"));
    expect(pdfPages(await page.pdf({ format, printBackground: true }))).toBe(1);
  });

  it("has room on the smaller sheet for what speaks against a set-up", async () => {
    const { page } = await visit(browser, pageOf("card"));
    await type(page, "modes.0.headRpm", "2900");
    await type(page, "modes.2.headRpm", "3000");
    expect(await page.locator(".card [data-warning]").count()).toBeGreaterThan(3);
    expect(pdfPages(await page.pdf({ format: "Letter", printBackground: true }))).toBe(1);
  });

  it("prints the card and leaves out what only works on a screen", async () => {
    const { page } = await visit(browser, pageOf("card"));
    await page.emulateMedia({ media: "print" });
    const words = await page.locator("body").innerText();
    expect(words).toMatch(/end.?point/i);
    expect(words).toMatch(/blade/i);
    expect(await page.locator("nav:visible, input[type=range]:visible").count()).toBe(0);
  });

  it("would be found out if it took two pages", async () => {
    const { page } = await visit(browser, pageOf("card"));
    await page.evaluate(() => {
      for (let i = 0; i < 2; i++) {
        const sheet = document.createElement("p");
        sheet.textContent = "another page";
        sheet.style.breakBefore = "page";
        document.body.replaceChildren(...document.body.childNodes, sheet);
      }
    });
    expect(pdfPages(await page.pdf({ format: "A4" }))).toBeGreaterThan(1);
  });
});

describe("the modes", () => {
  it("take a head speed and give the throttle, exact, rounded and what that gives", async () => {
    const { page } = await visit(browser, pageOf("card"));
    const before = await figures(page);
    await type(page, "modes.0.headRpm", "1700");
    const after = await figures(page);
    expect(Number(after["throttle 0"])).not.toBe(Number(before["throttle 0"]));
    expect(Number(after["throttle-entered 0"])).toBe(Math.round(Number(after["throttle 0"])));
    const full = Number(after["head-speed-entered 0"]) / (Number(after["throttle-entered 0"]) / 100);
    expect((full * Number(after["throttle 0"])) / 100).toBeCloseTo(1700, 0);
  });

  it("take a throttle and give the head speed", async () => {
    const { page } = await visit(browser, pageOf("card"));
    await type(page, "modes.0.throttle", "70");
    const after = await figures(page);
    expect(Number(after["throttle 0"])).toBeCloseTo(70, 3);
    expect(await typed(page, "modes.0.headRpm")).toBeCloseTo(Number(after["head-speed-entered 0"]), 0);
  });

  it.each(["abc", "", "0", "900"])("don't take '%s' as a throttle and say why", async (text) => {
    const { page } = await visit(browser, pageOf("card"));
    const before = await figures(page);
    await type(page, "modes.0.throttle", text);
    expect(await complaint(page, "modes.0.throttle")).toMatch(/\w+ \w+ \w+/);
    expect(await figures(page)).toEqual(before);
  });
});

describe("a reference", () => {
  it("goes stale with the gears, and the page says what each mode would really do", async () => {
    const open = await visit(browser, pageOf("learn-it-again"));
    const { page } = open;
    await reach(page, "controller.learned.throttlePercent");
    await page.locator("fieldset.learned input[type=radio]").last().check();
    await type(page, "controller.learned.motorRpm", "25000");
    const before = await figures(page);
    expect(before["reference-state"]).toBe("fresh");
    expect(await typed(page, "gears.pinionTeeth")).toBe(13);
    await type(page, "gears.pinionTeeth", "14");
    const after = await figures(page);
    expect(after["reference-state"]).toBe("stale");
    // The controller holds the old motor speed, and 14 teeth in place of 13 turn it into a faster rotor.
    expect(after["learned-motor-speed"]).toBe(before["learned-motor-speed"]);
    for (const mode of [0, 1, 2]) {
      const then = Number(before[`head-speed-entered ${mode}`]);
      expect(Number(after[`stale-head-speed ${mode}`])).toBeCloseTo((then * 14) / 13, 6);
    }
    expect(await page.locator('[data-warning="stale-reference"]').first().innerText()).toMatch(/\d/);
    expect(await breaches(open)).toEqual([]);
  });
});
