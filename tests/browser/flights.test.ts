/** Flights in a real browser: a collective and a guess drawn with the pointer and with keys, and the words that follow. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { breaches, emptyWords, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const motion = "/room-at-the-top-in-motion.html";
/** Nothing plays: a run is shown to its end at once. */
const still = { reducedMotion: "reduce" } as const;
const figure = (page: Page, id: string) => page.locator(`figure[data-plot="${id}"]`);
const said = async (page: Page, id: string) =>
  (await figure(page, id).locator("figcaption").innerText()).replace(/\s+/g, " ");
const press = (page: Page, id: string, words: string) =>
  figure(page, id).locator("button", { hasText: words }).first().click();

/** Draws along a lane: places as shares of its width and height. */
async function draw(page: Page, id: string, stroke: readonly (readonly [number, number])[]): Promise<void> {
  const sheet = figure(page, id).locator(".sheet");
  await sheet.evaluate((element) => element.scrollIntoView({ block: "center" }));
  const box = (await sheet.boundingBox())!;
  const at = ([x, y]: readonly [number, number]) => [box.x + x * box.width, box.y + y * box.height] as const;
  await page.mouse.move(...at(stroke[0]!));
  await page.mouse.down();
  for (const place of stroke.slice(1)) await page.mouse.move(...at(place), { steps: 6 });
  await page.mouse.up();
}

describe("a collective that the reader draws", () => {
  it("with the pointer: the punch is flown while it is drawn, and told", async () => {
    const open = await visit(browser, motion, still);
    const { page } = open;
    await figure(page, "own-hand").scrollIntoViewIfNeeded();
    await expect.poll(() => said(page, "own-hand")).toMatch(/^Draw the collective/);
    await press(page, "own-hand", "fly it");
    await expect.poll(() => said(page, "own-hand")).toMatch(/^Holds the set speed all through/);
    // To the top after two seconds, and back after four.
    await draw(page, "own-hand", [
      [0.34, 0.02],
      [0.66, 0.02],
    ]);
    await expect.poll(() => said(page, "own-hand")).toMatch(/^Holds for 0\.\d+ s, then sinks by \d+ rpm/);
    expect(await said(page, "own-hand")).toMatch(/until you ease the pitch/);
    expect(await said(page, "own-hand")).toMatch(/The duty stands at its limit for \d/);
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("with keys: the same, and the line of time reads out the moment", async () => {
    const open = await visit(browser, motion, still);
    const { page } = open;
    const pad = figure(page, "own-hand");
    await pad.scrollIntoViewIfNeeded();
    const point = pad.locator('[role="slider"].pencil-point');
    await point.focus();
    for (let i = 0; i < 8; i++) await point.press("ArrowRight");
    for (let i = 0; i < 20; i++) await point.press("Shift+PageUp");
    await expect.poll(() => point.getAttribute("aria-valuetext")).toMatch(/^at 1\.92\ss: 11\.?0?\s?°/);
    await press(page, "own-hand", "fly it");
    await expect.poll(() => said(page, "own-hand")).toMatch(/^Holds for 0\.\d+ s, then sinks by \d+ rpm/);
    const time = pad.locator(".flight-time");
    await time.focus();
    await time.press("Home");
    for (let i = 0; i < 3; i++) await time.press("ArrowRight");
    expect(await time.getAttribute("aria-valuetext")).toMatch(/head speed \d,\d{3}\srpm, duty/);
    expect(await breaches(open)).toEqual([]);
  });
});

describe("a head speed that the reader expects", () => {
  it("is kept in pencil beside the run, and the gap is told", async () => {
    const open = await visit(browser, motion, still);
    const { page } = open;
    await figure(page, "punch").scrollIntoViewIfNeeded();
    await draw(page, "punch", [
      [0.3, 0.9],
      [0.9, 0.9],
    ]);
    await press(page, "punch", "run it");
    await expect.poll(() => said(page, "punch")).toMatch(/Your guess was furthest off at [\d.]+ s, by \d+ rpm\.$/);
    await expect.poll(() => figure(page, "punch").locator("path.pencil").count()).toBeGreaterThan(0);
    expect(await breaches(open)).toEqual([]);
  });
});

describe("a flight that takes long", () => {
  it("is flown by the worker under the strict policy, and then stands there", async () => {
    const open = await visit(browser, motion, still);
    const { page } = open;
    const workers: string[] = [];
    page.on("worker", (worker) => workers.push(worker.url()));
    await figure(page, "pumps").scrollIntoViewIfNeeded();
    await expect.poll(() => said(page, "pumps")).toMatch(/^(Dips by|Holds|Then|That)/);
    // A loop that looks 20,000 times a second is no matter of one frame.
    const link = page.locator('.parts details[data-section="controller"]');
    await link.evaluate((fold) => ((fold as HTMLDetailsElement).open = true));
    const box = page.locator('.parts [data-input="controller.loopHz"] input:not([type=range])');
    await box.fill("20000");
    await box.press("Enter");
    await figure(page, "pumps").scrollIntoViewIfNeeded();
    await expect.poll(() => workers.length, { timeout: 20_000 }).toBeGreaterThan(0);
    await expect.poll(() => figure(page, "pumps").getAttribute("data-busy"), { timeout: 20_000 }).toBeNull();
    expect(await said(page, "pumps")).toMatch(/^(Dips by|Holds)/);
    expect(await breaches(open)).toEqual([]);
  });
});
