import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { slugOf } from "../../src/notebook/compile.ts";
import { type Book, contentsOf, fileOfPage, notebookFiles, pageHtml } from "../../src/notebook/pages.ts";

const text = (title: string) => `---\ntitle: ${title}\nquestion: Is A < B & "C"?\nminutes: 4\n---\nWords {= 1 }.\n`;

function book(files: Record<string, string>): Book {
  const root = mkdtempSync(join(tmpdir(), "notebooks-"));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(root, name), content);
  return { root, folder: root, given: [] };
}
const three = () =>
  book({ "10-c.md": text("Third"), "02-b-b.md": text("Second"), "01-a.md": text("First"), "notes.txt": "" });

describe("the order of the pages", () => {
  it("is that of the files' names, and the first is the front page", () => {
    expect(contentsOf(three()).map(({ title, slug, href }) => [title, slug, href])).toEqual([
      ["First", "a", "./"],
      ["Second", "b-b", "./b-b.html"],
      ["Third", "c", "./c.html"],
    ]);
  });

  it("knows no page twice", () => {
    expect(() => contentsOf(book({ "01-a.md": text("A"), "02-a.md": text("B") }))).toThrow(
      "02-a.md:1:1: '01-a.md' has the name 'a' too.",
    );
  });
});

describe("a page's name", () => {
  it.each([
    ["07-room-at-the-top.md", "room-at-the-top"],
    ["7-room.md", null],
    ["07-Room.md", null],
    ["07-room_top.md", null],
    ["room.md", null],
  ])("of %s is %s", (file, slug) => {
    expect(slugOf(file)).toBe(slug);
  });

  it("is refused with the file when it is of another form", () => {
    const odd = book({ "Room.md": text("A") });
    expect(() => pageHtml(odd, notebookFiles(odd.folder)[0] ?? "")).toThrow(
      "Room.md:1:1: A notebook's file is named by",
    );
  });

  it("leads to its notebook", () => {
    const pages = three();
    const names = (path: string) => fileOfPage(pages, path)?.slice(pages.root.length + 1);
    expect(["/", "/index.html", "/a", "/b-b.html", "/c", "/d", "/x/c", "/c.md"].map(names)).toEqual([
      "01-a.md",
      "01-a.md",
      "01-a.md",
      "02-b-b.md",
      "10-c.md",
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe("a page's HTML", () => {
  const template =
    "<title><!--title--></title><h1><!--question--></h1><!--number-->/<!--count--> <!--before-->|<!--after--> <!--policy--><!--other--><!--prose-->";
  const html = (drawn?: Map<string, Map<string, string>>) => {
    const pages = three();
    writeFileSync(join(pages.root, "index.html"), template);
    return pageHtml(pages, join(pages.root, "02-b-b.md"), drawn);
  };

  it("is the template with its parts filled in, as text", () => {
    const [head, tail] = html().split('<div class="prose">');
    expect(head).toBe(
      "<title>Second</title><h1>Is A &lt; B &amp; &quot;C&quot;?</h1>2/3 " +
        '<a rel="prev" href="./">First</a>|<a rel="next" href="./c.html">Third</a> <!--other-->',
    );
    expect(tail).toContain('<p>Words <span data-cell="value-1"></span>.</p>');
  });

  it("has what was drawn in its places, and then its policy", () => {
    const page = html(new Map([["b-b", new Map([["value-1", "<b>$1</b>"]])]]));
    expect(page).toContain('<span data-cell="value-1"><b>$1</b></span>');
    expect(page).toContain('<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; ');
  });
});
