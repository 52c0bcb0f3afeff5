import { describe, expect, it } from "vitest";
import { readFront } from "../../src/notebook/front.ts";

const faults = (text: string) => readFront(text).faults.map(({ at, words }) => [at, words] as const);

describe("the head of a notebook", () => {
  it("gives title, question and minutes, in any order, and where it ends", () => {
    const text = "---\nminutes: 12\nquestion: Why: not?\ntitle: A title\n---\nProse";
    expect(readFront(text)).toEqual({
      front: { title: "A title", question: "Why: not?", minutes: 12 },
      end: text.indexOf("Prose"),
      faults: [],
    });
  });

  it("takes the line ends of another system", () => {
    const { front, faults } = readFront("---\r\ntitle: A\r\nquestion: B\r\nminutes: 3\r\n---\r\n");
    expect(front).toEqual({ title: "A", question: "B", minutes: 3 });
    expect(faults).toEqual([]);
  });

  it("says what is missing", () => {
    expect(faults("# No head")).toEqual([[0, expect.stringContaining("'---'")]]);
    expect(faults("---\ntitle: A\nminutes: 3\n---\n")).toEqual([[0, "The head of the notebook lacks 'question'."]]);
  });

  it.each([
    ["a field of another name", "author: me", "The head has no 'author': it has title, question, minutes."],
    ["a field twice", "title: B", "The head gives 'title' twice."],
    ["a line of another form", "just words", "A line of the head reads 'name: words'."],
    ["a field without words", "note:", "A line of the head reads 'name: words'."],
  ])("refuses %s, at its line", (_, line, words) => {
    const text = `---\ntitle: A\n${line}\nquestion: B\nminutes: 3\n---\n`;
    expect(faults(text)).toEqual([[text.indexOf(line), words]]);
  });

  it.each(["soon", "0", "2.5", "100", "-3"])("refuses %s minutes", (minutes) => {
    expect(faults(`---\ntitle: A\nquestion: B\nminutes: ${minutes}\n---\n`)[0]?.[1]).toContain("1 to 99");
  });
});
