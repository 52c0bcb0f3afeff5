import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { NotebookError } from "../../src/notebook/fault.ts";
import { termsOf } from "../../src/notebook/glossary.ts";
import { compileFile, notebookFiles } from "../../src/notebook/pages.ts";
import { linkTerms, readTerms } from "../../src/notebook/terms.ts";
import { faultsOf, head, splitBody } from "./notebook.ts";

const glossary = `:::word Governor, governors | |
Holds one speed. It is part of the controller, with the head speed in its eye.
:::

:::word Head speed, head speeds | $n$ | rpm
How fast the rotor turns.
:::

:::word Speed
How fast anything moves.
:::
`;
const { terms } = readTerms(splitBody(glossary));

/** A book of pages by their files' names. */
function compiledBook(files: Record<string, string>): (name: string) => string {
  const root = mkdtempSync(join(tmpdir(), "words-"));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [name, body] of Object.entries(files)) writeFileSync(join(root, name), head + body);
  const book = { root, folder: root, given: [] };
  return (name) => compileFile(book, notebookFiles(root).find((file) => file.endsWith(name)) ?? "").html;
}

describe("the glossary", () => {
  it("is read from its page's blocks: forms, place, and the sentence that says what a word means", () => {
    expect(terms.map(({ id, name, forms, meaning }) => ({ id, name, forms, meaning }))).toEqual([
      { id: "governor", name: "Governor", forms: ["Governor", "governors"], meaning: "Holds one speed." },
      {
        id: "head-speed",
        name: "Head speed",
        forms: ["Head speed", "head speeds"],
        meaning: "How fast the rotor turns.",
      },
      { id: "speed", name: "Speed", forms: ["Speed"], meaning: "How fast anything moves." },
    ]);
  });

  it.each([
    [":::word A, a\nOne.\n:::", "'a' is a form of 'A' already."],
    [":::word B\nOne.\n:::\n\n:::word A\nTwo.\n:::", "'A' comes before 'B' in the alphabet."],
    [":::word A\nIt is {= 1 }.\n:::", "The first sentence of 'A' says what it means, in plain words alone."],
    [":::word A, *b*\nOne.\n:::", "A word and its other forms are plain words with commas between them."],
  ])("says what is wrong in %j", (body, words) => {
    expect(readTerms(splitBody(body)).faults.map((fault) => fault.words)).toEqual([words]);
  });

  it("stands on its own page alone", () => {
    expect(faultsOf(":::word A\nOne.\n:::")).toEqual(["1:1: Words are explained on the page 'words' alone."]);
  });
});

describe("the first use of a word", () => {
  const link = (id: string, words: string) => `<a class="term" href="./words.html#${id}">${words}</a>`;

  it("becomes a link, in any form and case, and no later one does", () => {
    const { html, used } = linkTerms("<p>Governors hold a head\u00a0speed. A governor, a HEAD SPEED.</p>", terms);
    expect(html).toBe(
      `<p>${link("governor", "Governors")} hold a ${link("head-speed", "head\u00a0speed")}. A governor, a HEAD SPEED.</p>`,
    );
    expect(used).toEqual(["governor", "head-speed"]);
  });

  it("is the longest word that stands there, and a whole one", () => {
    expect(linkTerms("<p>Speeds, misspeed, wind-speed, head speed, speed.</p>", terms).html).toBe(
      `<p>Speeds, misspeed, wind-speed, ${link("head-speed", "head speed")}, ${link("speed", "speed")}.</p>`,
    );
  });

  it.each([
    '<h2 id="a">Governor</h2>',
    '<p><a href="b">the <em>governor</em></a></p>',
    "<p><code>governor</code></p>",
    "<math><mtext>governor</mtext></math>",
    '<details class="fold">\n<summary>Governor</summary>\n</details>',
    '<details class="teacher">\n<summary>x</summary>\n<details><p>governor</p></details><p>governor</p></details>',
    '<p><img alt="governor"></p>',
  ])("is never in %s", (html) => {
    expect(linkTerms(html, terms)).toEqual({ html, used: [] });
    const after = linkTerms(`${html}<p>governor</p>`, terms).html;
    expect(after).toBe(`${html}<p>${link("governor", "governor")}</p>`);
  });

  it("links the entries of the glossary to each other, each anew and none to itself", () => {
    const html = compiledBook({ "01-a.md": "Governor, head speed, speed.", "02-words.md": glossary })("words.md");
    expect(html).toContain('<section class="word" id="head-speed">\n<h3>Head speed <span class="word-sign"><math');
    expect(html).toContain(
      '</math> · rpm</span></h3>\n<p>How fast the rotor turns.</p>\n<p class="word-where">Met on <a href="./">T</a></p>',
    );
    expect(html).toContain(
      '<p>Holds one <a class="term" href="#speed">speed</a>. It is part of the controller, with the <a class="term" href="#head-speed">head speed</a>',
    );
  });
});

describe("a book with a glossary", () => {
  const faults = (run: () => unknown): string => {
    try {
      run();
    } catch (error) {
      if (error instanceof NotebookError) return error.message;
      throw error;
    }
    return "";
  };

  it("links its pages by itself", () => {
    expect(compiledBook({ "01-a.md": "The governor.", "02-words.md": glossary })("a.md")).toContain(link0);
  });
  const link0 = '<p>The <a class="term" href="./words.html#governor">governor</a>.</p>';

  it("has no word that no page uses", () => {
    const page = compiledBook({ "01-a.md": "Governor and head speed.", "02-words.md": glossary });
    expect(faults(() => page("words.md"))).toBe("02-words.md:14:1: No page uses 'Speed': it needs no entry.");
  });

  it("has no link to a word that it doesn't explain", () => {
    const page = compiledBook({
      "01-a.md": "A [thing](words.html#thing), [speed](./words.html#speed).",
      "02-words.md": glossary,
    });
    expect(faults(() => page("a.md"))).toBe("01-a.md:6:9: The page of words explains no 'thing'.");
  });

  it("may have none", () => {
    expect(termsOf([])).toEqual([]);
    expect(compiledBook({ "01-a.md": "The governor." })("a.md")).toBe("<p>The governor.</p>\n");
  });
});
