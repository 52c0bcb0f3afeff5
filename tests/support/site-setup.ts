/** Before the browser tests: builds the site once, unless SITE names one that stands already, and serves it. */
import { spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import type { TestProject } from "vitest/node";
import { serve } from "./serve.ts";

declare module "vitest" {
  interface ProvidedContext {
    origin: string;
    site: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const site = process.env.SITE ?? new URL(`../../.cache/site-${process.pid}/`, import.meta.url).pathname;
  if (!process.env.SITE) {
    const args = ["vite", "build", "--logLevel", "warn", "--emptyOutDir", "--outDir", site];
    // The site as it ships: the test runner's own mode would leave out what only a built site has.
    const done = spawnSync("npx", args, { encoding: "utf8", env: { ...process.env, NODE_ENV: "production" } });
    if (done.status !== 0) throw new Error(`The site could not be built.\n${done.stdout}${done.stderr}`);
  }
  const server = await serve(site, 4);
  project.provide("origin", server.origin);
  project.provide("site", site);
  return async () => {
    await server.close();
    if (!process.env.SITE) rmSync(site, { recursive: true, force: true });
  };
}
