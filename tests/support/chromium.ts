/** Finds a Chromium on this machine, or installs Debian's. */
import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync, readdirSync } from "node:fs";
import { homedir } from "node:os";
import { delimiter, join } from "node:path";
import { type Browser, chromium } from "playwright-core";

const commands = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const places = [
  "/usr/bin/chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

export const howToInstall =
  "No Chromium was found. Install one (Debian: apt-get install chromium; elsewhere: Chromium or Chrome from its maker, " +
  "or `npx playwright-core install chromium`), or name its program in the variable CHROME.";

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Browsers that playwright itself has downloaded, newest first. */
function downloaded(): string[] {
  const caches = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), ".cache/ms-playwright"),
    join(homedir(), "Library/Caches/ms-playwright"),
  ].filter((path): path is string => path !== undefined && existsSync(path));
  const programs = ["chrome-linux/chrome", "chrome-linux64/chrome", "chrome-mac/Chromium.app/Contents/MacOS/Chromium"];
  return caches.flatMap((cache) =>
    readdirSync(cache)
      .filter((name) => name.startsWith("chromium-"))
      .sort((a, b) => b.localeCompare(a, "en", { numeric: true }))
      .flatMap((name) => programs.map((program) => join(cache, name, program))),
  );
}

/** The path of a Chromium on this machine, or null. */
function findChromium(): string | null {
  const named = process.env.CHROME;
  if (named) return runs(named) ? named : null;
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const candidates = [...commands.flatMap((name) => folders.map((folder) => join(folder, name))), ...places];
  return [...candidates, ...downloaded()].find(runs) ?? null;
}

/** As `findChromium`, but on Debian and as root installs the distribution's own when there is none. */
export function findOrInstallChromium(say: (line: string) => void): string | null {
  const found = findChromium();
  const debian = existsSync("/etc/debian_version") && process.getuid?.() === 0;
  if (found || !debian || process.env.CHROME) return found;
  say("No Chromium here: installing Debian's (apt-get install chromium).");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const order of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
    const done = spawnSync("apt-get", ["-qq", ...order], { env, encoding: "utf8", timeout: 600_000 });
    if (done.status !== 0) say((done.stderr || String(done.error ?? "")).trim());
  }
  return findChromium();
}

/** Starts a headless Chromium that can reach this machine's loopback only. */
export async function launchChromium(): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error(howToInstall);
  return chromium.launch({
    executablePath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
    ],
  });
}
