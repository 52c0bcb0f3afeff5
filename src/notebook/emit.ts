/** Turns a notebook's cells into a TypeScript module that exports them as records, with a map back to the Markdown. */
import MagicString, { type SourceMap } from "magic-string";
import type { Cell } from "./cells.ts";
import { placeOf } from "./fault.ts";
import { needsOf } from "./graph.ts";
import type { Split } from "./split.ts";

export interface Emitted {
  readonly code: string;
  readonly map: SourceMap;
}

/** `ids` names the cells' places, in the order of `cells`; `file` is the notebook's name in the map. */
export function emit(
  file: string,
  split: Split,
  cells: readonly Cell[],
  ids: readonly string[],
  given: readonly string[],
): Emitted {
  const { text, pieces } = split;
  const code = new MagicString(text, { filename: file });
  const home = pieces[0]?.start ?? text.length;
  if (home > 0) code.remove(0, home);
  for (const { kind, start, end } of pieces) if (kind !== "cell" && kind !== "value") code.remove(start, end);
  for (const [i, cell] of cells.entries()) {
    const { piece, gives, shows, waits, imports } = cell;
    const { start, end, inner } = piece;
    const names = gives.map(({ name }) => name);
    const needs = needsOf(cell, cells, given);
    const fields = { id: ids[i] ?? "", line: placeOf(text, start).line, needs, gives: names, shows: shows !== null };
    const head = `${JSON.stringify(fields).slice(0, -1)}, ${waits ? "async " : ""}run(${needs.join(", ")}) {\n`;
    code.overwrite(start, inner.start, head);
    if (inner.end < end) code.remove(inner.end, end);
    if (shows) {
      const bare = text.slice(shows.start, shows.end).endsWith(";") ? shows.end - 1 : shows.end;
      code.appendRight(shows.start, "return [(").appendLeft(bare, `)${names.map((name) => `, ${name}`).join("")}]`);
      code.appendRight(inner.end, "\n} },\n");
    } else {
      code.appendRight(inner.end, `return [${["undefined", ...names].join(", ")}];\n} },\n`);
    }
    for (const { start: from, end: to } of imports) code.appendLeft(to, "\n").move(from, to, 0);
  }
  // After the imports, which are moved to the very beginning, before the first cell.
  code.prependRight(home, "export const records = [\n");
  code.append("];\n");
  return { code: code.toString(), map: code.generateMap({ source: file, includeContent: true, hires: "boundary" }) };
}
