/** Opens pages of the built site in Chromium and notes everything that a good page doesn't do. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { inject, onTestFinished } from "vitest";
import { filesIn } from "./site.ts";

/** A page that stands open, and what has gone wrong on it so far. */
export interface Visit {
  readonly page: Page;
  /** Errors, breaches of the content security policy, requests that failed or went to another host: in words. */
  readonly faults: string[];
}

declare global {
  interface Window {
    watched: { shift: number; breaches: string[] };
  }
}

export const desktop = { width: 1280, height: 900 };
export const phone = { width: 360, height: 740 };

/** The addresses of all pages, the first page first. */
export function pages(): string[] {
  return filesIn(inject("site"), ".html").map((file) => `/${file.replace(/(^|\/)index\.html$/, "$1")}`);
}

/** Runs in the page before its own scripts. */
function watch(): void {
  const watched = { shift: 0, breaches: [] as string[] };
  window.watched = watched;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean })[]) {
      if (!entry.hadRecentInput) watched.shift += entry.value;
    }
  }).observe({ type: "layout-shift", buffered: true });
  document.addEventListener("securitypolicyviolation", (event) => {
    watched.breaches.push(`${event.effectiveDirective} forbids ${event.blockedURI}`);
  });
}

/** Opens a page in a context of its own (nothing stored) and waits until it answers. It closes with the test. */
export async function visit(browser: Browser, path = "/", options: BrowserContextOptions = {}): Promise<Visit> {
  const context = await browser.newContext({ viewport: desktop, ...options });
  onTestFinished(() => context.close());
  context.setDefaultTimeout(10_000);
  // Keeping the whole site for later would slow each of some hundred visits; one test asks for it.
  if (options.serviceWorkers !== "allow") {
    await context.addInitScript(() =>
      Object.defineProperty(Navigator.prototype, "serviceWorker", { value: undefined }),
    );
  }
  const page = await context.newPage();
  const faults: string[] = [];
  const origin = inject("origin");
  page.on("console", (message) => {
    const { url } = message.location();
    if (["error", "warning"].includes(message.type())) faults.push(`${message.type()}: ${message.text()} ${url}`);
  });
  page.on("pageerror", (error) => faults.push(`error: ${error.message}`));
  page.on("request", (request) => {
    if (!request.url().startsWith(`${origin}/`) && !/^(data|blob):/.test(request.url())) {
      faults.push(`asked another host: ${request.url()}`);
    }
  });
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`);
  });
  await page.addInitScript(watch);
  await page.goto(path.startsWith("http") ? path : origin + path);
  if (options.javaScriptEnabled !== false) await ready(page);
  return { page, faults };
}

/** Waits until the page's cells have run and the fonts are there. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset.live === "true");
  await page.evaluate(async () => void (await document.fonts.ready));
}

/** What every open page must have kept to. */
export async function breaches(visit: Visit): Promise<string[]> {
  const watched = await visit.page.evaluate(() => window.watched);
  return [...visit.faults, ...watched.breaches];
}

/** Waits for two frames: until what the last event changed is on the screen. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** Words that must never stand on a page in place of a figure; null when there are none. */
export async function emptyWords(page: Page): Promise<string | null> {
  const text = await page.evaluate(
    () => document.body.innerText + [...document.querySelectorAll("svg")].map((s) => s.textContent).join(" "),
  );
  const found = /.{0,40}\b(NaN|Infinity|undefined|null|\[object \w+\])\b.{0,40}/.exec(text);
  return found?.[0] ?? null;
}

/** The figures on a page by name, mode and machine. */
export async function figures(page: Page): Promise<Record<string, string>> {
  return page.evaluate(() =>
    Object.fromEntries(
      [...document.querySelectorAll<HTMLOutputElement>("output[data-quantity]")].map((output) => {
        const { quantity, mode, machine, value } = output.dataset;
        return [[quantity, mode, machine].filter((part) => part !== undefined).join(" "), value ?? ""];
      }),
    ),
  );
}

const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** What the accessibility rules find, as `rule: element`. */
export async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Axe = {
      run(): Promise<{ violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[] }>;
    };
    const { violations } = await (window as unknown as { axe: Axe }).axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(" ")}`));
  });
}
