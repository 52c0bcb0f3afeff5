/**
 * Words of the pages: short, to the reader, and with all that a page of the course owes. What a page says with a number
 * comes from the model, so figures with a unit don't stand in its text.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const folder = new URL("../../notebooks/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".md"));

interface Page {
  readonly name: string;
  readonly slug: string;
  /** Its place in the course, 1 to 18; null for the pages behind it. */
  readonly place: number | null;
  /** All of it, its cells, and its text without cells. */
  readonly source: string;
  readonly cells: string;
  readonly text: string;
}

function pageOf(name: string): Page {
  const source = readFileSync(new URL(name, folder), "utf8").replace(/^---\n[\s\S]*?\n---\n/, "");
  const cells = [...source.matchAll(/^```ts\n([\s\S]*?)^```$/gm)].map((found) => found[1]).join("\n");
  const text = source.replace(/^```ts\n[\s\S]*?^```$/gm, "");
  const number = Number(name.slice(0, 2));
  return { name, slug: name.slice(3, -3), place: number <= 18 ? number : null, source, cells, text };
}

const pages = files.map(pageOf);
const course = pages.filter(({ place }) => place !== null);

/** The text with `value` in place of each value, whatever braces its expression has. */
function withoutValues(text: string): string {
  let plain = "";
  let at = 0;
  for (let from = text.indexOf("{="); from >= 0; from = text.indexOf("{=", at)) {
    let depth = 0;
    let end = from;
    do {
      if (text[end] === "{") depth += 1;
      if (text[end] === "}") depth -= 1;
      end += 1;
    } while (depth > 0 && end < text.length);
    plain += `${text.slice(at, from)}value`;
    at = end;
  }
  return plain + text.slice(at);
}

/** Paragraphs and items of a list as plain words: a value counts as one word, a formula as none. */
function paragraphs(text: string): string[] {
  return withoutValues(text)
    .replace(/\$\$[\s\S]*?\$\$/g, "")
    .replace(/^:::.*$/gm, "")
    .replace(/^#.*$/gm, "")
    .replace(/\$[^$\n]*\$/g, "symbol")
    .replace(/\[([^\]]*)\]\([^)]*\)/g, "$1")
    .split(/\n\s*\n|\n(?=[-*\d] |\d+\. |\|)/)
    .map((paragraph) => paragraph.replace(/[*_`>|-]+/g, " ").trim())
    .filter((paragraph) => /\w/.test(paragraph.replaceAll("symbol", "")));
}

const words = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;
const sentences = (text: string): string[] => text.split(/(?<=[.?!:])["'’”)]*\s+/).filter((part) => /\w/.test(part));

describe("the text of every page", () => {
  it.each(pages.map((page) => [page.name, page] as const))("%s: short sentences, short paragraphs", (_, { text }) => {
    const all = paragraphs(text);
    for (const paragraph of all) expect(words(paragraph), paragraph).toBeLessThanOrEqual(80);
    const each = all.flatMap(sentences);
    expect(words(all.join(" ")) / each.length).toBeLessThanOrEqual(20);
    for (const sentence of each) expect(words(sentence), sentence).toBeLessThanOrEqual(40);
  });

  it.each(pages.map((page) => [page.name, page] as const))("%s: speaks to you, of nobody else", (_, { text }) => {
    expect(text.match(/\b(he|she|him|her|his|hers|himself|herself)\b/gi) ?? []).toEqual([]);
  });

  it.each(course.map((page) => [page.name, page] as const))(
    "%s: formulas only where they can be opened",
    (_, { text }) => {
      const open = withoutValues(text).replace(/^:::(fold|side)[\s\S]*?^:::$/gm, "");
      expect(open.match(/\$\$?[^$]+\$\$?/g) ?? []).toEqual([]);
    },
  );

  it.each(pages.map((page) => [page.name, page] as const))(
    "%s: figures with a unit come from the model",
    (_, { text }) => {
      const typed = withoutValues(text).match(/\d[\d,.]*\s?(rpm|W|kW|A|V|N|J|m\/s|Nm)\b/g);
      expect(typed ?? []).toEqual([]);
    },
  );
});

describe("a page of the course", () => {
  it.each(course.map((page) => [page.name, page] as const))(
    "%s: lets guess before it tells",
    (_, { source, cells }) => {
      expect(cells).toMatch(/\b(choose|estimate)\(|predict: true/);
      // What is asked stands in the first half of the page.
      expect(source.search(/\b(choose|estimate)\(|predict: true/)).toBeLessThan(source.length / 2);
    },
  );

  // The pages on trust and of words are for learning too; the one for teachers asks nothing to be worked out.
  const exercised = pages.filter(({ slug }) => slug !== "to-teach-with-this");
  it.each(exercised.map((page) => [page.name, page] as const))("%s: has exercises of its own", (_, { cells, slug }) => {
    expect(cells).toMatch(new RegExp(`exercises(Later)?\\("${slug}", machine, answers\\)`));
  });

  it.each(course.map((page) => [page.name, page] as const))(
    "%s: ends in three lines and at the bench or the field",
    (_, { text }) => {
      const end = /^## In three lines\n\n((?:- .*\n)+)\n(At the (?:bench|field): .*)\n/m.exec(text);
      expect(end?.[1]?.trim().split("\n")).toHaveLength(3);
      expect(words(end?.[2] ?? "")).toBeGreaterThan(8);
    },
  );

  it.each(course.map((page) => [page.name, page] as const))("%s: tells how to teach with it", (_, { text }) => {
    const teacher = /^:::teacher .*\n([\s\S]*?)^:::$/m.exec(text)?.[1] ?? "";
    const heads = [...teacher.matchAll(/^\*\*([^*]+):\*\*/gm)].map((found) => found[1]);
    expect(heads).toEqual(["What it is for", "As a learner says it", "In 10 minutes", "In 45 minutes", "Ask the room"]);
    // Wrong ideas in a learner's words, and three questions at least.
    expect(teacher.split("**As a learner says it:**")[1]).toMatch(/["“'‘]/);
    expect(teacher.split("**Ask the room:**")[1]?.match(/\?/g)?.length ?? 0).toBeGreaterThanOrEqual(3);
  });

  it("has cautions wherever something spins, burns or is plugged in", () => {
    for (const { name, text } of course) expect(text, name).toMatch(/^:::caution$/m);
  });
});

describe("the lint of words", () => {
  it("counts a value as a word, a formula as nothing to read, and items as paragraphs", () => {
    expect(paragraphs("It is {= f({ a: 1 }) } fast.\n\n- One.\n- Two.\n\n$$x^2$$\n\n## Head")).toEqual([
      "It is value fast.",
      "One.",
      "Two.",
    ]);
    expect(sentences("One is short. Is two? Yes!")).toHaveLength(3);
  });
});
