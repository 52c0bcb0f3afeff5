import { SourceMap } from "node:module";
import { transformWithOxc } from "vite";
import { describe, expect, it } from "vitest";
import type { CellRecord } from "../../src/notebook/record.ts";
import { compiled, fenced, head } from "./notebook.ts";

/** The records of a notebook, as they come out of the whole way from Markdown to a loaded module. */
async function recordsOf(body: string): Promise<CellRecord[]> {
  const { code } = await transformWithOxc(compiled(body).code, "cells.ts");
  const module = await import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(code)}`);
  return module.records;
}
const run = (record: CellRecord | undefined, ...needs: unknown[]) => record?.run(...(needs as never[]));

describe("a cell's record", () => {
  it("says where it stands, what it needs, gives and shows", async () => {
    const body = `{= machine }\n\n${fenced("const { a, b } = machine; const f = () => a;\nf() + c;", "const c: number = 1;")}`;
    const records = await recordsOf(body);
    expect(records.map(({ run: _, ...rest }) => rest)).toEqual([
      { id: "value-1", line: 6, needs: ["machine"], gives: [], shows: true },
      { id: "cell-2", line: 8, needs: ["machine", "c"], gives: ["a", "b", "f"], shows: true },
      { id: "cell-3", line: 13, needs: [], gives: ["c"], shows: false },
    ]);
  });

  it("runs to what it shows and gives", async () => {
    const [value, cell, silent] = await recordsOf(
      `{= { b: machine }.b }\n\n${fenced("const a: number = machine + 1;\n[a].map((x) => x * 2)", "const c = 2; let d = 3;")}`,
    );
    expect(run(value, 5)).toEqual([5]);
    expect(run(cell, 5)).toEqual([[12], 6]);
    expect(run(silent)).toEqual([undefined, 2, 3]);
  });

  it.each([
    ["a comment behind the last expression", "7 // why", [7]],
    ["a comment behind its semicolon", "7; // why", [7]],
    ["a comment line at the end", "7;\n// why", [7]],
    ["two expressions in one", "6, 7", [7]],
    ["an object in brackets", "({ a: 7 })", [{ a: 7 }]],
    ["words that look like a directive", '"use this"', ["use this"]],
    ["a function that is called above", "f();\nfunction f() { return 7; }\nf();", [7, expect.any(Function)]],
  ])("takes %s", async (_, code, result) => {
    expect(run((await recordsOf(fenced(code)))[0])).toEqual(result);
  });

  it("waits where the cell does", async () => {
    const [cell] = await recordsOf(fenced("const a = await Promise.resolve(1);\na + 1;"));
    expect(run(cell)).toBeInstanceOf(Promise);
    await expect(run(cell)).resolves.toEqual([2, 1]);
  });

  it("has the imports of every cell before it", () => {
    const { code } = compiled(fenced('import { f } from "#kit";\nf();', 'import type { T } from "#kit";\nimport "x";'));
    expect(code.split("\n").slice(0, 4)).toEqual([
      'import { f } from "#kit";',
      'import type { T } from "#kit";',
      'import "x";',
      "export const records = [",
    ]);
  });

  it("makes an empty list for a notebook without cells", async () => {
    expect(await recordsOf("Only words.")).toEqual([]);
  });
});

describe("the map back to the notebook", () => {
  it("leads from the code to its line and column in the Markdown file", () => {
    const body = `Prose {= machine.x } more\n\n${fenced('import { f } from "#kit";\nconst a = f(1);\n  throwing(a);', "const throwing = f;")}`;
    const { code, map } = compiled(body);
    const text = head + body;
    const source = new SourceMap(JSON.parse(map.toString()));
    const position = (of: string, at: number) => {
      const lines = of.slice(0, at).split("\n");
      return [lines.length - 1, lines.at(-1)?.length ?? 0] as const;
    };
    for (const part of ["machine.x }", "f(1)", "throwing(a)", "const throwing", '"#kit"']) {
      const bare = part.replace(" }", "");
      const found = source.findEntry(...position(code, code.lastIndexOf(bare)));
      expect(found).toMatchObject({ originalSource: "01-test.md" });
      const { originalLine, originalColumn } = found as { originalLine: number; originalColumn: number };
      expect([originalLine, originalColumn]).toEqual(position(text, text.lastIndexOf(part)));
    }
  });
});
