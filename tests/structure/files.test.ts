import { readdirSync } from "node:fs";
import { dirname } from "node:path/posix";
import { describe, expect, it } from "vitest";
import { filesBelow, hasRuntime, parse, read, root } from "../support/source.ts";

const limit = 250;

/** Files that are longer for a reason. One that is short again leaves the list. */
const longer: Record<string, string> = {
  "tests/inputs/slider.test.ts": "one input, by slider, box, keys and steps",
};

/** Files of src/model and src/machine that need no test of their own, with the reason. */
const untested: Record<string, string> = {};

/** All that stands at the top level, beside what .gitignore leaves out and the dotfiles that tools require. */
const top = [
  "notebooks",
  "src",
  "tests",
  "public",
  "README.md",
  "DEVELOPERS.md",
  "LICENSE",
  "package.json",
  "package-lock.json",
  "tsconfig.json",
  "index.html",
  "vite.config.ts",
  "vitest.config.ts",
  "biome.json",
  ".ci",
  ".git",
  ".gitignore",
];

const lines = (path: string): number => read(path).trimEnd().split("\n").length;

describe("files", () => {
  const texts = ["src", "tests", "notebooks"]
    .flatMap((folder) => filesBelow(folder))
    .filter((path) => /\.(ts|css|md|mjs|js|html)$/.test(path));

  it(`have at most ${limit} lines, unless a reason is given`, () => {
    expect(texts.length).toBeGreaterThan(0);
    const long = texts.filter((path) => lines(path) > limit && !(path in longer));
    expect(long.map((path) => `${path}: ${lines(path)} lines`)).toEqual([]);
  });

  it("that are listed as longer are", () => {
    expect(Object.keys(longer).filter((path) => !texts.includes(path) || lines(path) <= limit)).toEqual([]);
  });

  it("at the top level are those that the house names", () => {
    const ignored = read(".gitignore")
      .split("\n")
      .map((line) => line.replace(/\/$/, ""));
    const extra = readdirSync(root).filter(
      (name) => !top.includes(name) && !ignored.includes(name) && !name.endsWith(".local"),
    );
    expect(extra).toEqual([]);
  });

  it("of the model and the machine have a test each, in the same place below tests", () => {
    const sources = ["src/model", "src/machine"].flatMap((folder) => filesBelow(folder, ".ts"));
    expect(sources.length).toBeGreaterThan(0);
    const wanted = sources.filter((path) => hasRuntime(parse(path)) && !(path in untested));
    const tests = new Set(filesBelow("tests", ".test.ts"));
    const testOf = (path: string) => path.replace(/^src/, "tests").replace(/\.ts$/, ".test.ts");
    // What a file keeps in a folder of its own name may share its test: link/codes.ts that of link.ts.
    const tested = (path: string) => tests.has(testOf(path)) || tests.has(`${dirname(testOf(path))}.test.ts`);
    expect(wanted.filter((path) => !tested(path))).toEqual([]);
    expect(Object.keys(untested).filter((path) => tested(path) || !sources.includes(path))).toEqual([]);
  });

  it("count as bare of anything to test when they hold types alone", () => {
    expect(hasRuntime(parse("a.ts", 'import type { B } from "./b.ts"; export interface A { b: B }'))).toBe(false);
    expect(hasRuntime(parse("a.ts", "export type A = 1; export const a = 1;"))).toBe(true);
  });
});
