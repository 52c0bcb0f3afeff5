import { describe, expect, it } from "vitest";
import { fenced, head, inners, splitBody } from "./notebook.ts";

describe("taking a notebook apart", () => {
  it("loses nothing: the pieces follow each other without gaps", () => {
    const body = `Words {= a } and $x$.\n\n${fenced("const a = 1;")}\n\`\`\`text\n{= no }\n\`\`\`\n$$y$$ end`;
    const { pieces, text } = splitBody(body);
    expect(pieces[0]?.start).toBe(head.length);
    for (const [i, piece] of pieces.entries()) expect(piece.start).toBe(pieces[i - 1]?.end ?? head.length);
    expect(pieces.at(-1)?.end).toBe(text.length);
    expect(pieces.map(({ kind }) => kind)).toEqual([
      "prose",
      "value",
      "prose",
      "formula",
      "prose",
      "cell",
      "prose",
      "verbatim",
      "display",
      "prose",
    ]);
  });

  it.each([
    ["{= a }", " a "],
    ["{={ b: 2 }.b}", "{ b: 2 }.b"],
    ['{= say("}") }', ' say("}") '],
    ["{= `${a}}` }", " `${a}}` "],
    ["{= /}/.test(a) }", " /}/.test(a) "],
    ["{= a // }\n }", " a // }\n "],
    ["{= list.map((x) => { return x; }) }", " list.map((x) => { return x; }) "],
  ])("finds the end of %s", (value, inner) => {
    const parts = splitBody(`Before ${value} after } that.`);
    expect(parts.faults).toEqual([]);
    expect(inners(parts, "value")).toEqual([inner]);
  });

  it.each(["{= }", "{= a", "{= a; b }", "{= const a = 1 }", "{= a +\n\nb }", "{= a) + (b; c }"])(
    "refuses the value %s where it stands",
    (value) => {
      const parts = splitBody(`Before ${value}`);
      expect(parts.faults).toEqual([{ at: head.length + 7, words: expect.stringContaining("{= ... }") }]);
      expect(inners(parts, "value")).toEqual([]);
    },
  );

  it("tells formulas from money, and from what a backslash protects", () => {
    const parts = splitBody("It costs $5-$6, but $K_v$ and $a\\$b$ are \\$not$ it; $$\nx^2\n$$");
    expect(inners(parts, "formula")).toEqual(["K_v", "a\\$b"]);
    expect(inners(parts, "display")).toEqual(["\nx^2\n"]);
  });

  it("leaves code that is only shown alone", () => {
    const parts = splitBody("`{= a } $x$` and ``a ` {= b }``\n\n~~~ts-like\n{= c }\n~~~\n{= d }");
    expect(inners(parts, "value")).toEqual([" d "]);
    expect(inners(parts, "formula")).toEqual([]);
  });

  it("takes as cells what is fenced as ts, and ends a fence at one as long", () => {
    const parts = splitBody("````ts\nconst a = `\n```\n`;\n````\n\n```js\nb\n```\n");
    expect(inners(parts, "cell")).toEqual(["const a = `\n```\n`;\n"]);
    expect(inners(parts, "verbatim")).toEqual(["b\n"]);
  });

  it("names a fence without an end, and a cell that doesn't start its line", () => {
    expect(splitBody("Words\n```ts\nconst a = 1;\n").faults).toEqual([
      { at: head.length + 6, words: "This block has no end: a line with '```' is missing." },
    ]);
    expect(splitBody("- item\n  ```ts\n  a\n  ```\n").faults).toEqual([
      { at: head.length + 7, words: expect.stringContaining("beginning of its line") },
    ]);
  });
});
