import { parseSync } from "vite";
import { describe, expect, it } from "vitest";
import { blank } from "../../src/notebook/blank.ts";
import { fenced, head, splitBody } from "./notebook.ts";

const body = `Wörter über 🚁 {= first + 1 } und $a$.\r\n\n${fenced("const first: number = 1;\n  const second = first")}\n\nEnd {=second}.`;
const { text } = splitBody(body);
const code = blank(splitBody(body));

describe("a notebook with its prose blanked out", () => {
  it("keeps every line and every column", () => {
    expect(code.length).toBe(text.length);
    expect(code.replace(/[^\r\n]/g, "")).toBe(text.replace(/[^\r\n]/g, ""));
    for (const part of ["first + 1 ", "const first: number = 1;\n  const second = first", "second)"]) {
      expect(code.indexOf(part)).toBe(text.indexOf(part.replace(")", "}")));
    }
  });

  it("holds nothing but the code and what divides it", () => {
    expect(code.replace(/\s+/g, " ")).toBe(
      " ;( first + 1 ) ; const first: number = 1; const second = first ; ;(second) ",
    );
  });

  it("is a module of TypeScript", () => {
    expect(parseSync("a.ts", code).errors).toEqual([]);
  });

  it("keeps one cell's last statement from going on in the next", () => {
    const { program } = parseSync("a.ts", blank(splitBody(fenced("f", "(1)", "[2]", "`3`"))));
    const statements = program.body.filter(({ type }) => type === "ExpressionStatement");
    expect(statements).toHaveLength(4);
  });

  it("is blank where there is no code", () => {
    expect(blank({ ...splitBody(""), text: head }).trim()).toBe("");
  });
});
