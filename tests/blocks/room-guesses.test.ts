import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { askedOn } from "#blocks/asked";
import { choose, type EstimateState, estimate } from "#blocks/guess";
import { askRoom, askRoomAt } from "#blocks/room-guesses";
import { answer, answersNow, onAnswer } from "#view/answers";
import type { Shown } from "#view/shown";
import { mounted, plain } from "./mounted.ts";

const number = (over: Partial<EstimateState> = {}) =>
  estimate({
    id: "room-seventy",
    ask: "What head speed?",
    unit: "rpm",
    low: 0,
    high: 3600,
    step: 10,
    answer: 2100,
    within: 40,
    reply: "Seven tenths.",
    answers: answersNow(),
    ...over,
  });

const choice = () =>
  choose({
    id: "room-share",
    ask: "Seventy per cent of what?",
    options: [
      { key: "power", says: "of the power" },
      { key: "reference", says: "of a learned speed" },
      { key: "volts", says: "of <i>the</i> volts" },
    ],
    right: "reference",
    reply: { power: "Power is what it spends.", reference: "It once learned a speed.", volts: "Without a governor." },
    answers: answersNow(),
  });

let stop = () => {};
function asked<S>(make: () => Shown<S>) {
  const block = mounted(make());
  stop = onAnswer(() => block.update(make()));
  expect(askRoom(document)).toBe(block.one("fieldset"));
  return block;
}

beforeEach(() => {
  answer("room-seventy", null);
  answer("room-share", null);
});
afterEach(() => stop());

describe("a number put to the room", () => {
  function typed(text: string) {
    const block = asked<EstimateState>(() => number());
    const line = block.one("textarea") as HTMLTextAreaElement;
    line.value = text;
    line.dispatchEvent(new Event("input"));
    return { ...block, words: () => plain(block.one("figcaption").textContent) };
  }

  it("is not there until it is asked for, and goes again", () => {
    const block = mounted(number());
    expect(block.all(".room")).toEqual([]);
    askRoom(document);
    askRoom(document);
    expect(block.all(".room")).toHaveLength(1);
    block.button("guess alone again").click();
    expect(block.all(".room")).toEqual([]);
    expect(block.one("fieldset").classList.contains("is-room")).toBe(false);
  });

  it("shows pencil dots and their middle, and no answer before it is shown", async () => {
    const { one, all, words } = typed("1800 2500 2,500 2520");
    expect(one("[data-plot=room-guesses] path.pencil").getAttribute("d")?.match(/M/g)).toHaveLength(4);
    await expect.poll(words).toBe("4 guesses, from 1,800 rpm to 2,520 rpm. The middle one is 2,500 rpm.");
    expect(all("[data-level=model]")).toEqual([]);
    expect(one(".guess-reply").hidden).toBe(true);
  });

  it("then draws the answer in ink and tells how near the room came", async () => {
    const { one, words, button } = typed("1800 2500 2500 2500 2110");
    button("show the answer").click();
    expect(answersNow()["room-seventy"]).toBe("show me");
    expect(one("[data-level=model] line").getAttribute("class")).toContain("ink now");
    await expect
      .poll(words)
      .toBe(
        "1 of 5 came within 40 rpm of 2,100 rpm. 3 too high, 1 too low. The middle guess, 2,500 rpm, is 400 rpm too high. Said most often: 2,500 rpm, by 3.",
      );
    expect(plain(one(".guess-reply").textContent)).toContain("Seven tenths.");
    button("hide the answer").click();
    await expect.poll(words).not.toContain("2,100");
  });

  it("says what it can't read, as text, and what lies off the scale", async () => {
    const { one, all, words } = typed("1800 9000 <img src=x>");
    expect(one(".room-left").textContent).toBe("Not read as a number: <img, src=x>.");
    expect(all("img")).toEqual([]);
    await expect.poll(words).toContain("One lies off the scale: 9,000 rpm.");
  });

  it("follows the model, and has words for no answer", async () => {
    const block = typed("1800");
    answer("room-seventy", "show me");
    block.update(number({ answer: 1800 }));
    await expect.poll(block.words).toContain("The middle guess, 1,800 rpm, is right.");
    block.update(number({ answer: null }));
    await expect.poll(block.words).toBe("The model has no answer for this machine. One guess: 1,800 rpm.");
  });

  it("is kept when the question is put again", async () => {
    const block = typed("1800 1900");
    const [question] = askedOn(document);
    askRoomAt(question!, false);
    askRoomAt(question!);
    expect(block.one<HTMLElement>(".room-line")).toHaveProperty("value", "1800 1900");
    await expect.poll(block.words).toMatch(/^2 guesses/);
  });
});

describe("a choice put to the room", () => {
  const page = () => {
    const block = asked(choice);
    const plus = block.all(".room-plus");
    const hands = (...counts: number[]) => {
      for (const [i, count] of counts.entries()) for (let k = 0; k < count; k++) plus[i]!.click();
    };
    return { ...block, hands, words: () => plain(block.one(".room-words").textContent) };
  };

  it("counts hands as pencil dots and tells nothing of the answer", () => {
    const { all, hands, words } = page();
    for (const input of all<HTMLInputElement>(".room-count input")) {
      input.value = "";
      input.dispatchEvent(new Event("input"));
    }
    expect(words()).toBe("Nobody has said anything yet.");
    hands(3, 1, 0);
    expect(all(".room-dots").map((dots) => dots.childElementCount)).toEqual([3, 1, 0]);
    expect(words()).toBe("4 hands.");
    expect(all(".is-right")).toEqual([]);
    expect(all(".room-says i")).toEqual([]);
  });

  it("then tells who was right, and the wrong idea of most others with its reply", () => {
    const { one, all, button, words } = page();
    expect(all<HTMLInputElement>(".room-count input").map(({ value }) => value)).toEqual(["3", "1", ""]);
    button("show the answer").click();
    expect(one(".room-choices .is-right .room-says").textContent).toBe("of a learned speed right");
    expect(words()).toBe("1 of 4 said so. Most of the others, 3, said “of the power”. Power is what it spends.");
  });

  it("names what is no count", () => {
    const { all, words } = page();
    const [first] = all<HTMLInputElement>(".room-count input");
    first!.value = "many";
    first!.dispatchEvent(new Event("input"));
    expect(words()).toBe("“many” is no count.");
    expect(first!.getAttribute("aria-invalid")).toBe("true");
  });
});
