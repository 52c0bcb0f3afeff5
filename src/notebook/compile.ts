/** A notebook's way from Markdown to a page's HTML and its cells' module. */
import { basename } from "node:path";
import type { SourceMap } from "magic-string";
import { readCells } from "./cells.ts";
import { emit } from "./emit.ts";
import { NotebookError } from "./fault.ts";
import type { Front } from "./front.ts";
import { graphFaults } from "./graph.ts";
import { setProse } from "./prose.ts";
import { split } from "./split.ts";

export interface Notebook extends Front {
  /** Its name in links: the file's name without number and ending. */
  readonly slug: string;
  readonly html: string;
  /** A TypeScript module that exports `records`. */
  readonly code: string;
  readonly map: SourceMap;
}

/** `notebooks/07-room-at-the-top.md` is the page `room-at-the-top`; null when the name is not of this form. */
export function slugOf(file: string): string | null {
  return /^\d\d-([a-z0-9]+(?:-[a-z0-9]+)*)\.md$/.exec(basename(file))?.[1] ?? null;
}

/** Compiles one notebook; all its mistakes come as one `NotebookError`. `file` is how they name it. */
export function compile(file: string, text: string, given: readonly string[]): Notebook {
  const slug = slugOf(file);
  const parts = split(text);
  const { cells, faults } = readCells(parts);
  const ids = cells.map(({ piece }, i) => `${piece.kind}-${i + 1}`);
  const prose = setProse(parts, new Map(cells.map(({ piece }, i) => [piece, ids[i] ?? ""])));
  const all = [...parts.faults, ...faults, ...prose.faults, ...graphFaults(text, cells, given)];
  if (!slug)
    all.unshift({ at: 0, words: "A notebook's file is named by two digits and words: '07-room-at-the-top.md'." });
  if (!slug || all.length > 0) throw new NotebookError(file, text, all);
  return { ...parts.front, slug, html: prose.html, ...emit(basename(file), parts, cells, ids, given) };
}
