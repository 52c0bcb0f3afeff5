import { describe, expect, it } from "vitest";
import { amount, inWords, tell, work } from "#exercises/amount";
import { tipSpeed } from "#model/blades";
import { setSpeed } from "#model/reference";
import { squareLaw } from "#model/scaling";

const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("amounts in words", () => {
  it.each([
    [amount(2310, "rpm"), "2,310 rpm"],
    [amount(12, "teeth"), "12 teeth"],
    [amount(9.8), "9.8"],
    [amount(-4.5, "%"), "−4.5 %"],
    [amount(1 / 3, "V"), "0.3333 V"],
    [amount(23456.789, "rpm"), "23,457 rpm"],
    [amount(0.1 + 0.2, "V"), "0.3 V"],
    [amount(0, "A"), "0 A"],
  ])("%o", (given, words) => {
    expect(plain(inWords(given))).toBe(words);
  });

  it("stand in a sentence with their unit held fast", () => {
    expect(tell`It turns at ${amount(2310, "rpm")}, ${"so"} to say.`).toBe("It turns at 2,310\u00a0rpm, so to say.");
  });
});

describe("amounts in a relation", () => {
  const asked = work(
    setSpeed,
    { throttle: amount(80, "%"), reference: amount(30000, "rpm"), gearRatio: amount(10) },
    "rpm",
  );

  it("go in and come out in the reader's units", () => {
    expect(asked.value).toBeCloseTo(2400, 9);
    expect(asked.unit).toBe("rpm");
    expect(asked.si).toBeCloseTo(2400 * (Math.PI / 30), 9);
  });

  it("stand in its formula", () => {
    expect(asked.formula.general).toBe(setSpeed.general);
    expect(plain(asked.formula.numbers)).toBe(
      "n = \\text{80 \\%} \\times \\frac{\\text{30,000 rpm}}{\\text{10}} = \\text{2,400 rpm}",
    );
  });

  it("convert lengths and speeds", () => {
    const speed = work(tipSpeed, { speed: amount(2000, "rpm"), radius: amount(800, "mm") }, "m/s");
    expect(speed.value).toBeCloseTo(167.5516, 4);
  });

  it("keep a unit from being read as squared by itself", () => {
    const { formula } = work(squareLaw, { before: amount(2, "A"), from: amount(1), to: amount(3) }, "A");
    expect(formula.numbers).not.toContain("A}^");
  });
});
