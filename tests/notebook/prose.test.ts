import { describe, expect, it } from "vitest";
import { unbroken } from "#view/text";
import { compiled, faultsOf, fenced } from "./notebook.ts";

const html = (body: string) => compiled(body).html;

describe("prose", () => {
  it("has a place for each cell and each value, also inside of other marks", () => {
    const body = `One *{= 1 }*, **{= 2 }**\n\n| a |\n|---|\n| {= 3 } |\n\n## Of {= 4 }\n\n- x {= 5 }\n\n${fenced("6;")}`;
    const set = html(body);
    expect(set).toContain(
      '<em><span data-cell="value-1"></span></em>, <strong><span data-cell="value-2"></span></strong>',
    );
    expect(set).toContain('<td><span data-cell="value-3"></span></td>');
    expect(set).toContain('<h2 id="of">Of <span data-cell="value-4"></span></h2>');
    expect(set).toContain('<li>x <span data-cell="value-5"></span></li>');
    expect(set).toContain('\n<div data-cell="cell-6"></div>');
    expect(set).not.toMatch(/[\uE000\uE001]/);
  });

  it("puts a cell between paragraphs even when no blank lines stand around it", () => {
    expect(html(`Above\n${fenced("1;")}Below`)).toBe('<p>Above</p>\n<div data-cell="cell-1"></div>\n<p>Below</p>\n');
  });

  it("gives every heading a name of its own", () => {
    const set = html("## What it isn't\n\n## What, it isn't\n\n## Über 70 %\n\n## ?");
    expect([...set.matchAll(/id="([^"]*)"/g)].map(([, id]) => id)).toEqual([
      "what-it-isnt",
      "what-it-isnt-2",
      "über-70",
      "part",
    ]);
  });

  it("shows code that is no cell", () => {
    expect(html("```text\n{= a } < $x$\n```")).toContain("{= a } &lt; $x$");
  });
});

describe("formulas", () => {
  it("are MathML and nothing else, in the line or on their own", () => {
    const set = html("With $a_1 * b * c$ and\n\n$$\\frac{1}{2} \\text{ of } \\sqrt{x}$$");
    expect(set).toMatch(/<p>With <math[^>]*><mrow>.*<\/math> and<\/p>/);
    expect(set).toMatch(/<math[^>]* display="block"><mrow><mfrac>/);
    expect(set).not.toMatch(/ style=|annotation|class="katex|<em>/);
  });

  it("that can't be set are faults at their place", () => {
    expect(faultsOf("Good $a$.\n\nBad $\\frac{1$ and $\\nosuch$.")).toEqual([
      expect.stringMatching(/^3:5: This formula can't be set: /),
      expect.stringMatching(/^3:19: This formula can't be set: .*nosuch/),
    ]);
  });

  it("may hold nothing that needs a style attribute", () => {
    expect(faultsOf("$\\fcolorbox{red}{blue}{x}$")).toEqual([
      expect.stringContaining("it would need a style attribute"),
    ]);
    expect(html("$$\\boxed{x} \\begin{cases}a&b\\\\c&d\\end{cases} \\cancel{x}$$")).not.toContain(" style=");
  });
});

describe("blocks", () => {
  it("stand apart, with prose, lists and cells in them", () => {
    const set = html(`:::caution\n**Mind** {= 1 }.\n\n- one\n\n${fenced("2;")}:::\n\nAfter`);
    expect(set).toBe(
      '<aside class="caution">\n<p><strong>Mind</strong> <span data-cell="value-1"></span>.</p>\n<ul>\n<li>one</li>\n</ul>\n' +
        '<div data-cell="cell-2"></div>\n</aside>\n<p>After</p>\n',
    );
  });

  it("can be folded away under a title", () => {
    expect(html(":::fold How *it* works\nWords.\n:::\n")).toBe(
      '<details class="fold">\n<summary>How <em>it</em> works</summary>\n<p>Words.</p>\n</details>\n',
    );
    const told = ["What it is for", "In 10 minutes", "In 45 minutes", "Ask the room"].map(
      (name) => `**${name}.** Words.`,
    );
    const fold = `:::teacher For class\n${told.join("\n\n")}\n\n**As a learner says it.** "So."\n:::\n`;
    expect(html(fold)).toContain('<details class="teacher">');
    expect(html(":::side\nWords.\n:::\n")).toContain('<aside class="side">');
  });

  it.each([
    [":::shout\nWords.\n:::", "1:1: There is no block 'shout': there are caution, side, fold, teacher, word."],
    [":::caution\nWords.", "1:1: This block has no end: a line with ':::' is missing."],
    ["Words.\n\n:::", "3:1: This ':::' ends no block."],
    [":::fold\nWords.\n:::", "1:1: A block 'fold' is folded away, so it needs a title: ':::fold Title'."],
    [":::caution Now\nWords.\n:::", "1:1: A block 'caution' takes no title: its words start on the next line."],
    [
      ":::side\n:::caution\nWords.\n:::\n:::",
      "2:1: A block stands in no other block: end that one first with a line ':::'.",
    ],
  ])("%j is a fault", (body, words) => {
    expect(faultsOf(body)[0]).toBe(words);
  });

  it("are not looked for in code", () => {
    expect(faultsOf("```text\n:::shout\n```")).toEqual([]);
  });
});

describe("markup in prose", () => {
  it.each([
    "<script>1</script>",
    '<b style="color: red">x</b>',
    '<b onclick="f()">x</b>',
    "<iframe></iframe>",
    "<style>a{}</style>",
  ])("%s is refused", (markup) => {
    expect(faultsOf(`Words.\n\n${markup}`)[0]).toMatch(/^3:1: Prose brings no scripts/);
  });

  it("that is harmless stays", () => {
    expect(html("a<sub>b</sub> & c")).toBe("<p>a<sub>b</sub> &amp; c</p>\n");
  });
});

describe("numbers and their units", () => {
  it("stay together at the end of a line, and words are left alone", () => {
    expect(unbroken("70 % of 2,000 rpm, 5 A and 12 apples")).toBe(
      "70\u00a0% of 2,000\u00a0rpm, 5\u00a0A and 12 apples",
    );
  });
});
