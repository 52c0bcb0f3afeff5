import { describe, expect, it } from "vitest";
import { cellsOf, fenced, head } from "./notebook.ts";

const names = (list: readonly { name: string }[] | undefined) => list?.map(({ name }) => name);
const only = (code: string) => cellsOf(fenced(code))[0];

describe("what a cell gives", () => {
  it.each([
    ["const a = 1;", ["a"]],
    ["let a = 1, b: number;", ["a", "b"]],
    ["function f() { const inner = 1; return inner; }", ["f"]],
    ["async function f() {}", ["f"]],
    ["class K {}", ["K"]],
    ["const { a, b: { c }, ...rest } = o;", ["a", "c", "rest"]],
    ["const [a, , b = 2, ...c] = o;", ["a", "b", "c"]],
    ["{ const hidden = 1; let also = 2; }", []],
    ["for (let i = 0; i < 3; i++) { const x = i; }", []],
    ["interface I { a: number } type T = I;", []],
    ['import { a } from "#kit";', []],
    ["enum E { A }", ["E"]],
    ["function f(a: string): void;\nfunction f(a: unknown) {}", ["f"]],
  ])("%s", (code, gives) => {
    expect(names(only(code)?.gives)?.toSorted()).toEqual(gives.toSorted());
  });
});

describe("what a cell needs", () => {
  it.each([
    ["a + b.c + d[e];", ["a", "b", "d", "e"]],
    ["const a = 1; a + b;", ["b"]],
    ['import { f } from "#kit"; f(a);', ["a"]],
    ["const f = (x, { y, z: [w] }, ...r) => x + y + w + r + g;", ["g"]],
    ["const f = (x = y) => { var z = x; { let q = z; q; } return u; };", ["y", "u"]],
    ["const o = { a, b: c, [d]: 1, m() { return e; } };", ["a", "c", "d", "e"]],
    ["o.a.b;", ["o"]],
    ["`${a} ${`${b}`}`;", ["a", "b"]],
    ["class K extends B { x = m; static s = n; get g() { return this.x; } }", ["B", "m", "n"]],
    ["try { a; } catch (e) { e; }", ["a"]],
    ["label: for (const x of xs) { if (x) continue label; }", ["xs"]],
    ["a?.b!.c as unknown as T satisfies U;", ["a"]],
    ["const x: Machine = y; type Z = W; function g<T extends V>(t: T): t is T { return h; }", ["y", "h"]],
    ["const f = function g() { return g; };", []],
    ["const f = () => later; const later = 1;", []],
    ["{ const a = 1; a; } a;", ["a"]],
    ["a; a; a;", ["a"]],
    ["if (typeof a === 'string') b(c);", ["a", "b", "c"]],
  ])("%s", (code, needs) => {
    expect(names(only(code)?.needs)).toEqual(needs);
  });

  it("is named where it is used first", () => {
    const body = `ä {= x }\n\n${fenced("const y = 1;\nx + z + x;")}`;
    const [value, cell] = cellsOf(body);
    expect(value?.needs).toEqual([{ name: "x", at: (head + body).indexOf("x }") }]);
    expect(cell?.needs).toEqual([
      { name: "x", at: (head + body).indexOf("x + z + x") },
      { name: "z", at: (head + body).indexOf("z + x") },
    ]);
  });

  it("is what another cell gives, even in one further up", () => {
    const [first, second] = cellsOf(fenced("a + 1;", "const a = 1;"));
    expect(names(first?.needs)).toEqual(["a"]);
    expect(names(second?.needs)).toEqual([]);
  });

  it("leaves imports out, in whichever cell they stand", () => {
    const [first, second] = cellsOf(fenced("f(1);", 'import { f, type T } from "#kit"; const x: T = 1;'));
    expect(names(first?.needs)).toEqual([]);
    expect(second?.imports).toHaveLength(1);
  });
});

describe("what a cell shows", () => {
  const shown = (code: string) => {
    const body = fenced(code, "const next = 1;");
    const range = cellsOf(body)[0]?.shows;
    return range ? (head + body).slice(range.start, range.end) : null;
  };

  it.each([
    ["const a = 1; plot(a);", "plot(a);"],
    ["plot(1)", "plot(1)\n"],
    ["plot(1) // why", "plot(1) // why\n"],
    ["(a).b;", "(a).b;"],
    ["`words`", "`words`\n"],
  ])("%s: its last bare expression", (code, text) => {
    expect(shown(code)).toBe(text);
  });

  it.each(["const a = 1;", "plot(1); const a = 1;", "if (a) plot(a);", "function f() {}", "// nothing"])(
    "%s: nothing",
    (code) => {
      expect(shown(code)).toBeNull();
    },
  );

  it("is all of a value", () => {
    const cell = cellsOf("{= a + 1 }")[0];
    expect(cell?.shows).toEqual(cell?.piece.inner);
  });
});

describe("whether a cell waits", () => {
  it.each([
    ["const a = await b;", true],
    ["for await (const x of xs) x;", true],
    ["const f = async () => await b;", false],
    ["async function f() { await b; }", false],
    ["class K { async m() { await b; } }", false],
    ["b;", false],
  ])("%s", (code, waits) => {
    expect(only(code)?.waits).toBe(waits);
  });
});
