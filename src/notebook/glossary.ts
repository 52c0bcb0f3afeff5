/** Reads the glossary of a book, and finds on which pages its words are met. */
import { readFileSync } from "node:fs";
import { type Glossary, slugOf } from "./compile.ts";
import { setProse } from "./prose.ts";
import { split } from "./split.ts";
import { linkTerms, readTerms, type Term, wordsSlug } from "./terms.ts";
import type { PageLink } from "./word-block.ts";

/** A page of the book: its file and how a link names it. */
interface Page extends PageLink {
  readonly file: string;
}

const isGlossary = (file: string): boolean => slugOf(file) === wordsSlug;

/** The words of the book whose notebooks these are; none when no page is called 'words'. */
export function termsOf(files: readonly string[]): readonly Term[] {
  const file = files.find(isGlossary);
  return file ? readTerms(split(readFileSync(file, "utf8"))).terms : [];
}

/** What the page of this file has to know; the glossary itself also where its words are met. */
export function glossaryFor(file: string, pages: readonly Page[]): Glossary {
  const terms = termsOf(pages.map((page) => page.file));
  if (!isGlossary(file)) return { terms };
  const uses = new Map<string, PageLink[]>();
  for (const page of pages) {
    if (isGlossary(page.file)) continue;
    for (const id of usedOn(page.file, terms)) uses.set(id, [...(uses.get(id) ?? []), page]);
  }
  return { terms, uses };
}

/** What was found in a text is kept: the glossary is compiled again and again while the other pages stand still. */
const found = new Map<string, { readonly text: string; readonly words: string; readonly used: readonly string[] }>();

function usedOn(file: string, terms: readonly Term[]): readonly string[] {
  const text = readFileSync(file, "utf8");
  const words = terms.flatMap(({ forms }) => forms).join();
  const last = found.get(file);
  if (last?.text === text && last.words === words) return last.used;
  const { used } = linkTerms(setProse(split(text), new Map()).html, terms);
  found.set(file, { text, words, used });
  return used;
}
