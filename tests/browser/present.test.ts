/** The presenting view on a projector: one thing at a time, led by keys, live, and gone without a trace. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { barriers, breaches, emptyWords, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const projector = { width: 1280, height: 720 };

/** What is on the stage, and whether it lies within the screen. */
const stage = (page: Page) =>
  page.evaluate(() => {
    const parts = [...document.querySelectorAll<HTMLElement>(".on-stage")];
    const boxes = parts.map((part) => part.getBoundingClientRect());
    return {
      at: Number(document.body.dataset.presenting ?? 0),
      asked: new URLSearchParams(location.search).get("present"),
      plots: parts.filter((part) => part.querySelector("figure[data-plot]")).length,
      guesses: parts.filter((part) => part.querySelector(".guess")).length,
      summary: parts.some((part) => part.id === "in-three-lines"),
      fits: boxes.every((box) => box.top >= 0 && box.bottom <= innerHeight && box.left >= 0 && box.right <= innerWidth),
      type: Math.min(
        ...parts.map(
          (part) =>
            Number.parseFloat(getComputedStyle(part).fontSize) * Number(part.closest<HTMLElement>(".page")?.style.zoom),
        ),
      ),
      focused: parts.some((part) => part === document.activeElement),
      chrome: [...document.querySelectorAll(".top, .side, .turn a[rel=prev]")].some(
        (e) => e.getClientRects().length > 0,
      ),
    };
  });

/** Presses a key and waits until the plots of the next stage have their size. */
async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await settled(page);
  await settled(page);
}

async function presented(path: string, viewport = projector, scheme: "light" | "dark" = "light") {
  const open = await visit(browser, path, { viewport, colorScheme: scheme, reducedMotion: "reduce" });
  await open.page.locator("body[data-presenting]").waitFor();
  await settled(open.page);
  await settled(open.page);
  return open;
}

describe.each(["/?present", "/room-at-the-top.html?present"])("%s", (path) => {
  it("goes through question, guesses, plots and summary, each within the screen and in large type", async () => {
    const open = await presented(path);
    const { page } = open;
    const seen: Awaited<ReturnType<typeof stage>>[] = [];
    for (let i = 0; i < 60; i++) {
      const now = await stage(page);
      expect(now.asked).toBe(i === 0 ? "1" : String(now.at));
      expect([now.fits, now.chrome], `stage ${now.at}`).toEqual([true, false]);
      expect(now.focused).toBe(true);
      expect(now.type).toBeGreaterThan(20);
      seen.push(now);
      if (await page.locator(".turn.on-stage").count()) break;
      await press(page, "PageDown");
    }
    const count = (key: "plots" | "guesses") => new Set(seen.filter((each) => each[key] > 0).map(({ at }) => at)).size;
    expect(count("guesses")).toBe(2);
    expect(count("plots")).toBeGreaterThanOrEqual(1);
    expect(seen.some(({ summary }) => summary)).toBe(true);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
    await page.keyboard.press("PageDown");
    await page.waitForURL((url) => url.pathname !== new URL(path, url).pathname && url.searchParams.has("present"));
  });

  it("fits a larger projector, in the dark", async () => {
    const { page } = await presented(path, { width: 1920, height: 1080 }, "dark");
    for (let i = 0; i < 8; i++) {
      const now = await stage(page);
      expect(now.fits, `stage ${now.at}`).toBe(true);
      expect(now.type).toBeGreaterThan(30);
      await press(page, "ArrowRight");
    }
  });
});

