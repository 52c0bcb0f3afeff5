import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { drag, type } from "../support/hands.ts";
import { breaches, emptyWords, settled, visit } from "../support/page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe("the plots of the first page", () => {
  it("are three, each with a drawing that fits its words", async () => {
    const { page } = await visit(browser);
    const plots = page.locator("figure[data-plot]");
    expect(await plots.count()).toBeGreaterThanOrEqual(3);
    for (const plot of await plots.all()) {
      const drawn = await plot
        .locator("svg path[d]")
        .evaluateAll((paths) => paths.map((p) => p.getAttribute("d") ?? ""));
      expect(drawn.some((d) => d.length > 20)).toBe(true);
      expect(drawn.filter((d) => /NaN|Infinity|undefined/.test(d))).toEqual([]);
    }
  });

  it("change when an input does, in drawing and in words", async () => {
    const { page } = await visit(browser);
    const state = () =>
      page
        .locator("figure[data-plot]")
        .evaluateAll((plots) =>
          plots.map((plot) => [
            [...plot.querySelectorAll("svg path[d], svg circle")].map((e) => e.outerHTML).join(),
            plot.querySelector("figcaption")?.textContent,
          ]),
        );
    const before = await state();
    await type(page, "gears.pinionTeeth", "15");
    const after = await state();
    expect(after.filter(([drawing], i) => drawing === before[i]?.[0])).toEqual([]);
    expect(after.some(([, words], i) => words !== before[i]?.[1])).toBe(true);
  });

  it("can be taken by their marks, with the mouse and with keys, and the inputs follow", async () => {
    const open = await visit(browser);
    const { page } = open;
    // The inputs within reach, and the figures: a mode's own inputs stand in a section that is folded away.
    const inputs = () =>
      page
        .locator(".parts [data-input] input, output[data-quantity]")
        .evaluateAll((all) =>
          all.map((each) => (each as HTMLInputElement).dataset.value ?? (each as HTMLInputElement).value),
        );
    const marks = page.locator('figure[data-plot] [role="slider"]');
    const count = await marks.count();
    expect(count).toBeGreaterThanOrEqual(3);
    for (let i = 0; i < count; i++) {
      const mark = marks.nth(i);
      const name = await mark.getAttribute("aria-label");
      const now = () => mark.getAttribute("aria-valuenow");
      const [before, was] = [await inputs(), await now()];
      await drag(page, mark, -40, 30);
      // A mark at one end of its way goes the other way only.
      if ((await now()) === was) await drag(page, mark, 40, -30);
      expect(await now(), `dragged: ${name}`).not.toBe(was);
      expect(await inputs(), `dragged: ${name}`).not.toEqual(before);
      const [dragged, held] = [await inputs(), await now()];
      await mark.focus();
      await mark.press("ArrowUp");
      await settled(page);
      if ((await now()) === held) await mark.press("ArrowDown");
      await settled(page);
      expect(await now(), `by key: ${name}`).not.toBe(held);
      expect(await inputs(), `by key: ${name}`).not.toEqual(dragged);
    }
    expect(await emptyWords(page)).toBeNull();
    expect(await breaches(open)).toEqual([]);
  });

  it("let a finger scroll the page over them", async () => {
    const { page } = await visit(browser, "/", { hasTouch: true, viewport: { width: 360, height: 740 } });
    const frame = page.locator("figure[data-plot] .plot-frame").first();
    const action = await frame.evaluate((element) => getComputedStyle(element).touchAction);
    expect(action.split(" ").sort()).toEqual(["pan-y", "pinch-zoom"]);
  });

  it("let a finger drag a mark to the end of its stroke, along or up", async () => {
    const { page } = await visit(browser, "/", {
      hasTouch: true,
      isMobile: true,
      viewport: { width: 390, height: 844 },
    });
    const finger = await page.context().newCDPSession(page);
    for (const [moves, dx, dy] of [
      ["x", -8, 0],
      ["y", 0, 6],
    ] as const) {
      const mark = page.locator(`figure .handle[data-moves=${moves}]`).first();
      await mark.evaluate((element) => element.scrollIntoView({ block: "center" }));
      await settled(page);
      const { x, y, width, height } = (await mark.locator(".target").boundingBox())!;
      const [left, top] = [x + width / 2, y + height / 2];
      await page.evaluate(() => {
        document.body.dataset.heard = "";
        for (const name of ["pointerup", "pointercancel"])
          document.addEventListener(name, () => (document.body.dataset.heard += name), { once: true });
      });
      const touch = (type: "touchStart" | "touchMove" | "touchEnd", at: readonly { x: number; y: number }[]) =>
        finger.send("Input.dispatchTouchEvent", { type, touchPoints: [...at] });
      const before = await mark.getAttribute("aria-valuenow");
      await touch("touchStart", [{ x: left, y: top }]);
      for (let i = 1; i <= 8; i++) await touch("touchMove", [{ x: left + i * dx, y: top + i * dy }]);
      await touch("touchEnd", []);
      await settled(page);
      expect(await page.evaluate(() => document.body.dataset.heard), moves).toBe("pointerup");
      expect(await mark.getAttribute("aria-valuenow"), moves).not.toBe(before);
    }
  });
});
