/**
 * Draws the pages when the site is built: every notebook runs once at the bench as a first visitor finds it, and what
 * its cells show goes into the HTML. So a page has its numbers and plots before its script, and nothing moves later.
 */
import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { Window } from "happy-dom";
import { createServer, type Plugin, type ViteDevServer } from "vite";
import { placeOf } from "./fault.ts";
import { type Book, cellsQuery, contentsOf, type Drawn, notebookFiles } from "./pages.ts";
import type { CellRecord } from "./record.ts";
import type { Shell } from "./shell.ts";

type PageModule = typeof import("./page.ts");
const pageModule = fileURLToPath(new URL("./page.ts", import.meta.url));

type Warn = (words: string) => void;

/** Runs and draws all notebooks; throws when one of their cells stops, or a claim in the text isn't true. */
export async function drawPages(book: Book, shellFile: string, plugins: Plugin[], warn: Warn): Promise<Drawn> {
  const server = await createServer({
    configFile: false,
    root: book.root,
    appType: "custom",
    logLevel: "silent",
    plugins,
    server: { middlewareMode: true, watch: null, ws: false },
    optimizeDeps: { noDiscovery: true },
  });
  try {
    const { shell } = await load<{ shell: Shell }>(server, shellFile);
    const { failed, openPage } = await load<PageModule>(server, pageModule);
    const files = notebookFiles(book.folder);
    const drawn = new Map<string, ReadonlyMap<string, string>>();
    for (const [i, { slug }] of contentsOf(book).entries()) {
      const file = files[i] ?? "";
      const { records } = await load<{ records: CellRecord[] }>(server, `${file}${cellsQuery}`);
      failed.clear();
      drawn.set(slug, await drawPage(openPage, shell, records, relative(book.root, file), warn));
      if (failed.size === 0) continue;
      const source = readFileSync(file, "utf8");
      throw new Error([...failed].map((claim) => notBorneOut(relative(book.root, file), source, claim)).join("\n"));
    }
    return drawn;
  } finally {
    await server.close();
  }
}

const load = <M>(server: ViteDevServer, id: string): Promise<M> => server.ssrLoadModule(id) as Promise<M>;

/** Where a claim stands in its notebook, as far as it stands there word by word. */
function notBorneOut(file: string, source: string, claim: string): string {
  const at = ['"', "'", "`"].map((quote) => source.indexOf(quote + claim)).find((found) => found >= 0);
  const { line, column } = placeOf(source, at ?? 0);
  return `${file}:${at === undefined ? "" : `${line}:${column}:`} ${disagrees(claim)}`;
}

const disagrees = (claim: string): string => `the model doesn't agree any more that: ${claim}`;

async function drawPage(
  openPage: PageModule["openPage"],
  shell: Shell,
  own: readonly CellRecord[],
  file: string,
  warn: Warn,
): Promise<ReadonlyMap<string, string>> {
  const window = new Window();
  const document = window.document as unknown as Document;
  const records = [...shell.parts, ...own];
  const places = records.map(({ id }) => {
    const place = document.createElement("div");
    place.dataset.cell = id;
    document.body.append(place);
    return place;
  });
  const page = openPage({ document, records, ...shell.atRest() });
  await page.settled();
  page.dispose();
  const stopped = records.flatMap(({ line }, i) => {
    const place = places[i];
    if (place?.dataset.stopped) return [`${file}:${line}: ${place.textContent}`];
    const claim = place?.querySelector<HTMLElement>("[data-fails]")?.dataset.fails;
    return claim === undefined ? [] : [`${file}:${line}: ${disagrees(claim)}`];
  });
  if (stopped.length > 0) throw new Error(stopped.join("\n"));
  const html = new Map(
    places.map((place) => [place.dataset.cell ?? "", staticHtml(place, (words) => warn(`${file}, ${words}`))]),
  );
  await window.happyDOM.close();
  return html;
}

/** The place's HTML as it must stand in a file: what script had set on the elements is written as attributes. */
function staticHtml(place: HTMLElement, warn: Warn): string {
  for (const input of place.querySelectorAll("input")) {
    if (/^(?:checkbox|radio)$/.test(input.type)) input.toggleAttribute("checked", input.checked);
    else input.setAttribute("value", input.value);
  }
  for (const option of place.querySelectorAll("option")) option.toggleAttribute("selected", option.selected);
  // The policy forbids style attributes in a page's own markup: what needs one looks otherwise until the script runs.
  for (const styled of place.querySelectorAll("[style]")) {
    warn(
      `${place.dataset.cell}: a ${styled.localName} has its style '${styled.getAttribute("style")}' from script alone.`,
    );
    styled.removeAttribute("style");
  }
  return place.innerHTML;
}
