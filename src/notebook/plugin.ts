/**
 * The Vite plugin: every Markdown file of the notebooks' folder becomes a page, in the dev server and in the build.
 * A page is the template index.html with the prose in it, and a script that opens the notebook's cells.
 */
import { readFileSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { normalizePath, type Plugin, type ViteDevServer } from "vite";
import { givenNames } from "./given.ts";
import { type Book, cellsQuery, compileFile, contentsOf, notebookFiles, pageHtml } from "./pages.ts";
import { policy } from "./policy.ts";
import { drawPages } from "./prerender.ts";

export interface NotebookOptions {
  /** The notebooks' folder, from the root. */
  readonly folder?: string;
  /** The module that exports the `shell`, from the root. */
  readonly shell?: string;
  readonly given?: readonly string[];
}

const scriptOf = (slug: string): string => `/@page/${slug}.js`;
const contentsId = "virtual:contents";

type Drawn = ReadonlyMap<string, ReadonlyMap<string, string>>;

export function notebooks(options: NotebookOptions = {}): Plugin[] {
  const { folder = "notebooks", shell = "/src/shell/page.ts", given = givenNames } = options;
  let book: Book = { root: process.cwd(), folder: resolve(folder), given };
  let built = false;
  let drawn: Drawn = new Map();

  /** The notebook of a page: `index` is the first one. */
  const fileOf = (name: string): string | undefined => {
    const at = contentsOf(book).findIndex(({ slug, href }) => slug === name || (name === "index" && href === "./"));
    return notebookFiles(book)[at];
  };
  /** The notebook whose page has this path, as in `/the-card.html`. */
  const fileOfPage = (path: string): string | undefined => {
    const name = /^\/([a-z0-9-]*)(?:\.html)?$/.exec(path)?.[1];
    return name === undefined ? undefined : fileOf(name || "index");
  };
  const htmlOf = (file: string): string => {
    const notebook = compileFile(book, file);
    const template = readFileSync(join(book.root, "index.html"), "utf8");
    const csp = built ? `<meta http-equiv="Content-Security-Policy" content="${policy}">` : "";
    return pageHtml(template.replace("<!--policy-->", csp), {
      notebook,
      contents: contentsOf(book),
      script: scriptOf(notebook.slug),
      drawn: drawn.get(notebook.slug) ?? new Map(),
    });
  };
  const pagePath = (id: string): string => id.slice(normalizePath(book.root).length);
  const isPage = (id: string): boolean =>
    id.startsWith(`${normalizePath(book.root)}/`) && id.endsWith(".html") && fileOfPage(pagePath(id)) !== undefined;

  const pages: Plugin = {
    name: "notebook-pages",
    enforce: "pre",
    configResolved(config) {
      book = { root: config.root, folder: resolve(config.root, folder), given };
      built = config.command === "build";
    },
    config(config, { command }) {
      if (command !== "build") return;
      const root = resolve(config.root ?? ".");
      const all = contentsOf({ root, folder: resolve(root, folder), given });
      const input = all.map(({ slug }, i) => (i === 0 ? ["index", "index"] : [slug, slug]));
      const files = Object.fromEntries(input.map(([name, file]) => [name, join(root, `${file}.html`)]));
      return { build: { rolldownOptions: { input: files } } };
    },
    async buildStart() {
      if (built)
        drawn = await drawPages(book, shell, [
          cellsPlugin(
            () => book,
            () => false,
          ),
        ]);
    },
    resolveId(id) {
      if (id === contentsId) return `\0${contentsId}`;
      if (id.startsWith("/@page/") || (built && isPage(normalizePath(id)))) return id;
      return null;
    },
    load(id) {
      if (id === `\0${contentsId}`) return `export const contents = ${JSON.stringify(contentsOf(book))};`;
      if (id.startsWith("/@page/")) return pageScript(basename(id, ".js"), fileOf(basename(id, ".js")), shell, built);
      if (built && isPage(id)) return htmlOf(fileOfPage(pagePath(id)) ?? "");
      return null;
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const path = new URL(request.url ?? "/", "http://localhost").pathname;
        let file: string | undefined;
        try {
          file = request.headers.accept?.includes("text/html") ? fileOfPage(path) : undefined;
          if (!file) return next();
          server
            .transformIndexHtml(path, htmlOf(file))
            .then((html) => response.setHeader("content-type", "text/html").end(html), next);
        } catch (error) {
          next(error);
        }
      });
    },
    hotUpdate({ file, modules, server }) {
      const normal = normalizePath(book.folder);
      if (this.environment.name !== "client" || !file.startsWith(`${normal}/`) || !file.endsWith(".md")) return;
      if (modules.length === 0 || contentsChanged(server)) this.environment.hot.send({ type: "full-reload" });
    },
  };

  let contents = "";
  /** Whether a head, or the list of notebooks, has changed: that concerns every page. */
  function contentsChanged(server: ViteDevServer): boolean {
    const before = contents;
    try {
      contents = JSON.stringify(contentsOf(book));
    } catch (error) {
      server.config.logger.error(String(error));
    }
    return before !== "" && before !== contents;
  }

  return [
    cellsPlugin(
      () => book,
      () => !built,
    ),
    pages,
  ];
}

/** Turns a notebook into its cells' module; with the prose beside them while an author edits. */
function cellsPlugin(book: () => Book, withProse: () => boolean): Plugin {
  return {
    name: "notebook-cells",
    enforce: "pre",
    load(id) {
      if (!id.endsWith(cellsQuery)) return null;
      const { code, map, html } = compileFile(book(), id.slice(0, -cellsQuery.length));
      return { code: withProse() ? `${code}export const prose = ${JSON.stringify(html)};\n` : code, map };
    },
  };
}

/** The script of a page. While an author edits, it takes up the new prose and cells; the bench stays as it is. */
function pageScript(slug: string, file: string | undefined, shell: string, built: boolean): string {
  if (!file) throw new Error(`There is no notebook '${slug}'.`);
  const cells = JSON.stringify(`${normalizePath(file)}${cellsQuery}`);
  const name = JSON.stringify(slug);
  const open = `import { records } from ${cells};
import { shell } from ${JSON.stringify(shell)};
let page = shell.open({ slug: ${name}, records });
`;
  if (built) return open;
  return `${open}if (import.meta.hot) {
  import.meta.hot.accept(${cells}, (next) => {
    if (!next) return;
    page.dispose();
    document.querySelector(".prose").innerHTML = next.prose;
    page = shell.open({ slug: ${name}, records: next.records });
  });
}
`;
}
