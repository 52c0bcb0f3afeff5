import { beforeEach, describe, expect, it } from "vitest";
import { wordFinder } from "#blocks/word-finder";
import { wordQuiz } from "#blocks/word-quiz";
import { answer, answersNow } from "#view/answers";
import { mounted, plain, wordsOf } from "./mounted.ts";

const words = ["Duty", "Gain", "Governor", "Kv", "Pinion", "Sag"].map((name) => ({
  id: name.toLowerCase(),
  name,
  meaning: `What ${name} means.`,
}));
const quiz = () => wordQuiz(words, answersNow());

beforeEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
});

describe("which word is it?", () => {
  it("asks with one meaning for one of four words, the same for everybody", () => {
    const { ask, options, right } = quiz().state;
    expect(ask).toBe(`“${words.find(({ id }) => id === right)?.meaning}”`);
    expect(new Set(options.map(({ key }) => key)).size).toBe(4);
    expect(options.map(({ key }) => key)).toContain(right);
    expect(quiz().state).toEqual(quiz().state);
  });

  it("answers a wrong word with what that one means, and counts the right ones", () => {
    const { options, right, id } = quiz().state;
    const wrong = options.find(({ key }) => key !== right)!;
    answer(id, wrong.key);
    const page = mounted(quiz());
    expect(plain(page.one(".guess-reply").textContent)).toContain(
      `${wrong.says} is something else: “What ${wrong.says} means.”`,
    );
    expect(plain(page.one(".word-turn").textContent)).toContain("0 of 1 right");
    page.button("another word").click();
    const next = quiz();
    answer(next.state.id, next.state.right);
    page.update(quiz());
    expect(plain(page.one(".word-turn").textContent)).toContain("1 of 2 right");
    expect(wordsOf(quiz())).toContain("That's the word.");
  });

  it("goes through all words before one comes again, and its words change places", () => {
    const round = words.map((_, turn) => {
      answer("which-word turn", turn);
      return quiz().state;
    });
    expect(new Set(round.map(({ right }) => right)).size).toBe(words.length);
    expect(
      new Set(round.map(({ options, right }) => options.findIndex(({ key }) => key === right))).size,
    ).toBeGreaterThan(1);
  });

  it("can be asked with no word at all", () => {
    expect(wordQuiz([], {}).state.options).toEqual([]);
  });
});

describe("finding a word", () => {
  const page = () => {
    const page = mounted(wordFinder(words));
    for (const { id, name } of words) {
      const section = document.createElement("section");
      section.className = "word";
      section.id = id;
      section.textContent = `${name}: größe in rpm`;
      document.body.append(section);
    }
    const type = (text: string) => {
      const box = page.one<HTMLInputElement>("input");
      box.value = text;
      box.dispatchEvent(new Event("input"));
      return [...document.querySelectorAll<HTMLElement>("section.word")]
        .filter(({ hidden }) => !hidden)
        .map(({ id }) => id);
    };
    return { ...page, type };
  };

  it("narrows the entries to those that have all that is typed", () => {
    const { type, one } = page();
    expect(type("GOV")).toEqual(["governor"]);
    expect(plain(one("[role=status]").textContent)).toBe("1 of 6 words");
    expect(type("rpm pin")).toEqual(["pinion"]);
    expect(type("groß gain")).toEqual(["gain"]);
    expect(type("grÖße pin")).toEqual(["pinion"]);
  });

  it("says so when there is none, and shows all again", () => {
    const { type, one } = page();
    expect(type("zzz")).toEqual([]);
    expect(one("p").hidden).toBe(false);
    expect(type("")).toHaveLength(6);
    expect(one("p").hidden).toBe(true);
  });

  it("says which words there are", () => {
    expect(wordsOf(wordFinder(words))).toBe("Words explained here: Duty, Gain, Governor, Kv, Pinion, Sag.");
  });
});
