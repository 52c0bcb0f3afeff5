import { describe, expect, it } from "vitest";
import { answerSheet, exercisesOn } from "#exercises/sheet";
import { clubTrainer } from "#machine/demos";

describe("the key", () => {
  it("answers the page's own exercises, in their order", () => {
    const page = exercisesOn("room-at-the-top", clubTrainer, 4);
    const key = answerSheet("room-at-the-top", clubTrainer, 4);
    expect(key.map(({ question }) => question)).toEqual(page.map(({ question }) => question));
    expect(key.map(({ answer }) => answer)).toEqual(page.map(({ answer }) => answer));
    for (const { solution } of key) expect(solution.because).not.toBe("");
  });

  it("is plain data", () => {
    const key = answerSheet("the-card", clubTrainer, 4);
    expect(JSON.parse(JSON.stringify(key))).toEqual(key);
  });

  it("lets one exercise go on to other numbers by itself", () => {
    const [first, ...rest] = exercisesOn("the-card", clubTrainer, 4);
    const turned = exercisesOn("the-card", clubTrainer, 4, (id) => (id === first?.id ? 5 : 4));
    expect(turned[0]?.question).not.toBe(first?.question);
    expect(turned.slice(1)).toEqual(rest);
  });
});
