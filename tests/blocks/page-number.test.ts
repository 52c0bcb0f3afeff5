import { describe, expect, it } from "vitest";
import { pageNumber } from "#blocks/page-number";
import { answer, answersNow } from "#view/answers";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const options = {
  id: "page-number-test",
  label: "another pinion",
  unit: "teeth",
  low: 8,
  high: 18,
  step: 2,
  start: 12,
};

describe("a number that belongs to a page", () => {
  it("starts where it is told and follows what the reader answered", () => {
    expect(pageNumber(options, {}).value).toBe(12);
    expect(pageNumber(options, { "page-number-test": 16 }).value).toBe(16);
    // Between two steps it goes to the nearer one; outside its ends, or as words, it counts as none.
    expect(pageNumber(options, { "page-number-test": 15.2 }).value).toBe(16);
    expect(pageNumber(options, { "page-number-test": 40 }).value).toBe(12);
    expect(pageNumber(options, { "page-number-test": "many" }).value).toBe(12);
    expect(pageNumber({ ...options, start: 99 }, {}).value).toBe(18);
  });

  it("is a native slider that says its value with its unit", () => {
    const { one, update, host } = mounted(pageNumber(options, {}).input);
    const range = one<HTMLInputElement>("input");
    expect([range.min, range.max, range.step, range.value]).toEqual(["8", "18", "2", "12"]);
    expect(plain(range.getAttribute("aria-valuetext"))).toBe("12 teeth");
    expect(plain(one("output").textContent)).toBe("12 teeth");
    expect(leavesElements(host, () => update(pageNumber(options, { "page-number-test": 14 }).input))).toBe(true);
    expect([range.value, plain(one("output").textContent)]).toEqual(["14", "14 teeth"]);
    expect(plain(wordsOf(pageNumber(options, {}).input))).toBe(
      "another pinion: 12 teeth. It can be set here, from 8 to 18 teeth.",
    );
  });

  it("keeps what is set among the answers, and leaves the machine alone", () => {
    const { one, bench } = mounted(pageNumber(options, {}).input);
    const before = bench.now;
    const range = one<HTMLInputElement>("input");
    range.value = "10";
    range.dispatchEvent(new Event("input"));
    expect(answersNow()["page-number-test"]).toBe(10);
    expect(bench.now).toBe(before);
    answer("page-number-test", null);
  });
});
