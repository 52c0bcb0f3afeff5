/** Measures one page in headless Chromium: what it loads, when it stands, and what a slider's step costs. */
import type { CDPSession, Page } from "playwright-core";
import { launchChromium } from "../support/chromium.ts";
import { installProbe } from "./page-probe.ts";

export interface Load {
  readonly bytes: number;
  readonly requests: number;
  readonly otherHosts: number;
  readonly firstPaint: number;
  readonly drawn: number;
  readonly layoutShift: number;
}

export interface Slide {
  /** Milliseconds from a slider's event to the last figure that follows it, one event at a time, of all sliders. */
  readonly toFigures: number[];
  /** Main-thread milliseconds for one step in a stream of one step a frame, idle frames taken off. */
  readonly busy: number;
  /** Milliseconds between frames during the streams. */
  readonly frames: number[];
}

/** A fresh browser for each measurement: nothing cached, nothing compiled. */
async function withPage<T>(url: string, use: (page: Page, cdp: CDPSession, go: () => Promise<void>) => Promise<T>) {
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 1800 } });
    // The loader of these benchmarks names functions by a helper, which a page doesn't have.
    await page.addInitScript("globalThis.__name = (f) => f");
    await page.addInitScript(installProbe);
    const cdp = await page.context().newCDPSession(page);
    await cdp.send("Network.enable");
    await cdp.send("Performance.enable");
    return await use(page, cdp, async () => {
      await page.goto(url);
      await page.waitForFunction(() => window.probe.drawn !== null, null, { timeout: 60_000 });
      await page.waitForLoadState("networkidle");
    });
  } finally {
    await browser.close();
  }
}

export function load(url: string): Promise<Load> {
  return withPage(url, async (page, cdp, go) => {
    const own = new Set<string>();
    let bytes = 0;
    let otherHosts = 0;
    cdp.on("Network.requestWillBeSent", ({ requestId, request }) => {
      const { origin, protocol } = new URL(request.url);
      if (origin === new URL(url).origin) own.add(requestId);
      else if (protocol !== "data:" && protocol !== "blob:") otherHosts++;
    });
    cdp.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
      if (own.has(requestId)) bytes += encodedDataLength;
    });
    await go();
    const { firstPaint, drawn, layoutShift } = await page.evaluate(() => ({
      firstPaint: window.probe.firstPaint ?? 0,
      drawn: window.probe.drawn ?? 0,
      layoutShift: window.probe.layoutShift,
    }));
    return { bytes, requests: own.size, otherHosts, firstPaint, drawn, layoutShift };
  });
}

async function busyMs(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send("Performance.getMetrics");
  return (metrics.find((metric) => metric.name === "TaskDuration")?.value ?? 0) * 1000;
}

/** Moves each slider in turn; `slowdown` throttles the processor as often. */
export function slide(url: string, sliders: readonly string[], slowdown: number): Promise<Slide> {
  const [steps, events] = slowdown > 1 ? [6, 60] : [12, 120];
  return withPage(url, async (page, cdp, go) => {
    await go();
    if (slowdown > 1) await cdp.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
    const toFigures: number[] = [];
    for (const slider of sliders) {
      toFigures.push(...(await page.evaluate(([s, n]) => window.probe.step(s, n), [slider, steps] as const)));
    }
    const before = await busyMs(cdp);
    await page.evaluate(() => window.probe.rest(60));
    const idle = ((await busyMs(cdp)) - before) / 60;
    const frames: number[] = [];
    const start = await busyMs(cdp);
    for (const slider of sliders) {
      frames.push(...(await page.evaluate(([s, n]) => window.probe.stream(s, n), [slider, events] as const)));
    }
    const busy = ((await busyMs(cdp)) - start) / (sliders.length * events) - idle;
    return { toFigures, busy, frames };
  });
}
