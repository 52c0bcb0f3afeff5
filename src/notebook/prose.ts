/** Sets a notebook's prose as HTML, with a place for each cell. Formulas become MathML, which needs no script. */
import katex from "katex";
import { Marked, type TokenizerAndRendererExtension } from "marked";
import { unbroken } from "#view/text";
import type { Fault } from "./fault.ts";
import type { Piece, Split } from "./split.ts";
import { type PageLink, wordHtml } from "./word-block.ts";

export interface Prose {
  readonly html: string;
  readonly faults: readonly Fault[];
}

// Two characters of no alphabet stand around the number of a piece while the prose is set: to Markdown it is a word.
const [open, close] = ["\uE000", "\uE001"];
const holder = new RegExp(`${open}(\\d+)${close}`, "g");
const alone = new RegExp(`<p>${open}(\\d+)${close}</p>`, "g");

/**
 * `places` gives for each cell or value the `data-cell` of its place; `uses`, for a page that explains words, the pages on
 * which each of them is met.
 */
export function setProse(
  split: Split,
  places: ReadonlyMap<Piece, string>,
  uses: ReadonlyMap<string, readonly PageLink[]> = new Map(),
): Prose {
  const { text, pieces } = split;
  const faults: Fault[] = [];
  const held: string[] = [];
  let markdown = "";
  for (const piece of pieces) {
    const inner = text.slice(piece.inner.start, piece.inner.end);
    if (piece.kind === "prose" || piece.kind === "verbatim") {
      const words = text.slice(piece.start, piece.end);
      markdown += piece.kind === "prose" ? unbroken(words) : words;
      continue;
    }
    const word = `${open}${held.length}${close}`;
    markdown += piece.kind === "cell" ? `\n\n${word}\n\n` : word;
    const place = places.get(piece) ?? "";
    if (piece.kind === "cell") held.push(`<div data-cell="${place}"></div>`);
    else if (piece.kind === "value") held.push(`<span data-cell="${place}"></span>`);
    else held.push(formula(inner, piece, faults));
  }
  const html = marked(uses)
    .parse(markdown, { async: false })
    .replace(alone, (whole, i: string) => (held[Number(i)]?.startsWith("<div") ? `${held[Number(i)]}` : whole))
    .replace(holder, (_, i: string) => held[Number(i)] ?? "");
  faults.push(...proseFaults(split));
  return { html, faults };
}

function formula(tex: string, { kind, start }: Piece, faults: Fault[]): string {
  try {
    const set = katex.renderToString(tex, { output: "mathml", displayMode: kind === "display", strict: "error" });
    if (set.includes(' style="')) throw new Error("it would need a style attribute, which the site's policy forbids.");
    // The words for a screen reader are the MathML itself; the TeX beside it would only be read aloud as well.
    return (
      set
        .replace(/^<span class="katex[^>]*">|<\/span>$/g, "")
        .replace(/<semantics>|<\/semantics>|<annotation[\s\S]*?<\/annotation>/g, "")
        // A long one scrolls on a phone, and keys must be able to scroll it.
        .replace(/^<math (?=[^>]*display="block")/, '<math tabindex="0" ')
    );
  } catch (error) {
    const words = error instanceof Error ? error.message.replace(/^KaTeX parse error: /, "") : String(error);
    faults.push({ at: start, words: `This formula can't be set: ${words}` });
    return "";
  }
}

/** The blocks that an author can fence with `:::`, and whether their first line names them. */
const blocks: Record<string, { readonly titled: boolean }> = {
  caution: { titled: false },
  side: { titled: false },
  fold: { titled: true },
  teacher: { titled: true },
  word: { titled: true },
};

const refused = /<(?:script|style|iframe|object|embed|form|base)\b|<[a-z][^>]*\s(?:style|on[a-z]+)\s*=/gi;

const fence = /^:::[ \t]*(\w*)[ \t]*([^\n]*)$/gm;

type Uses = ReadonlyMap<string, readonly PageLink[]>;

const block = (uses: Uses, ids: Set<string>): TokenizerAndRendererExtension => ({
  name: "block",
  level: "block",
  start: (source) => /^:::\w/m.exec(source)?.index,
  tokenizer(source) {
    const found = /^:::[ \t]*(\w+)[ \t]*([^\n]*)\n([\s\S]*?)\n:::[ \t]*(?:\n|$)/.exec(source);
    if (!found) return undefined;
    const [raw, tag, title = "", inner = ""] = found;
    const tokens = this.lexer.blockTokens(inner, []);
    return { type: "block", raw, tag, name: title, title: this.lexer.inlineTokens(title.trim()), tokens };
  },
  renderer(token) {
    const inner = this.parser.parse(token.tokens ?? []);
    const tag = String(token.tag);
    if (tag === "word") return wordHtml(String(token.name), inner, uses, ids);
    if (!blocks[tag]?.titled) return `<aside class="${tag}">\n${inner}</aside>\n`;
    const title = this.parser.parseInline(token.title);
    return `<details class="${tag}">\n<summary>${title}</summary>\n${inner}</details>\n`;
  },
});

function marked(uses: Uses): Marked {
  const ids = new Set<string>();
  return new Marked({
    extensions: [block(uses, ids)],
    renderer: {
      heading({ tokens, depth, text }) {
        return `<h${depth} id="${headingId(text, ids)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
      },
    },
  });
}

/** Letters and digits of the heading, joined by hyphens; a number behind it when the page has that one already. */
function headingId(text: string, taken: Set<string>): string {
  const words = text
    .replace(holder, " ")
    .replace(/['’]/g, "")
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu) ?? ["part"];
  const plain = words.join("-");
  let id = plain;
  for (let i = 2; taken.has(id); i++) id = `${plain}-${i}`;
  taken.add(id);
  return id;
}

/** Blocks that are unknown, lack a title, or don't end; and markup that the site's policy would refuse. */
function proseFaults({ text, pieces }: Split): Fault[] {
  const inProse = (at: number): boolean =>
    pieces.some(({ kind, start, end }) => kind === "prose" && at >= start && at < end);
  const faults: Fault[] = [];
  let standing: number | null = null;
  for (const { 1: tag = "", 2: title = "", index: at } of text.matchAll(fence)) {
    if (!inProse(at)) continue;
    const words =
      tag === "" ? (standing === null ? "This ':::' ends no block." : null) : openFault(tag, title, standing);
    if (words) faults.push({ at, words });
    standing = tag === "" ? null : at;
  }
  if (standing !== null) faults.push({ at: standing, words: "This block has no end: a line with ':::' is missing." });
  for (const { index: at } of text.matchAll(refused)) {
    if (inProse(at))
      faults.push({ at, words: "Prose brings no scripts, styles, frames, forms or handlers of its own." });
  }
  return faults;
}

function openFault(tag: string, title: string, standing: number | null): string | null {
  if (standing !== null) return "A block stands in no other block: end that one first with a line ':::'.";
  const kind = blocks[tag];
  if (!kind) return `There is no block '${tag}': there are ${Object.keys(blocks).join(", ")}.`;
  if (kind.titled && title === "") return `A block '${tag}' is folded away, so it needs a title: ':::${tag} Title'.`;
  if (!kind.titled && title !== "") return `A block '${tag}' takes no title: its words start on the next line.`;
  return null;
}
