/** A small site of its own for the tests that build or serve one: the fixture's notebooks and shell, our template. */
import { cpSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type InlineConfig, mergeConfig } from "vite";
import { onTestFinished } from "vitest";
import { notebooks } from "../../src/notebook/plugin.ts";

const project = new URL("../../", import.meta.url).pathname;

/** Copies the site to where it can be changed; it goes when `finished` says so. */
export function copySite(finished: (remove: () => void) => void = onTestFinished): string {
  mkdirSync(join(project, ".cache"), { recursive: true });
  const root = mkdtempSync(join(project, ".cache/site-"));
  cpSync(join(project, "tests/notebook/fixtures/site"), root, { recursive: true });
  cpSync(join(project, "index.html"), join(root, "index.html"));
  finished(() => rmSync(root, { recursive: true, force: true }));
  return root;
}

/** The project's own way to build, for a site that stands elsewhere. */
export async function configFor(root: string): Promise<InlineConfig> {
  const { default: own } = await import("../../vite.config.ts");
  const plugins = notebooks({ shell: "/src/page.ts", given: ["machine", "figures"] });
  const shared = { ...own, plugins, optimizeDeps: {} };
  return mergeConfig(shared, { configFile: false, root, logLevel: "silent", cacheDir: join(root, ".vite") });
}
