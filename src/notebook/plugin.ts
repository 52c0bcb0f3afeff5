/**
 * The Vite plugins: every Markdown file of the notebooks' folder becomes a page, in the dev server and in the build.
 * A page is the template index.html with the prose in it, and a script that opens the notebook's cells.
 */
import { join, resolve } from "node:path";
import { normalizePath, type Plugin } from "vite";
import { givenNames } from "./given.ts";
import { termsOf } from "./glossary.ts";
import {
  type Book,
  cellsQuery,
  compileFile,
  contentsOf,
  type Drawn,
  fileOfPage,
  lessonsOf,
  notebookFiles,
  pageHtml,
  slugOfScript,
} from "./pages.ts";
import { drawPages } from "./prerender.ts";

export interface NotebookOptions {
  /** The notebooks' folder, from the root. */
  readonly folder?: string;
  /** The module that exports the `shell`, from the root. */
  readonly shell?: string;
  readonly given?: readonly string[];
  /** Modules that a page fetches when they are asked for: they stay out of what all pages share, however many need them. */
  readonly later?: RegExp;
}

export function notebooks(options: NotebookOptions = {}): Plugin[] {
  const { folder = "notebooks", shell = "/src/shell/page.ts", given = givenNames, later = /(?!)/ } = options;
  let book: Book = { root: process.cwd(), folder: resolve(folder), given };
  const theBook = (): Book => book;
  const place: Plugin = {
    name: "notebook-place",
    enforce: "pre",
    config(config) {
      const root = resolve(config.root ?? ".");
      book = { root, folder: resolve(root, folder), given };
    },
  };
  return [place, cells(theBook), contents(theBook), editing(theBook, shell), building(theBook, shell, later)];
}

/** A notebook's cells as a module; its prose comes along, for a page that stands open while an author edits. */
function cells(book: () => Book): Plugin {
  return {
    name: "notebook-cells",
    enforce: "pre",
    load(id) {
      if (!id.endsWith(cellsQuery)) return null;
      const { code, map, html } = compileFile(book(), id.slice(0, -cellsQuery.length));
      return { code: `${code}export const prose = ${JSON.stringify(html)};\n`, map };
    },
  };
}

/** What is gathered from all notebooks: the pages in reading order, the words of the glossary, what teachers are told. */
function contents(book: () => Book): Plugin {
  const gathered: Record<string, () => unknown> = {
    contents: () => contentsOf(book()),
    lessons: () => lessonsOf(book()),
    words: () => termsOf(notebookFiles(book().folder)).map(({ id, name, meaning }) => ({ id, name, meaning })),
  };
  const nameOf = (id: string): string | undefined => {
    const name = /^\0?virtual:(\w+)$/.exec(id)?.[1];
    return name !== undefined && name in gathered ? name : undefined;
  };
  return {
    name: "notebook-contents",
    resolveId: (source) => (nameOf(source) ? `\0${source}` : null),
    load(id) {
      const name = id.startsWith("\0") ? nameOf(id) : undefined;
      return name ? `export const ${name} = ${JSON.stringify(gathered[name]?.())};` : null;
    },
  };
}

/** The dev server: pages made on request, and made again while an author edits. */
function editing(book: () => Book, shell: string): Plugin {
  // The heads as the open pages know them: a changed one, or another list of notebooks, concerns every page.
  let heads = "";
  const headsChanged = (): boolean => {
    const before = heads;
    heads = headsOf(book());
    return before !== heads;
  };
  return {
    name: "notebook-editing",
    enforce: "pre",
    apply: "serve",
    resolveId: (id) => (slugOfScript(id) ? id : null),
    load(id) {
      const file = slugOfScript(id) && fileOfPage(book(), `/${slugOfScript(id)}`);
      return file ? pageScript(file, shell) + hotScript(file) : null;
    },
    configureServer(server) {
      headsChanged();
      server.middlewares.use(async (request, response, next) => {
        const path = new URL(request.url ?? "/", "http://localhost").pathname;
        try {
          const file = request.headers.accept?.includes("text/html") && fileOfPage(book(), path);
          if (!file) return next();
          const html = await server.transformIndexHtml(path, pageHtml(book(), file));
          response.setHeader("content-type", "text/html").end(html);
        } catch (error) {
          next(error);
        }
      });
    },
    hotUpdate({ file, modules }) {
      const ours = file.startsWith(`${normalizePath(book().folder)}/`) && file.endsWith(".md");
      if (this.environment.name !== "client" || !ours) return;
      if (headsChanged() || modules.length === 0) this.environment.hot.send({ type: "full-reload" });
    },
  };
}

/** The contents as one text; empty while a head is wrong, which its page says itself. */
function headsOf(book: Book): string {
  try {
    return JSON.stringify(contentsOf(book));
  } catch {
    return "";
  }
}

/** The build: each page is one more file that starts it, drawn and with its policy. */
function building(book: () => Book, shell: string, later: RegExp): Plugin {
  let drawn: Drawn = new Map();
  const fileOf = (id: string): string | undefined => {
    const root = `${normalizePath(book().root)}/`;
    const path = normalizePath(id);
    return path.startsWith(root) && path.endsWith(".html")
      ? fileOfPage(book(), path.slice(root.length - 1))
      : undefined;
  };
  return {
    name: "notebook-building",
    enforce: "pre",
    apply: "build",
    config() {
      const names = contentsOf(book()).map(({ slug }, i) => (i === 0 ? "index" : slug));
      const input = Object.fromEntries(names.map((name) => [name, join(book().root, `${name}.html`)]));
      // What all pages need is one file, also where parts that are fetched later need some of it.
      const test = (id: string): boolean => !later.test(normalizePath(id));
      const shared = { name: "page", minShareCount: Math.max(names.length, 2), test };
      return { build: { rolldownOptions: { input, output: { codeSplitting: { groups: [shared] } } } } };
    },
    async buildStart() {
      drawn = await drawPages(book(), shell, [cells(book), contents(book)], (words) => this.warn(words));
    },
    resolveId: (id) => (slugOfScript(id) || fileOf(id) ? id : null),
    load(id) {
      const slug = slugOfScript(id);
      const page = fileOf(id);
      if (page) return pageHtml(book(), page, drawn);
      const file = slug && fileOfPage(book(), `/${slug}`);
      return file ? pageScript(file, shell) : null;
    },
  };
}

/** The script of a page. */
function pageScript(file: string, shell: string): string {
  return `import { records } from ${JSON.stringify(cellsOf(file))};
import { shell } from ${JSON.stringify(shell)};
let page = shell.open(records);
`;
}

/** Takes up new prose and cells; the bench stays as it is. */
function hotScript(file: string): string {
  return `if (import.meta.hot) {
  import.meta.hot.accept(${JSON.stringify(cellsOf(file))}, (next) => {
    if (!next) return;
    page.dispose();
    document.querySelector(".prose").innerHTML = next.prose;
    page = shell.open(next.records);
  });
}
`;
}

const cellsOf = (file: string): string => normalizePath(file) + cellsQuery;
