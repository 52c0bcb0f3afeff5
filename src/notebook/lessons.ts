/**
 * What each page says to whoever teaches with it, gathered from its `:::teacher` fold, so that it is written once. The
 * fold has five paragraphs, each with its name in bold: what it is for, what a learner says, 10 minutes, 45 minutes, and
 * what to ask the room.
 */
import { capital } from "#view/text";
import type { Fault } from "./fault.ts";
import type { Split } from "./split.ts";

/** One page, as somebody sees it who plans an evening. */
export interface Lesson {
  readonly purpose: string;
  /** The wrong ideas that the page meets, as a learner would say them. */
  readonly ideas: readonly string[];
  /** How to do it in 10 minutes. */
  readonly short: string;
  /** How to do it in 45 minutes. */
  readonly long: string;
  /** Questions to ask the room. */
  readonly ask: readonly string[];
}

type Part = keyof Lesson;

const names: Record<Part, { readonly says: RegExp; readonly name: string }> = {
  purpose: { says: /^what it is for/i, name: "What it is for" },
  ideas: { says: /^(?:as a learner|wrong ideas)/i, name: "As a learner says it" },
  short: { says: /^(?:in )?(?:10|ten) minutes/i, name: "In 10 minutes" },
  long: { says: /^(?:in )?(?:45|forty-five) minutes/i, name: "In 45 minutes" },
  ask: { says: /^ask the room/i, name: "Ask the room" },
};
const parts = Object.keys(names) as Part[];

const fold = /^:::teacher[^\n]*\n([\s\S]*?)\n:::[ \t]*$/m;

/** Reads a page's fold: what it says, or what is wrong with it; neither where it has none. */
export function readLesson({ text, pieces }: Split): {
  readonly lesson: Lesson | null;
  readonly faults: readonly Fault[];
} {
  const found = fold.exec(text);
  if (!found) return { lesson: null, faults: [] };
  const { index: at } = found;
  const end = at + found[0].length;
  const said = new Map<Part, string>();
  for (const paragraph of (found[1] ?? "").split(/\n[ \t]*\n/)) {
    const [, label = "", words = ""] = /^\s*\*\*([^*]+?)[:.]?\*\*[:.]?\s*([\s\S]*)$/.exec(paragraph) ?? [];
    const part = parts.find((one) => names[one].says.test(label));
    if (part) said.set(part, plain(words));
  }
  const faults = parts
    .filter((part) => !said.get(part))
    .map((part) => ({ at, words: `The fold for teachers lacks a paragraph '**${names[part].name}.** …'.` }));
  if (pieces.some(({ kind, start }) => kind !== "prose" && start > at && start < end))
    faults.push({ at, words: "The fold for teachers holds plain words alone: they stand on another page too." });
  const ideas = quotes(said.get("ideas") ?? "");
  if (said.has("ideas") && ideas.length === 0)
    faults.push({ at, words: "What a learner says stands in quotation marks." });
  if (faults.length > 0) return { lesson: null, faults };
  const word = (part: Part): string => capital(said.get(part) ?? "");
  const ask = (said.get("ask") ?? "").split(/(?<=\?)\s+/);
  return { lesson: { purpose: word("purpose"), ideas, short: word("short"), long: word("long"), ask }, faults };
}

/** Words without the marks of Markdown, with numbers and units as a page sets them. */
const plain = (markdown: string): string =>
  markdown
    .replace(/\[([^\]]*)\]\([^)]*\)/g, "$1")
    .replace(/[*_`]/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** What stands in double quotation marks, or in single ones around whole sentences. */
function quotes(words: string): string[] {
  const double = [...words.matchAll(/["“]([^"”]+)["”]/g)].map(([, said]) => said ?? "");
  if (double.length > 0) return double;
  return [...words.matchAll(/(?:^|\s)['‘](.+?[.?!])['’](?=\s|$)/g)].map(([, said]) => said ?? "");
}
