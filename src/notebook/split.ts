/** Takes a notebook's text apart: cells, values and formulas on one side, prose on the other. Nothing is changed. */
import { parseSync } from "vite";
import type { Fault } from "./fault.ts";
import { type Front, readFront } from "./front.ts";

/** A stretch of the text, `start` to `end`; `inner` is what stands between its marks. */
export interface Piece {
  /**
   * `prose`, and `verbatim` for code that is only shown; `cell` is a block fenced with ```ts, `value` is `{= ... }`,
   * `formula` is `$...$` and `display` is `$$...$$`.
   */
  readonly kind: "prose" | "verbatim" | "cell" | "value" | "formula" | "display";
  readonly start: number;
  readonly end: number;
  readonly inner: { readonly start: number; readonly end: number };
}

export interface Split {
  readonly text: string;
  readonly front: Front;
  /** All pieces after the head, in order and without gaps. */
  readonly pieces: readonly Piece[];
  readonly faults: readonly Fault[];
}

const whole = (kind: Piece["kind"], start: number, end: number): Piece => ({ kind, start, end, inner: { start, end } });

export function split(text: string): Split {
  const head = readFront(text);
  const pieces: Piece[] = [];
  const faults: Fault[] = [...head.faults];
  let at = head.end;
  for (const fence of fences(text, head.end, faults)) {
    if (fence.start > at) splitProse(text, at, fence.start, pieces, faults);
    pieces.push(fence);
    at = fence.end;
  }
  if (at < text.length) splitProse(text, at, text.length, pieces, faults);
  return { text, front: head.front, pieces, faults };
}

/** Fenced blocks, from the opening line to the end of the closing one. */
function fences(text: string, from: number, faults: Fault[]): Piece[] {
  const found: Piece[] = [];
  let open: { start: number; inner: number; mark: string; cell: boolean } | null = null;
  let at = from;
  for (const line of text.slice(from).split("\n")) {
    const end = Math.min(at + line.length + 1, text.length);
    const [, indent = "", mark, words = ""] = /^(\s*)(`{3,}|~{3,})\s*([^`]*?)\s*$/.exec(line) ?? [];
    if (mark && !open) {
      open = { start: at, inner: end, mark, cell: words === "ts" };
      if (words === "ts" && indent)
        faults.push({ at, words: "The fence of a cell starts at the beginning of its line." });
    } else if (mark && open && words === "" && mark.startsWith(open.mark)) {
      const inner = { start: open.inner, end: at };
      found.push({ kind: open.cell ? "cell" : "verbatim", start: open.start, end, inner });
      open = null;
    }
    at = end;
  }
  if (open) {
    faults.push({ at: open.start, words: `This block has no end: a line with '${open.mark}' is missing.` });
    found.push(whole("verbatim", open.start, text.length));
  }
  return found;
}

// In this order: what a backslash protects, code spans, both kinds of formula, the start of a value.
const marks =
  /\\[\s\S]|(?<tick>`+)(?!`)(?:(?!\n[ \t]*\r?\n)[\s\S])*?(?<!`)\k<tick>(?!`)|\$\$(?<display>(?:\\[\s\S]|[^$\\])+)\$\$|\$(?![\s$])(?<formula>(?:\\[\s\S]|[^$\\\n]|\n(?![ \t]*\r?\n))+?)(?<!\s)\$(?!\d)|\{=/g;

function splitProse(text: string, from: number, to: number, pieces: Piece[], faults: Fault[]): void {
  const prose = text.slice(from, to);
  let at = 0;
  marks.lastIndex = 0;
  for (let mark = marks.exec(prose); mark; mark = marks.exec(prose)) {
    const piece = markedPiece(prose, mark, faults, from);
    if (!piece) continue;
    if (mark.index > at) pieces.push(whole("prose", from + at, from + mark.index));
    const { kind, start, end, inner } = piece;
    pieces.push({
      kind,
      start: from + start,
      end: from + end,
      inner: { start: from + inner.start, end: from + inner.end },
    });
    at = end;
    marks.lastIndex = end;
  }
  if (at < prose.length) pieces.push(whole("prose", from + at, to));
}

function markedPiece(prose: string, mark: RegExpExecArray, faults: Fault[], from: number): Piece | null {
  const start = mark.index;
  const { display, formula, tick } = mark.groups ?? {};
  const end = start + mark[0].length;
  if (mark[0] === "{=") return value(prose, start, faults, from);
  if (tick !== undefined) return whole("verbatim", start, end);
  if (display !== undefined) return { kind: "display", start, end, inner: { start: start + 2, end: end - 2 } };
  if (formula !== undefined) return { kind: "formula", start, end, inner: { start: start + 1, end: end - 1 } };
  return null;
}

/** A value ends at the first `}` that makes what stands before it one expression; it stays within its paragraph. */
function value(prose: string, start: number, faults: Fault[], from: number): Piece | null {
  const rest = prose.slice(start);
  const limit = start + (/\n[ \t]*\r?\n/.exec(rest)?.index ?? rest.length);
  for (let end = prose.indexOf("}", start); end !== -1 && end < limit; end = prose.indexOf("}", end + 1)) {
    if (isExpression(prose.slice(start + 2, end))) {
      return { kind: "value", start, end: end + 1, inner: { start: start + 2, end } };
    }
  }
  faults.push({ at: from + start, words: "This value is not '{= ... }' with one whole expression inside." });
  return null;
}

function isExpression(code: string): boolean {
  const { program, errors } = parseSync("value.ts", `(${code})`, { sourceType: "module" });
  return errors.length === 0 && program.body.length === 1 && program.body[0]?.type === "ExpressionStatement";
}
