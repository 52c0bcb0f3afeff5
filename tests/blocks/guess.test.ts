import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { choose, type EstimateState, estimate, estimateReply } from "#blocks/guess";
import { type Answers, answer, answersNow, onAnswer } from "#view/answers";
import type { Shown } from "#view/shown";
import { type } from "../inputs/hand.ts";
import { leavesElements, type Mounted, mounted, plain, wordsOf } from "./mounted.ts";

const choice = (answers: Answers) =>
  choose({
    id: "share",
    ask: "Seventy per cent of what?",
    options: [
      { key: "power", says: "of the power" },
      { key: "reference", says: "of a learned speed" },
    ],
    right: "reference",
    reply: { power: "Power is what it spends.", reference: "Yes. It once learned a speed." },
    answers,
  });

const number = (answers: Answers, over: Partial<EstimateState> = {}) =>
  estimate({
    id: "seventy",
    ask: "What head speed?",
    unit: "rpm",
    low: 0,
    high: 3600,
    step: 10,
    answer: 2100,
    within: 40,
    reply: "Seven tenths.",
    answers,
    ...over,
  });

/** Lets a block follow the answers, as a page does. */
let stop = () => {};
function following<S>(make: (answers: Answers) => Shown<S>) {
  const block = mounted(make(answersNow()));
  stop = onAnswer(() => block.update(make(answersNow())));
  return block;
}

beforeEach(() => {
  answer("share", null);
  answer("seventy", null);
});
afterEach(() => stop());

describe("a choice", () => {
  it("asks, and says nothing before the reader has", () => {
    const { one, all } = mounted(choice({}));
    expect(one("legend").textContent).toBe("Seventy per cent of what?");
    expect(all("label").map((label) => label.textContent)).toEqual(["of the power", "of a learned speed"]);
    expect(one("[role=status]").hidden).toBe(true);
    expect(one("[role=status]").textContent).toBe("");
    expect(one("fieldset").dataset.guess).toBe("share");
    expect(all(".is-right")).toEqual([]);
  });

  it("keeps the guess, and answers with the truth beside it", () => {
    const { all, one } = following(choice);
    all<HTMLInputElement>("input")[0]!.click();
    expect(answersNow().share).toBe("power");
    expect(one("[role=status]").textContent).toBe(
      "Power is what it spends.\nThe answer: “of a learned speed”. It once learned a speed.",
    );
    expect(one(".is-guess").textContent).toBe("of the power");
    expect(one(".is-right").textContent).toBe("of a learned speed");
  });

  it("answers a right guess once", () => {
    const { all, one } = following(choice);
    all<HTMLInputElement>("input")[1]!.click();
    expect(one("[role=status]").textContent).toBe("Yes. It once learned a speed.");
  });

  it("shows the answer without a guess", () => {
    const { all, one, button } = following(choice);
    button("show me").click();
    expect(one("[role=status]").textContent).toBe("The answer: “of a learned speed”. It once learned a speed.");
    expect(all<HTMLInputElement>("input").some((radio) => radio.checked)).toBe(false);
    expect(button("show me").hidden).toBe(true);
  });

  it("is read out with all its options", () => {
    expect(wordsOf(choice({}))).toBe("Seventy per cent of what? of the power; of a learned speed.");
    expect(wordsOf(choice({ share: "reference" }))).toMatch(/ It once learned a speed\.$/);
  });

  it("takes no number for an answer", () => {
    expect(choice({ share: 3 }).state.given).toBeNull();
  });

  it("builds nothing anew when it is answered", () => {
    const { host, update } = mounted(choice({}));
    expect(leavesElements(host, () => update(choice({ share: "power" })))).toBe(true);
  });
});

