/**
 * The glossary: the words that the page 'words' explains, and the links to them. Each word is a block of that page,
 * `:::word Head speed, head speeds | $n$ | rpm`; the first use of a word in the prose of any page becomes a link by
 * itself, so an author writes nothing.
 */
import type { Fault } from "./fault.ts";
import type { Split } from "./split.ts";

/** The page that holds the glossary. */
export const wordsSlug = "words";

/** One word of the glossary. */
export interface Term {
  /** Its place on the page: `words.html#head-speed`. */
  readonly id: string;
  readonly name: string;
  /** The word and its other forms, as prose has them. */
  readonly forms: readonly string[];
  /** Its first sentence, which says what it means. */
  readonly meaning: string;
  /** Where it stands in its file. */
  readonly at: number;
}

export interface Terms {
  readonly terms: readonly Term[];
  readonly faults: readonly Fault[];
}

const blockOf = /^:::word[ \t]+([^\n]*)\n([\s\S]*?)\n:::[ \t]*$/gm;

/** Its place on the page. */
export const idOf = (name: string): string =>
  (name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).join("-").normalize("NFKD").replace(/\p{M}/gu, "");

/** The parts of a block's title, which bars part: the word with its forms, its symbol, its unit. */
export const titleParts = (title: string): string[] => title.split("|").map((part) => part.trim());

/** Reads the words of the glossary's text; what is wrong with them stands at their places. */
export function readTerms({ text, pieces }: Split): Terms {
  const terms: Term[] = [];
  const faults: Fault[] = [];
  const known = new Map<string, string>();
  const inProse = (at: number): boolean =>
    pieces.some(({ kind, start, end }) => kind === "prose" && at >= start && at < end);
  for (const { 1: title = "", 2: body = "", index: at } of text.matchAll(blockOf)) {
    if (!inProse(at)) continue;
    const forms = (titleParts(title)[0] ?? "").split(",").map((form) => form.trim());
    const name = forms[0] ?? "";
    const meaning = /^[\s\S]*?[.?!](?=\s|$)/.exec(body.trim())?.[0].replace(/\s+/g, " ") ?? "";
    if (!forms.every((form) => /^[\p{L}\p{N}][\p{L}\p{N}. -]*$/u.test(form)))
      faults.push({ at, words: "A word and its other forms are plain words with commas between them." });
    if (meaning === "" || /[{}$`*_<[\]]/.test(meaning))
      faults.push({ at, words: `The first sentence of '${name}' says what it means, in plain words alone.` });
    for (const form of forms) {
      const other = known.get(form.toLowerCase());
      if (other) faults.push({ at, words: `'${form}' is a form of '${other}' already.` });
      known.set(form.toLowerCase(), name);
    }
    const before = terms.at(-1);
    if (before && before.name.localeCompare(name, "en", { sensitivity: "base" }) > 0)
      faults.push({ at, words: `'${name}' comes before '${before.name}' in the alphabet.` });
    terms.push({ id: idOf(name), name, forms, meaning, at });
  }
  return { terms, faults };
}

/** Elements in which a link would be wrong, of no use, or never seen first. */
const closedTo = /^(?:a|h[1-6]|summary|code|pre|math|button|svg)$/;
const tokens = /<(\/?)([a-z][\w-]*)([^>]*)>|[^<]+/gi;

export interface Linked {
  readonly html: string;
  /** The words that were linked. */
  readonly used: readonly string[];
}

/**
 * Turns the first use of each word in a page's prose into a link. Within the glossary itself (`here`) each entry links
 * to the others, never to itself.
 */
export function linkTerms(html: string, terms: readonly Term[], here = false): Linked {
  if (terms.length === 0) return { html, used: [] };
  const owner = new Map(terms.flatMap((term) => term.forms.map((form) => [form.toLowerCase(), term] as const)));
  // The longest first: 'electrical speed' before 'speed'.
  const forms = [...owner.keys()].sort((a, b) => b.length - a.length);
  const any = forms.map((form) => form.replaceAll(".", "\\.").replaceAll(" ", "\\s")).join("|");
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${any})(?![\\p{L}\\p{N}-])`, "giu");
  const used = new Set<string>();
  const all = new Set<string>();
  const closed: string[] = [];
  const link = (words: string): string => {
    const term = owner.get(words.toLowerCase().replace(/\s/g, " "));
    if (!term || used.has(term.id)) return words;
    used.add(term.id);
    all.add(term.id);
    return `<a class="term" href="${here ? "" : `./${wordsSlug}.html`}#${term.id}">${words}</a>`;
  };
  const linked = html.replace(tokens, (token: string, end?: string, tag?: string, attributes = "") => {
    if (tag === undefined) return closed.length > 0 || (here && used.size === 0) ? token : token.replace(pattern, link);
    if (closed.length > 0) {
      // Only elements of the same name count on the way back out.
      if (tag !== closed[0]) return token;
      if (end) closed.pop();
      else closed.push(tag);
    } else if (!end && (closedTo.test(tag) || /\bclass="teacher"/.test(attributes))) closed.push(tag);
    else if (here && tag === "section" && /\bclass="word"/.test(attributes)) {
      used.clear();
      used.add(/\bid="([^"]*)"/.exec(attributes)?.[1] ?? "");
    } else if (here && end && tag === "section") used.clear();
    return token;
  });
  return { html: linked, used: [...all] };
}

/** Links that an author wrote to a word that the glossary hasn't got. */
export function lostLinks({ text, pieces }: Split, terms: readonly Term[]): Fault[] {
  const ids = new Set(terms.map(({ id }) => id));
  return pieces
    .filter(({ kind }) => kind === "prose")
    .flatMap(({ start, end }) =>
      [...text.slice(start, end).matchAll(/\]\((?:\.\/)?words(?:\.html)?#([^)\s]*)/g)]
        .filter(([, id]) => !ids.has(id ?? ""))
        .map(({ 1: id, index }) => ({ at: start + index, words: `The page of words explains no '${id}'.` })),
    );
}
