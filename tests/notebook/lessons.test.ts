import { describe, expect, it } from "vitest";
import { givenNames } from "../../src/notebook/given.ts";
import { readLesson } from "../../src/notebook/lessons.ts";
import { type Book, contentsOf, lessonsOf } from "../../src/notebook/pages.ts";
import { faultsOf, splitBody } from "./notebook.ts";

const fold = (...paragraphs: string[]): string => `Text.\n\n:::teacher For the club\n${paragraphs.join("\n\n")}\n:::\n`;
const good = [
  "**What it is for:** to *see* a [thing](x.html).",
  '**As a learner says it:** "It\'s so." “And so.”',
  "**In 10 minutes:** look\nat it.",
  "**In 45 minutes:** look long.",
  "**Ask the room:** Why 40 %: which two? Who?",
];
const lessonIn = (...paragraphs: string[]) => readLesson(splitBody(fold(...paragraphs)));

describe("what a page says to teachers", () => {
  it("is read from its fold, in plain words", () => {
    expect(lessonIn(...good)).toEqual({
      lesson: {
        purpose: "To see a thing.",
        ideas: ["It's so.", "And so."],
        short: "Look at it.",
        long: "Look long.",
        ask: ["Why 40 %: which two?", "Who?"],
      },
      faults: [],
    });
  });

  it("may use the other common names and single quotation marks", () => {
    const { lesson } = lessonIn(
      "**What it is for.** To see.",
      "**Wrong ideas.** 'It's so.' 'And so.'",
      "**Ten minutes.** Look.",
      "**Forty-five minutes.** Look long.",
      "**Ask the room.** Why?",
    );
    expect(lesson).toEqual({
      purpose: "To see.",
      ideas: ["It's so.", "And so."],
      short: "Look.",
      long: "Look long.",
      ask: ["Why?"],
    });
  });

  it("is nothing on a page without a fold", () => {
    expect(readLesson(splitBody("Text."))).toEqual({ lesson: null, faults: [] });
  });

  it.each(good.map((paragraph, i) => [paragraph, i] as const))("lacks nothing: without %j it is a fault", (_, i) => {
    expect(faultsOf(fold(...good.filter((_, j) => j !== i)))).toEqual([
      expect.stringMatching(/^3:1: The fold for teachers lacks a paragraph '\*\*(What|As|In|Ask) .*'\.$/),
    ]);
  });

  it("holds no values, because it stands on another page too", () => {
    expect(faultsOf(fold(...good, "And {= 1 }."))).toEqual([
      expect.stringContaining("3:1: The fold for teachers holds plain words"),
    ]);
  });

  it("quotes what a learner says", () => {
    expect(faultsOf(fold(...good.with(1, "**As a learner says it:** that it is so.")))).toEqual([
      "3:1: What a learner says stands in quotation marks.",
    ]);
  });
});

describe("the workbook", () => {
  const root = new URL("../../", import.meta.url).pathname;
  const book: Book = { root, folder: `${root}notebooks`, given: givenNames };

  it("has a lesson on every page but the words and the page for teachers itself", () => {
    const without = contentsOf(book).filter(({ slug }) => !lessonsOf(book).some((lesson) => lesson.slug === slug));
    expect(without.map(({ slug }) => slug)).toEqual(["words", "to-teach-with-this"]);
  });

  it("has wrong ideas, both ways and questions in each of them", () => {
    for (const { slug, ideas, short, long, ask } of lessonsOf(book)) {
      expect([slug, ideas.length > 0, ask.length > 1, short.length > 40, long.length > 40]).toEqual([
        slug,
        true,
        true,
        true,
        true,
      ]);
    }
  });
});
