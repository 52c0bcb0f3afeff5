import { dirname, join } from "node:path/posix";
import { describe, expect, it } from "vitest";
import { filesBelow, importsOf, parse, place, type Source } from "../support/source.ts";

/**
 * The rooms of src, lowest first. A room may import itself and those that its line names. `node` marks rooms that run
 * on the author's machine only and so may use Node's own modules and the tools of the build.
 */
const rooms: Record<string, { readonly uses: readonly string[]; readonly node?: boolean }> = {
  model: { uses: [] },
  validation: { uses: ["model"] },
  machine: { uses: ["model"] },
  figures: { uses: ["model", "machine"] },
  flights: { uses: ["model", "machine", "figures"] },
  worker: { uses: ["model", "machine", "figures", "flights"] },
  exercises: { uses: ["model", "machine", "figures"] },
  view: { uses: ["model", "machine", "figures"] },
  inputs: { uses: ["model", "machine", "figures", "view"] },
  plots: { uses: ["model", "machine", "figures", "view"] },
  blocks: {
    uses: ["model", "validation", "machine", "figures", "flights", "worker", "exercises", "view", "inputs", "plots"],
  },
  look: { uses: [], node: true },
  offline: { uses: [], node: true },
  "kit.ts": {
    uses: ["model", "machine", "figures", "flights", "worker", "exercises", "view", "inputs", "plots", "blocks"],
  },
  notebook: { uses: ["view", "machine", "figures"], node: true },
  shell: {
    uses: ["model", "machine", "figures", "exercises", "view", "inputs", "plots", "blocks", "kit.ts", "notebook"],
  },
  command: { uses: ["model", "validation", "machine", "figures"], node: true },
};

const roomOf = (path: string): string => path.split("/")[1] ?? "";

/** The file of ours that an import means, or null for a package. */
function target(path: string, from: string): string | null {
  if (from.startsWith(".")) return join(dirname(path), from.replace(/\?.*$/, ""));
  if (from.startsWith("#")) return `src/${from.slice(1)}.ts`;
  return null;
}

/** Each import of a file that its room may not make, in words. */
function strays(source: Source): string[] {
  const room = roomOf(source.path);
  const rule = rooms[room];
  if (!rule) return [`${source.path}: there is no room ${room} in the order of rooms`];
  return importsOf(source).flatMap(({ from, start }) => {
    const at = place(source, start);
    const file = target(source.path, from);
    if (file === null) return from.startsWith("node:") && !rule.node ? [`${at} uses ${from} in the browser`] : [];
    if (!file.startsWith("src/")) return [`${at} leaves src for ${from}`];
    const other = roomOf(file);
    if (other === room) return [];
    if (from.startsWith(".")) return [`${at} goes to ${other} by a relative path: use #${other}`];
    return rule.uses.includes(other) ? [] : [`${at}: ${room} may not use ${other}`];
  });
}

/** A chain of files that import each other in a circle (types aside), or null. */
function circle(sources: readonly Source[]): string[] | null {
  const edges = new Map(
    sources.map((source) => [
      source.path,
      importsOf(source).flatMap((i) => (i.typesOnly ? [] : (target(source.path, i.from) ?? []))),
    ]),
  );
  const done = new Set<string>();
  const walk = (path: string, trail: string[]): string[] | null => {
    if (trail.includes(path)) return [...trail.slice(trail.indexOf(path)), path];
    if (done.has(path)) return null;
    for (const next of edges.get(path) ?? []) {
      const found = walk(next, [...trail, path]);
      if (found) return found;
    }
    done.add(path);
    return null;
  };
  for (const path of edges.keys()) {
    const found = walk(path, []);
    if (found) return found;
  }
  return null;
}

describe("imports run one way", () => {
  const sources = filesBelow("src", ".ts").map((path) => parse(path));

  it("in every file of src", () => {
    expect(sources.length).toBeGreaterThan(0);
    expect(sources.flatMap(strays)).toEqual([]);
  });

  it("and never in a circle", () => {
    expect(circle(sources)).toBeNull();
  });

  it.each([
    ["upwards", 'import { a } from "#machine/a";'],
    ["upwards for a type", 'import type { A } from "#machine/a";'],
    ["upwards on demand", 'const a = () => import("#machine/a");'],
    ["upwards by passing on", 'export * from "#machine/a";'],
    ["upwards as a type's own import", 'export type A = import("#machine/a").A;'],
    ["upwards as a worker", 'const w = new Worker(new URL("../machine/a.ts", import.meta.url));'],
    ["sideways by a relative path", 'import { a } from "../machine/a.ts";'],
    ["out of src", 'import { a } from "../../tests/a.ts";'],
    ["into Node", 'import { readFileSync } from "node:fs";'],
  ])("notices an import %s", (_, text) => {
    expect(strays(parse("src/model/planted.ts", text))).toHaveLength(1);
  });

  it("lets a room use itself, what lies below it, and packages", () => {
    const text = 'import { a } from "./a.ts"; import { b } from "#model/b/c"; import { c } from "valibot";';
    expect(strays(parse("src/machine/planted.ts", text))).toEqual([]);
  });

  it("notices a circle of files, and lets types close one", () => {
    const a = parse("src/model/a.ts", 'import { b } from "./b.ts";');
    expect(circle([a, parse("src/model/b.ts", 'import { a } from "./a.ts";')])).toHaveLength(3);
    expect(circle([a, parse("src/model/b.ts", 'import type { A } from "./a.ts";')])).toBeNull();
  });
});
