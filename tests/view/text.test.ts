import { describe, expect, it } from "vitest";
import { capital, firstAndRest } from "#view/text";

describe("words", () => {
  it("part after their first sentence, whose own points are no end", () => {
    expect(firstAndRest("Holds 2.5 s, at 90 %. Then it sinks! Why?")).toEqual([
      "Holds 2.5 s, at 90 %.",
      " Then it sinks! Why?",
    ]);
    expect(firstAndRest("Is it so? Yes.")).toEqual(["Is it so?", " Yes."]);
    expect(firstAndRest("No end")).toEqual(["No end", ""]);
    expect(firstAndRest("One only.")).toEqual(["One only.", ""]);
    expect(firstAndRest("")).toEqual(["", ""]);
  });

  it("begin a sentence with a capital, and stay as they are behind it", () => {
    expect(capital("motor Kv")).toBe("Motor Kv");
    expect(capital("")).toBe("");
  });
});
