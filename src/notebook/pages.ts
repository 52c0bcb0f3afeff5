/** The pages that the notebooks make: their order, their addresses, and the HTML of each. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import { unbroken } from "#view/text";
import { compile, type Notebook, slugOf } from "./compile.ts";
import { NotebookError } from "./fault.ts";
import { type Front, readFront } from "./front.ts";
import { glossaryFor } from "./glossary.ts";
import { type Lesson, readLesson } from "./lessons.ts";
import { policy } from "./policy.ts";
import { split } from "./split.ts";

/** One line of the contents. */
export interface Entry extends Front {
  readonly slug: string;
  /** The page's address, relative to any other page. */
  readonly href: string;
}

export interface Book {
  /** The notebooks' folder. */
  readonly folder: string;
  /** The site's root, from which files are named in messages. */
  readonly root: string;
  /** The names that every notebook gets. */
  readonly given: readonly string[];
}

/** What each cell's place holds before any script has run, by page and `data-cell`. */
export type Drawn = ReadonlyMap<string, ReadonlyMap<string, string>>;

/** Behind a notebook's path: the module of its cells. The ending tells Vite that it is TypeScript. */
export const cellsQuery = "?cells&lang.ts";

/** The Markdown files in reading order. */
export function notebookFiles(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".md"))
    .sort()
    .map((name) => join(folder, name));
}

/** Compiles a notebook of the book, with links to the book's glossary. */
export function compileFile(book: Book, file: string): Notebook {
  const files = notebookFiles(book.folder);
  const pages = contentsOf(book).map(({ title, href }, i) => ({ file: files[i] ?? "", title: escaped(title), href }));
  const name = relative(book.root, file).replaceAll("\\", "/");
  return compile(name, readFileSync(file, "utf8"), book.given, glossaryFor(file, pages));
}

/** The contents: what the heads of the notebooks say. The first notebook is the site's first page. */
export function contentsOf(book: Book): Entry[] {
  const seen = new Map<string, string>();
  return notebookFiles(book.folder).map((file, i) => {
    const text = readFileSync(file, "utf8");
    const slug = slugOf(file) ?? basename(file, ".md");
    const double = seen.get(slug);
    if (double)
      throw new NotebookError(relative(book.root, file), text, [
        { at: 0, words: `'${double}' has the name '${slug}' too.` },
      ]);
    seen.set(slug, basename(file));
    return { ...readFront(text).front, slug, href: i === 0 ? "./" : `./${slug}.html` };
  });
}

/** What the pages say to whoever teaches with them, in reading order, with the place of each; those that do say it. */
export function lessonsOf(book: Book): (Entry & Lesson & { readonly number: number })[] {
  const files = notebookFiles(book.folder);
  return contentsOf(book).flatMap((entry, i) => {
    const { lesson } = readLesson(split(readFileSync(files[i] ?? "", "utf8")));
    return lesson ? [{ ...entry, ...lesson, number: i + 1 }] : [];
  });
}

/** The notebook whose page has this path, as in `/the-card.html`, `/the-card` or `/`. */
export function fileOfPage(book: Book, path: string): string | undefined {
  const name = /^\/([a-z0-9-]*)(?:\.html)?$/.exec(path)?.[1];
  const first = name === "" || name === "index";
  const at = first ? 0 : contentsOf(book).findIndex(({ slug }) => slug === name);
  return notebookFiles(book.folder)[at];
}

/** The address of a page's script. */
export const scriptOf = (slug: string): string => `/@page/${slug}.js`;

export function slugOfScript(id: string): string | undefined {
  return /^\/@page\/([a-z0-9-]+)\.js$/.exec(id)?.[1];
}

const entities: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string): string => unbroken(text).replace(/[&<>"]/g, (mark) => entities[mark] ?? mark);

/**
 * A notebook's page: the template index.html, in which each `<!--name-->` stands for a part. With `drawn` it is the page
 * of the built site: the cells' places hold what was drawn, and the page states its policy.
 */
export function pageHtml(book: Book, file: string, drawn?: Drawn): string {
  const notebook = compileFile(book, file);
  const contents = contentsOf(book);
  const at = contents.findIndex(({ slug }) => slug === notebook.slug);
  const [before, after] = [contents[at - 1], contents[at + 1]];
  const parts: Record<string, string> = {
    policy: drawn ? `<meta http-equiv="Content-Security-Policy" content="${policy}">` : "",
    title: escaped(notebook.title),
    question: escaped(notebook.question),
    minutes: String(notebook.minutes),
    number: String(at + 1),
    count: String(contents.length),
    here: contents[at]?.href ?? "",
    prose: `<div class="prose">\n${notebook.html}</div>`,
    contents: contentsHtml(contents, notebook.slug),
    before: before ? `<a rel="prev" href="${before.href}">${escaped(before.title)}</a>` : "",
    after: after ? `<a rel="next" href="${after.href}">${escaped(after.title)}</a>` : "",
    script: `<script type="module" src="${scriptOf(notebook.slug)}"></script>`,
  };
  const template = readFileSync(join(book.root, "index.html"), "utf8");
  const html = template.replace(/<!--(\w+)-->/g, (mark, name: string) => parts[name] ?? mark);
  const places = drawn?.get(notebook.slug);
  return html.replace(place, (tag, id: string) => tag + (places?.get(id) ?? ""));
}

/** The opening tag of a cell's empty place. */
const place = /<(?:div|span)\b[^>]* data-cell="([^"]+)"[^>]*>(?=<\/)/g;

function contentsHtml(contents: readonly Entry[], here: string): string {
  const lines = contents.map(({ slug, href, title, question, minutes }) => {
    const current = slug === here ? ' aria-current="page"' : "";
    const time = `<span class="minutes">${minutes} min</span>`;
    return `<li><a href="${href}"${current}>${escaped(title)}</a> ${time} <span class="question">${escaped(question)}</span></li>`;
  });
  return `<ol>\n${lines.join("\n")}\n</ol>`;
}
