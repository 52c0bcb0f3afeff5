import { describe, expect, it } from "vitest";
import { NotebookError } from "../../src/notebook/fault.ts";
import { compiled, faultsOf, fenced } from "./notebook.ts";

describe("a notebook that hangs together", () => {
  it("has no faults, whatever the order of its cells", () => {
    const body = `{= c }\n\n${fenced("const c = b + 1;", "const b = machine + Math.PI;", "type T = Missing; b as T;")}`;
    expect(faultsOf(body)).toEqual([]);
  });

  it("may use a name of the language, but none of the browser", () => {
    expect(faultsOf("{= new Map(JSON.parse(String(Number.NaN))) }")).toEqual([]);
    for (const name of ["document", "window", "globalThis", "fetch", "localStorage", "eval"]) {
      expect(faultsOf(`{= ${name} }`)).toEqual([`1:4: '${name}' is declared nowhere in this notebook, nor imported.`]);
    }
  });
});

describe("a fault names its place and says in words", () => {
  it("a missing name, in a cell and in a value", () => {
    expect(faultsOf(`A {= nowhere } b\n\n${fenced("const a = 1;\nconst b = a + other;")}`)).toEqual([
      "1:6: 'nowhere' is declared nowhere in this notebook, nor imported.",
      "5:15: 'other' is declared nowhere in this notebook, nor imported.",
    ]);
  });

  it("a double name, in two cells and in one", () => {
    expect(faultsOf(fenced("const a = 1;", "let x = 2, a = 3;"))).toEqual([
      "6:12: 'a' is declared a second time in this notebook.",
    ]);
    expect(faultsOf(fenced("const a = 1;\nfunction a() {}"))).toEqual([
      "3:10: 'a' is declared a second time in this notebook.",
    ]);
    expect(faultsOf(fenced('import { a } from "#kit";', "const a = 1;"))).toHaveLength(1);
  });

  it("a name that is given to every notebook", () => {
    expect(faultsOf(fenced("const machine = 1;"))).toEqual([
      "2:7: 'machine' is given to every notebook; take another name.",
    ]);
  });

  it("a circle, once, with the names and lines that close it", () => {
    const cells = fenced("const a = c + 1;", "const b = a;", "const c = b;", "const d = a;");
    expect(faultsOf(cells)).toEqual([
      "2:11: These cells wait for each other in a circle: " +
        "they need 'c' (line 7), then 'b' (line 15), then 'a' (line 11).",
    ]);
  });

  it("two circles", () => {
    expect(faultsOf(fenced("const a = b;", "const b = a;", "const c = d;", "const d = c;"))).toHaveLength(2);
  });

  it("no circle where a cell uses its own name", () => {
    expect(faultsOf(fenced("const f = (n) => (n ? f(n - 1) : 0);"))).toEqual([]);
  });

  it("a name of another cell that is set", () => {
    expect(faultsOf(fenced("let a = 1; a = 2;", "a++;", "const f = () => { machine = 2; };"))).toEqual([
      "6:1: 'a' belongs to another cell: this one can read it, not set it.",
      "10:19: 'machine' belongs to another cell: this one can read it, not set it.",
    ]);
  });

  it("an export", () => {
    expect(faultsOf(fenced("export const a = 1;"))).toEqual([
      "2:1: A cell exports nothing: what it declares is there for all cells.",
    ]);
  });

  it("code that is none, in the cell that it stands in", () => {
    const faults = faultsOf(fenced("const a = {;", "const b = 1;", "const c = ;"));
    expect(faults.map((fault) => fault.slice(0, 29))).toEqual([
      "2:12: This is not TypeScript:",
      "10:11: This is not TypeScript",
    ]);
  });

  it("all of them at once, in the order of the file, and as Vite reads them", () => {
    try {
      compiled(`{= one }\n\n{= $two }\n\n:::nonsense\n:::\n`);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(NotebookError);
      const { message, loc, frame } = error as NotebookError;
      expect(message.split("\n").map((line) => line.slice(0, 28))).toEqual([
        "notebooks/01-test.md:6:4: 'o",
        "notebooks/01-test.md:8:4: '$",
        "notebooks/01-test.md:10:1: T",
      ]);
      expect(loc).toEqual({ file: "notebooks/01-test.md", line: 6, column: 3 });
      expect(frame).toContain("   6 | {= one }\n     |    ^\n");
    }
  });
});
