import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

const KEY = "workbook.answers.1";
/** The store as a page that has just been opened has it. */
async function opened() {
  vi.resetModules();
  return import("#view/answers");
}

beforeEach(() => sessionStorage.clear());
afterEach(() => vi.restoreAllMocks());

describe("answers", () => {
  it("are kept, changed and taken back", async () => {
    const { answer, answersNow } = await opened();
    answer("a", 3);
    answer("b", "yes");
    answer("a", 4);
    expect(answersNow()).toEqual({ a: 4, b: "yes" });
    answer("a", null);
    expect(answersNow()).toEqual({ b: "yes" });
  });

  it("are told to those who listen, when something changes", async () => {
    const { answer, onAnswer } = await opened();
    const listener = vi.fn();
    const stop = onAnswer(listener);
    answer("a", 3);
    answer("a", 3);
    answer("none", null);
    expect(listener).toHaveBeenCalledTimes(1);
    stop();
    answer("a", 5);
    expect(listener).toHaveBeenCalledTimes(1);
  });

  it("are a new record after each change", async () => {
    const { answer, answersNow } = await opened();
    answer("a", 1);
    const before = answersNow();
    answer("a", 2);
    expect(before).toEqual({ a: 1 });
  });

  it("last from page to page of a visit", async () => {
    const first = await opened();
    first.answer("a", 3);
    first.answer("b", "yes");
    const next = await opened();
    expect(next.answersNow()).toEqual({});
    next.recallAnswers();
    expect(next.answersNow()).toEqual({ a: 3, b: "yes" });
  });

  it.each(["not json", "[1,2]", "null", "3"])("start empty when the store holds %s", async (text) => {
    sessionStorage.setItem(KEY, text);
    const { answersNow, recallAnswers } = await opened();
    recallAnswers();
    expect(answersNow()).toEqual({});
  });

  it("leave out what is neither a number nor a short text", async () => {
    sessionStorage.setItem(KEY, JSON.stringify({ a: 3, b: null, c: [1], d: { e: 1 }, f: "x".repeat(201), g: "short" }));
    const { answersNow, recallAnswers } = await opened();
    recallAnswers();
    expect(answersNow()).toEqual({ a: 3, g: "short" });
  });

  it("last as long as the page when storage is forbidden", async () => {
    vi.spyOn(Storage.prototype, "setItem").mockImplementation(() => {
      throw new Error("forbidden");
    });
    vi.spyOn(Storage.prototype, "getItem").mockImplementation(() => {
      throw new Error("forbidden");
    });
    const { answer, answersNow, recallAnswers } = await opened();
    expect(recallAnswers).not.toThrow();
    answer("a", 3);
    expect(answersNow()).toEqual({ a: 3 });
  });
});
