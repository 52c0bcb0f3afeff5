import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { pick, picked } from "#blocks/pick";
import { type Answers, answer, answersNow, onAnswer } from "#view/answers";
import { leavesElements, mounted, wordsOf } from "./mounted.ts";

const make = (answers: Answers) =>
  pick({
    id: "pack-state",
    label: "The pack that is flown",
    options: [
      { key: "own", says: "as it stands" },
      { key: "tired", says: "an old one" },
    ],
    answers,
  });

let stop = () => {};
beforeEach(() => answer("pack-state", null));
afterEach(() => stop());

describe("a choice that belongs to a page", () => {
  it("yields the first key until one is picked, and for an answer that is no key", () => {
    expect(picked({}, "pack-state", ["own", "tired"])).toBe("own");
    expect(picked({ "pack-state": "tired" }, "pack-state", ["own", "tired"])).toBe("tired");
    expect(picked({ "pack-state": "wet" }, "pack-state", ["own", "tired"])).toBe("own");
    expect(picked({ "pack-state": 1 }, "pack-state", ["own", "tired"])).toBe("own");
    expect(make({ "pack-state": "wet" }).state.chosen).toBe("own");
  });

  it("is picked with one press and says what it is", () => {
    const block = mounted(make(answersNow()));
    stop = onAnswer(() => block.update(make(answersNow())));
    expect(block.one("legend").textContent).toBe("The pack that is flown");
    const [own, tired] = block.all<HTMLInputElement>("input[type=radio]");
    expect([own!.checked, tired!.checked]).toEqual([true, false]);
    tired!.click();
    expect(answersNow()["pack-state"]).toBe("tired");
    expect([own!.checked, tired!.checked]).toEqual([false, true]);
    expect(wordsOf(make(answersNow()))).toBe("The pack that is flown: an old one.");
  });

  it("builds nothing anew when it is picked", () => {
    const { host, update } = mounted(make({}));
    expect(leavesElements(host, () => update(make({ "pack-state": "tired" })))).toBe(true);
  });
});
