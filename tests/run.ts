/**
 * Runs every check of the project, one stage after the other, and goes on after a failing one. The last line is
 * 'N passed, N failed'. Types, lint, unused exports and the build count as one test each.
 */
import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { findOrInstallChromium, howToInstall } from "./support/chromium.ts";
import { type Count, countReport, type Report } from "./support/count.ts";

interface Stage {
  readonly name: string;
  run(): Promise<Count>;
}

const root = new URL("..", import.meta.url);
const scratch = new URL("../.cache/tests/", import.meta.url);
// Of this run alone, so that two runs in one folder don't take each other's site away.
const site = new URL(`../.cache/site-${process.pid}/`, import.meta.url).pathname;
// Once the site stands, the browser tests take it as it is; without it they build their own.
let built = false;
// The whole run is given up after 40 minutes, so that a hanging browser is reported rather than waited for.
const deadline = Date.now() + 40 * 60_000;

/** Runs a command from the project's root; its output is kept, to be shown when it fails. */
function command(program: string, args: string[]): Promise<{ ok: boolean; output: string }> {
  return new Promise((resolve) => {
    const env = { ...process.env, FORCE_COLOR: "0", NO_COLOR: "1", ...(built ? { SITE: site } : {}) };
    const child = spawn(program, args, { cwd: root, env, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    const timer = setTimeout(
      () => {
        output += "\nGiven up: the time for the whole run is over.";
        child.kill("SIGKILL");
      },
      Math.max(0, deadline - Date.now()),
    );
    child.stdout.on("data", (data) => (output += data));
    child.stderr.on("data", (data) => (output += data));
    child.on("error", (error) => (output += error.message));
    child.on("close", (code) => {
      clearTimeout(timer);
      resolve({ ok: code === 0, output });
    });
  });
}

/** A stage that is one command and counts as one test. */
const check = (name: string, program: string, args: string[]): Stage => ({
  name,
  async run() {
    const { ok, output } = await command(program, args);
    return { passed: ok ? 1 : 0, failed: ok ? 0 : 1, output };
  },
});

/** A stage that is one Vitest project: each of its tests counts. */
const project = (name: string): Stage => ({
  name,
  async run() {
    const file = new URL(`${name}.json`, scratch);
    rmSync(file, { force: true });
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file.pathname}`];
    const { ok, output } = await command("npx", ["vitest", "run", "--project", name, ...reporters]);
    let report: Report | null = null;
    try {
      report = JSON.parse(readFileSync(file, "utf8"));
    } catch {
      // No report: the project could not even start, which counts as a failure.
    }
    return countReport(report, ok, output);
  },
});

const build: Stage = {
  name: "build",
  async run() {
    const args = ["vite", "build", "--logLevel", "warn", "--emptyOutDir", "--outDir", site];
    const count = await check("build", "npx", args).run();
    built = count.failed === 0;
    return count;
  },
};

const browser: Stage = {
  name: "browser",
  async run() {
    if (!findOrInstallChromium(console.log)) return { passed: 0, failed: 1, output: howToInstall };
    return project("browser").run();
  },
};

const stages: Stage[] = [
  check("types", "npm", ["run", "-s", "types"]),
  check("lint", "npx", ["biome", "check", "--error-on-warnings"]),
  check("unused exports", "npx", ["knip", "--no-progress", "--treat-config-hints-as-errors"]),
  project("structure"),
  project("unit"),
  project("dom"),
  build,
  browser,
];

// `npm test -- unit dom` runs those stages alone.
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !stages.some((stage) => stage.name.startsWith(name)));
if (unknown.length > 0)
  console.log(`There is no stage ${unknown.join(", ")}: ${stages.map((s) => s.name).join(", ")}.`);

mkdirSync(scratch, { recursive: true });
let passed = 0;
let failed = unknown.length;
for (const stage of stages) {
  if (asked.length > 0 && !asked.some((name) => stage.name.startsWith(name))) continue;
  const start = Date.now();
  const count = await stage.run();
  passed += count.passed;
  failed += count.failed;
  if (count.failed > 0) console.log(`\n${count.output.trim()}\n`);
  const seconds = ((Date.now() - start) / 1000).toFixed(1).padStart(6);
  const verdict = count.failed > 0 ? `${count.failed} failed, ${count.passed} passed` : `${count.passed} passed`;
  console.log(`${stage.name.padEnd(15)} ${seconds} s  ${verdict}`);
}
rmSync(site, { recursive: true, force: true });
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
