/** How an entry of the glossary is set: its word, its symbol and unit, what it means, and where it is met. */
import { idOf, titleParts } from "./terms.ts";

/** A page, as a link names it. */
export interface PageLink {
  readonly title: string;
  readonly href: string;
}

/** More pages than these say no more. */
const mostPages = 3;

const listed = (pages: readonly PageLink[]): string =>
  pages
    .slice(0, mostPages)
    .map(({ title, href }) => `<a href="${href}">${title}</a>`)
    .join(", ");

/** `title` is the block's first line, `inner` what stands in it; `ids` are the names that the page has given already. */
export function wordHtml(
  title: string,
  inner: string,
  uses: ReadonlyMap<string, readonly PageLink[]>,
  ids: Set<string>,
): string {
  const [forms = "", ...signs] = titleParts(title);
  const name = forms.split(",")[0]?.trim() ?? "";
  const id = idOf(name);
  ids.add(id);
  const said = signs.filter(Boolean).join(" · ");
  const sign = said ? ` <span class="word-sign">${said}</span>` : "";
  const pages = uses.get(id) ?? [];
  const where = pages.length > 0 ? `<p class="word-where">Met on ${listed(pages)}</p>\n` : "";
  return `<section class="word" id="${id}">\n<h3>${name}${sign}</h3>\n${inner}${where}</section>\n`;
}
