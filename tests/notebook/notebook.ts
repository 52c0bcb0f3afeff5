/** Notebooks for the tests, written in a few lines. */
import { type Cell, readCells } from "../../src/notebook/cells.ts";
import { compile, type Notebook } from "../../src/notebook/compile.ts";
import { NotebookError } from "../../src/notebook/fault.ts";
import { type Split, split } from "../../src/notebook/split.ts";

export const head = "---\ntitle: T\nquestion: Q?\nminutes: 3\n---\n";
/** The head's lines: a body's first line is the one after. */
const headLines = 5;

export const fenced = (...codes: string[]): string => codes.map((code) => `\`\`\`ts\n${code}\n\`\`\`\n`).join("\n");

export const splitBody = (body: string): Split => split(head + body);

/** The text between the marks of each piece of one kind. */
export function inners(parts: Split, kind: string): string[] {
  return parts.pieces
    .filter((piece) => piece.kind === kind)
    .map(({ inner }) => parts.text.slice(inner.start, inner.end));
}

export function cellsOf(body: string): readonly Cell[] {
  const { cells, faults } = readCells(splitBody(body));
  if (faults.length > 0) throw new Error(faults.map(({ words }) => words).join("\n"));
  return cells;
}

export const compiled = (body: string, given: readonly string[] = ["machine"]): Notebook =>
  compile("notebooks/01-test.md", head + body, given);

/** What is wrong with a notebook: `line:column: words`, lines counted from the body's first. */
export function faultsOf(body: string, given: readonly string[] = ["machine"]): string[] {
  try {
    compiled(body, given);
  } catch (error) {
    if (!(error instanceof NotebookError)) throw error;
    return error.faults.map(({ line, column, words }) => `${line - headLines}:${column}: ${words}`);
  }
  return [];
}
