/** A notebook's way from Markdown to a page's HTML and its cells' module. */
import { basename } from "node:path";
import type { SourceMap } from "magic-string";
import { readCells } from "./cells.ts";
import { emit } from "./emit.ts";
import { type Fault, NotebookError } from "./fault.ts";
import type { Front } from "./front.ts";
import { graphFaults } from "./graph.ts";
import { readLesson } from "./lessons.ts";
import { setProse } from "./prose.ts";
import { type Split, split } from "./split.ts";
import { linkTerms, lostLinks, readTerms, type Term, wordsSlug } from "./terms.ts";
import type { PageLink } from "./word-block.ts";

export interface Notebook extends Front {
  /** Its name in links: the file's name without number and ending. */
  readonly slug: string;
  readonly html: string;
  /** A TypeScript module that exports `records`. */
  readonly code: string;
  readonly map: SourceMap;
}

/** What a page has to know of the glossary. */
export interface Glossary {
  readonly terms: readonly Term[];
  /** On which pages each word is met first: known when the glossary itself is compiled. */
  readonly uses?: ReadonlyMap<string, readonly PageLink[]>;
}

const noGlossary: Glossary = { terms: [] };

/** `notebooks/07-room-at-the-top.md` is the page `room-at-the-top`; null when the name is not of this form. */
export function slugOf(file: string): string | null {
  return /^\d\d-([a-z0-9]+(?:-[a-z0-9]+)*)\.md$/.exec(basename(file))?.[1] ?? null;
}

/** Compiles one notebook; all its mistakes come as one `NotebookError`. `file` is how they name it. */
export function compile(
  file: string,
  text: string,
  given: readonly string[],
  { terms, uses }: Glossary = noGlossary,
): Notebook {
  const slug = slugOf(file);
  const parts = split(text);
  const { cells, faults } = readCells(parts);
  const ids = cells.map(({ piece }, i) => `${piece.kind}-${i + 1}`);
  const prose = setProse(parts, new Map(cells.map(({ piece }, i) => [piece, ids[i] ?? ""])), uses);
  const words = [...wordFaults(parts, slug, uses), ...lostLinks(parts, terms), ...readLesson(parts).faults];
  const all = [...parts.faults, ...faults, ...prose.faults, ...words, ...graphFaults(text, cells, given)];
  if (!slug)
    all.unshift({ at: 0, words: "A notebook's file is named by two digits and words: '07-room-at-the-top.md'." });
  if (!slug || all.length > 0) throw new NotebookError(file, text, all);
  const { html } = linkTerms(prose.html, terms, slug === wordsSlug);
  return { ...parts.front, slug, html, ...emit(basename(file), parts, cells, ids, given) };
}

/** Words that stand on another page than the glossary's, or that no page uses. */
function wordFaults(parts: Split, slug: string | null, uses: Glossary["uses"]): Fault[] {
  const { terms, faults } = readTerms(parts);
  if (slug !== wordsSlug)
    return terms.map(({ at }) => ({ at, words: `Words are explained on the page '${wordsSlug}' alone.` }));
  const idle = terms.filter(({ id }) => uses && !uses.has(id));
  return [...faults, ...idle.map(({ at, name }) => ({ at, words: `No page uses '${name}': it needs no entry.` }))];
}