describe("an estimate", () => {
  const range = (block: Mounted) => block.one<HTMLInputElement>("input[type=range]");
  const exact = (block: Mounted) => block.one<HTMLInputElement>("input[type=text]");
  const reply = (block: Mounted) => plain(block.one("[role=status]").textContent);
  const page = () => following<EstimateState>((answers) => number(answers));

  it("starts in the middle of its scale, with nothing said", () => {
    const block = mounted(number({}));
    expect([range(block).min, range(block).max, range(block).step]).toEqual(["0", "3600", "10"]);
    expect([range(block).value, exact(block).value]).toEqual(["1800", "1800"]);
    expect(block.one("[role=status]").hidden).toBe(true);
    expect(block.one(".unit").textContent).toBe("rpm");
  });

  it("commits the slider's value and tells the gap", () => {
    const block = page();
    range(block).value = "2600";
    range(block).dispatchEvent(new Event("input"));
    expect(exact(block).value).toBe("2600");
    block.button("Answer").click();
    expect(answersNow().seventy).toBe(2600);
    expect(reply(block)).toBe("The model says 2,100 rpm. Your guess is 500 rpm too high. Seven tenths.");
    expect(range(block).disabled).toBe(true);
    expect(block.button("Answer").hidden).toBe(true);
  });

  it.each([
    ["2,120", 2120],
    ["2 120", 2120],
    ["2120.5", 2120.5],
    ["1999", 1999],
  ])("takes a typed %s as it is meant", (text, value) => {
    const block = page();
    type(exact(block), text, "blur");
    block.button("Answer").click();
    expect(answersNow().seventy).toBe(value);
  });

  it.each(["", "fast", "12 mph"])("answers a typed '%s' in words and keeps the last guess", (text) => {
    const block = page();
    type(exact(block), "1500", "blur");
    type(exact(block), text, "blur");
    expect(block.one(".input-problem").textContent).toMatch(/It stays at 1500\.$/);
    expect(exact(block).getAttribute("aria-invalid")).toBe("true");
    block.button("Answer").click();
    expect(answersNow().seventy).toBe(1500);
    range(block).dispatchEvent(new Event("input"));
    expect(block.one(".input-problem").hidden).toBe(true);
  });

  it("can be shown, and guessed again", () => {
    const block = page();
    block.button("show me").click();
    expect(reply(block)).toBe("The model says 2,100 rpm. Seven tenths.");
    block.button("guess again").click();
    expect("seventy" in answersNow()).toBe(false);
    expect(block.one("[role=status]").hidden).toBe(true);
    expect(range(block).disabled).toBe(false);
  });

  it("takes up a guess of an earlier page", () => {
    const block = mounted(number({}));
    block.update(number({ seventy: 2500 }));
    expect([range(block).value, exact(block).value]).toEqual(["2500", "2500"]);
  });

  it("follows the model when the machine changes", () => {
    const block = mounted(number({ seventy: 2000 }));
    expect(leavesElements(block.host, () => block.update(number({ seventy: 2000 }, { answer: 1900 })))).toBe(true);
    expect(reply(block)).toContain("1,900 rpm. Your guess is 100 rpm too high.");
  });

  it.each([
    [2140, /You were right/],
    [2060, /You were right/],
    [2141, /41\srpm too high/],
    [2059, /41\srpm too low/],
  ])("calls %d right or not by what is near enough", (given, words) => {
    expect(estimateReply(number({ seventy: given }).state)).toMatch(words);
  });

  it("says why there is no answer", () => {
    // Whole teeth have no tenths; what isn't whole keeps its own.
    expect(estimateReply(number({ seventy: 12 }, { answer: 13, unit: "teeth" }).state)).toMatch(/says 13\steeth\./);
    expect(estimateReply(number({ seventy: 12 }, { answer: 13.4, unit: "A" }).state)).toMatch(/says 13\.4\sA\./);
    expect(estimateReply(number({ seventy: 2000 }, { answer: null, reply: "It doesn't turn." }).state)).toBe(
      "It doesn't turn.",
    );
  });

  it("is read out, before and after", () => {
    expect(wordsOf(number({}))).toBe("What head speed?");
    expect(plain(wordsOf(number({ seventy: 2100 })))).toBe(
      "What head speed? The model says 2,100 rpm. You were right, as near as it matters. Seven tenths.",
    );
  });
});
