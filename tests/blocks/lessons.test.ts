import { beforeEach, describe, expect, it } from "vitest";
import { eveningPlan } from "#blocks/evening-plan";
import { ideasOf, type Lesson, planOf } from "#blocks/lesson";
import { lessonList } from "#blocks/lesson-list";
import { answer, answersNow } from "#view/answers";
import { mounted, plain, wordsOf } from "./mounted.ts";

const lessons: Lesson[] = [1, 2, 3, 4, 5].map((number) => ({
  number,
  title: `Page ${number}`,
  question: "Q?",
  href: `./p${number}.html`,
  purpose: `To see ${number}.`,
  ideas: [`Idea ${number}.`, ...(number === 2 || number === 5 ? ["The shared one."] : [])],
  short: `Short ${number}.`,
  long: `Long ${number}.`,
  ask: [`Why ${number}?`],
}));
const steps = (minutes: number, idea: string) =>
  planOf(lessons, minutes, idea).map(({ lesson, way, minutes: takes }) => `${lesson.number} ${way} ${takes}`);

beforeEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
});

describe("an evening", () => {
  it("begins at the beginning when nothing was said", () => {
    expect(steps(35, "")).toEqual(["1 short 10", "2 short 10", "3 short 10"]);
  });

  it("gives the page that meets the idea the long way, then what comes before it, in reading order", () => {
    expect(steps(45, "idea 3")).toEqual(["3 long 45"]);
    expect(steps(65, "idea 3")).toEqual(["1 short 10", "2 short 10", "3 long 45"]);
    expect(steps(75, "idea 3")).toEqual(["1 short 10", "2 short 10", "3 long 45", "4 short 10"]);
  });

  it("takes the short way when time is short, and other pages with the same idea first", () => {
    expect(steps(40, "the shared one")).toEqual(["1 short 10", "2 short 10", "3 short 10", "5 short 10"]);
    expect(steps(20, "the shared one")).toEqual(["2 short 10", "5 short 10"]);
    expect(steps(5, "idea 3")).toEqual([]);
  });

  it("knows each idea once", () => {
    expect(ideasOf(lessons).map(({ says }) => says)).toEqual([
      "Idea 1.",
      "Idea 2.",
      "The shared one.",
      "Idea 3.",
      "Idea 4.",
      "Idea 5.",
    ]);
  });
});

describe("the plan on a page", () => {
  it("follows minutes and idea, with links to the pages and to their presenting view", () => {
    const page = mounted(eveningPlan(lessons, answersNow()));
    expect(plain(page.one(".plan-sum").textContent)).toBe("5 pages, 50 minutes in all.");
    const range = page.one<HTMLInputElement>("input");
    range.value = "55";
    range.dispatchEvent(new Event("input"));
    const select = page.one<HTMLSelectElement>("select");
    select.value = "idea 4";
    select.dispatchEvent(new Event("change"));
    const next = eveningPlan(lessons, answersNow());
    page.update(next);
    expect(page.all(".plan > li").map((item) => plain(item.textContent))).toEqual([
      "Page 3 10 min present itShort 3.",
      "Page 4 45 min present itShort 4.Long 4.",
    ]);
    expect(page.all<HTMLAnchorElement>(".plan a").map((a) => a.getAttribute("href"))).toEqual([
      "./p3.html",
      "./p3.html?present",
      "./p4.html",
      "./p4.html?present",
    ]);
    expect(plain(wordsOf(next))).toBe("2 pages, 55 minutes in all. Page 3, 10 min. Page 4, 45 min.");
  });

  it("takes no answer that fits nothing", () => {
    const { state } = eveningPlan(lessons, { "evening minutes": 5000, "evening idea": "none of these" });
    expect([state.minutes, state.idea]).toEqual([60, ""]);
  });
});

describe("the list of pages", () => {
  it("has each page's purpose in sight, and the rest folded away", () => {
    const page = mounted(lessonList(lessons));
    expect(page.all("details")).toHaveLength(5);
    expect(plain(page.one("summary").textContent)).toBe("1Page 1To see 1.");
    const all = plain(page.one("details").textContent);
    for (const words of ["“Idea 1.”", "Short 1.", "Long 1.", "Why 1?"]) expect(all).toContain(words);
    expect(wordsOf(lessonList(lessons))).toBe("Pages to teach with: Page 1; Page 2; Page 3; Page 4; Page 5.");
  });
});
