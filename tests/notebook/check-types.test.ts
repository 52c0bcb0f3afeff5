import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it, onTestFinished } from "vitest";
import { checkTypes } from "../../src/notebook/check-types.ts";
import { fenced, head } from "./notebook.ts";

const project = new URL("../../", import.meta.url).pathname;

/** Checks a program of one notebook and one file beside it. */
function check(body: string, other = "export const one = 1;"): string[] {
  mkdirSync(join(project, ".cache"), { recursive: true });
  const root = mkdtempSync(join(project, ".cache/types-"));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  const folder = join(root, "notebooks");
  mkdirSync(folder);
  mkdirSync(join(root, "src"));
  writeFileSync(join(root, "tsconfig.json"), '{ "extends": "../../tsconfig.json", "include": ["src"] }');
  writeFileSync(join(folder, "01-test.md"), head + body);
  writeFileSync(join(root, "src/given.ts"), "export interface Given { machine: { speed: number } }");
  writeFileSync(join(root, "src/other.ts"), other);
  return checkTypes({ root, folder, include: ["src"], given: "../src/given.ts", names: ["machine"] });
}

it("finds an error at its line and column in the Markdown file, in a cell and in a value", () => {
  const body = `Prose über {= machine.sped } that\n\n${fenced("const a: number = 1;\n  const b: string = a;\nb.length;")}`;
  expect(check(body)).toEqual([
    expect.stringMatching(/^notebooks\/01-test\.md:6:23: error TS2551: Property 'sped' does not exist .*'speed'/),
    expect.stringMatching(
      /^notebooks\/01-test\.md:10:9: error TS2322: Type 'number' is not assignable to type 'string'/,
    ),
  ]);
}, 60_000);

it("has nothing to say about a good notebook, whatever the order of its cells", () => {
  expect(
    check(
      `{= later + machine.speed }\n\n${fenced("const later = K.one + first;", "class K { static one = 1; }", "const first = 1;")}`,
    ),
  ).toEqual([]);
}, 60_000);

it("finds what is imported and not used, and errors of the program beside", () => {
  expect(check(fenced('import { one } from "../src/other.ts";'), "export const one: string = 1;")).toEqual([
    expect.stringMatching(/^notebooks\/01-test\.md:7:10: error TS6133: 'one'/),
    expect.stringMatching(/^src\/other\.ts:1:14: error TS2322/),
  ]);
}, 60_000);
