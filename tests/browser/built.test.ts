import { readFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { launchChromium } from "../support/chromium.ts";
import { visit } from "../support/page.ts";
import { addresses, filesIn } from "../support/site.ts";

/** Addresses that are names and never fetched, or that a reader may follow, with the reason. */
const harmless: Record<string, string> = {
  "http://www.w3.org/": "names of the namespaces of SVG, MathML and HTML",
};

describe("the built site", () => {
  const site = inject("site");

  it("names no other host in its scripts and styles", () => {
    const files = [".js", ".css"].flatMap((kind) => filesIn(site, kind));
    expect(files.length).toBeGreaterThan(1);
    const found = files.flatMap((file) =>
      addresses(readFileSync(join(site, file), "utf8"), Object.keys(harmless)).map((address) => `${file}: ${address}`),
    );
    expect(found).toEqual([]);
  });

  it("fetches nothing from another host in its markup", () => {
    const pages = filesIn(site, ".html");
    expect(pages.length).toBeGreaterThan(0);
    const fetched = /(?:\bsrc|\bsrcset|<link[^>]*\bhref)\s*=\s*["']?(?:https?:)?\/\/[^\s"'>]*/gi;
    expect(pages.flatMap((file) => readFileSync(join(site, file), "utf8").match(fetched) ?? [])).toEqual([]);
  });

  it("evaluates no text", () => {
    const scripts = filesIn(site, ".js").map((file) => [file, readFileSync(join(site, file), "utf8")] as const);
    expect(scripts.filter(([, text]) => /\bnew Function\b|\beval\(/.test(text)).map(([file]) => file)).toEqual([]);
  });

  it("would be found out if it did", () => {
    const text = 'fetch("https://example.org/a"); const ns = "http://www.w3.org/2000/svg";';
    expect(addresses(text, Object.keys(harmless))).toEqual(["https://example.org/a"]);
  });
});

describe("the first page", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser?.close());

  it("comes with at most 150 kB, packed as a host packs it, fonts included", async () => {
    const { page } = await visit(browser);
    await page.waitForLoadState("networkidle");
    const origin = new URL(page.url()).origin;
    const fetched = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name));
    const files = ["index.html", ...fetched.map((name) => name.replace(`${origin}/`, ""))];
    expect(files.length).toBeGreaterThan(12);
    const weights = files.map((file) => {
      const content = readFileSync(join(inject("site"), file));
      return file.endsWith(".woff2") ? content.length : brotliCompressSync(content).length;
    });
    // What a host says before each file comes on top.
    expect(weights.reduce((sum, weight) => sum + weight + 300, 0)).toBeLessThanOrEqual(150_000);
  });
});