describe("while a page is presented", () => {
  it("its plots answer to the hand, and the machine of a link is there", async () => {
    const first = await visit(browser, "/room-at-the-top.html");
    await first.page
      .getByRole("button", { name: /^share/i })
      .first()
      .click();
    const link = await first.page.locator("[role=status] input[readonly]").inputValue();
    const open = await presented(link.replace("#", "?present=1#"));
    const { page } = open;
    while ((await stage(page)).plots === 0) {
      await press(page, "PageDown");
    }
    const mark = page.locator('.on-stage [role="slider"]').first();
    const before = await mark.getAttribute("aria-valuenow");
    const at = await mark.boundingBox();
    await page.mouse.move(at!.x + at!.width / 2, at!.y + at!.height / 2);
    await page.mouse.down();
    await page.mouse.move(at!.x + at!.width / 2 + 60, at!.y + at!.height / 2 + 60, { steps: 6 });
    await page.mouse.up();
    expect(await mark.getAttribute("aria-valuenow")).not.toBe(before);
    expect(await page.locator(".present-ring").isVisible()).toBe(true);
    expect(await breaches(open)).toEqual([]);
  });

  it("starts from the page's foot and leaves with Escape, back where it was shown", async () => {
    const open = await visit(browser, "/room-at-the-top.html", { viewport: projector });
    const { page } = open;
    const plain = await page.evaluate(() => document.body.innerText);
    await page.locator(".foot-does [data-present]").click();
    await page.locator("body[data-presenting]").waitFor();
    await page.keyboard.press("End");
    await page.keyboard.press("PageUp");
    await press(page, "Escape");
    expect(new URL(page.url()).search).toBe("");
    expect(await page.evaluate(() => document.body.innerText)).toBe(plain);
    expect(await page.evaluate(() => scrollY)).toBeGreaterThan(500);
    expect(await breaches(open)).toEqual([]);
  });

  it("puts a guess to the room and draws the answer on it", async () => {
    const open = await presented("/room-at-the-top.html?present=3");
    const { page } = open;
    await page.locator(".present-ask").click();
    expect(await barriers(page)).toEqual([]);
    await page.locator(".room textarea").fill("100 200 <b>x</b> 150");
    await expect.poll(() => page.locator(".room figcaption").textContent()).toContain("3 guesses");
    await page.keyboard.press("PageDown");
    await page.locator(".room [data-level=model] line").waitFor({ state: "attached" });
    await settled(page);
    await settled(page);
    expect((await stage(page)).fits).toBe(true);
    expect(await page.locator(".room b b, .room-left b").count()).toBe(0);
    expect(await breaches(open)).toEqual([]);
  });
});

describe("nobody is kept out", () => {
  it.each([
    ["/?present", "light"],
    ["/room-at-the-top.html?present", "dark"],
    ["/how-far-to-trust.html?present", "light"],
    ["/words.html?present", "dark"],
    ["/to-teach-with-this.html?present", "light"],
  ] as const)("of any stage of %s in %s colours", async (path, scheme) => {
    const open = await presented(path, projector, scheme);
    const { page } = open;
    const found = new Set<string>();
    const seen = new Set<number>();
    for (let i = 0; i < 60; i++) {
      const { at, fits } = await stage(page);
      // The lists of the page for teachers scroll; what is put before a room doesn't.
      if (!path.includes("to-teach")) expect(fits, `stage ${at}`).toBe(true);
      for (const barrier of await barriers(page)) found.add(`stage ${at}: ${barrier}`);
      const [, last] = (await page.locator(".present-count").innerText()).split(" of ");
      seen.add(at);
      if (at === Number(last)) break;
      await press(page, "PageDown");
    }
    expect([...found]).toEqual([]);
    expect(seen.size).toBeGreaterThan(4);
    expect(await breaches(open)).toEqual([]);
  });

  it.each(["light", "dark"] as const)(
    "of the room's guesses, before and after the answer, in %s colours",
    async (scheme) => {
      const open = await presented("/room-at-the-top.html?present=3", projector, scheme);
      const { page } = open;
      await page.locator(".present-ask").click();
      expect(await barriers(page)).toEqual([]);
      await page.locator(".room textarea").fill("100 200 many 150");
      await expect.poll(() => page.locator(".room figcaption").textContent()).toContain("3 guesses");
      expect(await barriers(page)).toEqual([]);
      await page.locator(".room textarea").press("Escape");
      await page.keyboard.press("PageDown");
      await page.locator(".room [data-level=model] line").waitFor({ state: "attached" });
      await settled(page);
      expect(await barriers(page)).toEqual([]);
      // The same panels stand on the page itself, for all of its questions at once.
      const plain = await visit(browser, "/what-the-magnets-change.html", { colorScheme: scheme });
      await plain.page.locator(".teacher > summary").click();
      await plain.page.locator("[data-ask-room]").click();
      expect(await plain.page.locator(".room").count()).toBeGreaterThan(1);
      expect(await barriers(plain.page)).toEqual([]);
    },
  );
});
