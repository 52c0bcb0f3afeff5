/**
 * `npm run -s types`: checks the whole program and the notebooks in one run of the TypeScript compiler. A notebook goes
 * in as the same text with its prose blanked out, so that each error has its true line and column in the Markdown file.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join, relative, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { blank } from "./blank.ts";
import { givenNames } from "./given.ts";
import { notebookFiles } from "./pages.ts";
import { split } from "./split.ts";

export interface TypeCheck {
  readonly root: string;
  /** The notebooks' folder. */
  readonly folder: string;
  /** What is checked besides, from the root: files and folders. */
  readonly include: readonly string[];
  /** The module whose type `Given` says what every notebook gets, as a notebook imports it. */
  readonly given: string;
  readonly names: readonly string[];
}

/** Errors that come from reading cells as one module: there the order on the page would matter, here it doesn't. */
const ofOrder = /error TS(?:2448|2449|2450|2454):/;

/** Gives the errors, each beginning with `file:line:column`. */
export function checkTypes({ root, folder, include, given, names }: TypeCheck): string[] {
  const blanked = join(root, ".notebooks");
  rmSync(blanked, { recursive: true, force: true });
  mkdirSync(blanked, { recursive: true });
  for (const file of notebookFiles(folder)) {
    const text = readFileSync(file, "utf8");
    const declared = names.map((name) => `export declare const ${name}: import("${given}").Given["${name}"];\n`);
    // What is given stands behind the notebook's own text, so that no line of that moves.
    const code = `${blank(split(text))}\n${declared.join("")}`;
    writeFileSync(join(blanked, basename(file).replace(/\.md$/, ".ts")), code);
  }
  const config = { extends: "../tsconfig.json", include: ["*.ts", ...include.map((path) => `../${path}`)] };
  writeFileSync(join(blanked, "tsconfig.json"), JSON.stringify(config, null, 2));
  const tsc = resolve("node_modules/.bin/tsc");
  const { stdout, stderr, error } = spawnSync(tsc, ["-p", ".notebooks", "--pretty", "false"], {
    cwd: root,
    encoding: "utf8",
  });
  if (error) throw error;
  return errorsIn(`${stdout}${stderr}`, relative(root, folder).replaceAll("\\", "/"));
}

/** The compiler's output, one error an entry, with the notebooks' own names and the colons that editors can follow. */
function errorsIn(output: string, folder: string): string[] {
  const errors: string[] = [];
  for (const line of output.split("\n")) {
    const [, file, at, column, words] = /^(.+?)\((\d+),(\d+)\): (.*)$/.exec(line) ?? [];
    const own = file && /^\.notebooks\/(.+)\.ts$/.exec(file)?.[1];
    if (file) errors.push(own ? `${folder}/${own}.md:${at}:${column}: ${words}` : `${file}:${at}:${column}: ${words}`);
    else if (/^\s/.test(line) && errors.length > 0) errors.push(`${errors.pop()}\n${line}`);
    else if (line.trim() !== "") errors.push(line);
  }
  return errors.filter((error) => !(error.startsWith(`${folder}/`) && ofOrder.test(error)));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const root = process.cwd();
  const include = ["src", "tests", "*.ts"];
  const errors = checkTypes({
    root,
    folder: join(root, "notebooks"),
    include,
    given: "#notebook/given",
    names: givenNames,
  });
  for (const error of errors) console.log(error);
  process.exitCode = errors.length > 0 ? 1 : 0;
}
