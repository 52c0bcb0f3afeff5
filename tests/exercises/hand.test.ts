import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handFor, hash, rounded } from "#exercises/hand";

const many = <T>(of: (i: number) => T): T[] => Array.from({ length: 2000 }, (_, i) => of(i));

describe("the hand that draws", () => {
  it("draws the same from the same text, and something else from another", () => {
    const ten = (text: string) => {
      const hand = handFor(text);
      return Array.from({ length: 10 }, () => hand.whole(0, 1e6));
    };
    expect(ten("gear-ratio 1 0")).toEqual(ten("gear-ratio 1 0"));
    expect(ten("gear-ratio 1 0")).not.toEqual(ten("gear-ratio 2 0"));
  });

  it("reaches both ends evenly", () => {
    const hand = handFor("ends");
    const counts = [0, 0, 0, 0, 0];
    for (const value of many(() => hand.whole(3, 7))) counts[value - 3]!++;
    // 400 each, with a standard deviation of 18.
    for (const count of counts) expect(Math.abs(count - 400)).toBeLessThan(90);
  });

  it("spreads neighbouring seeds", () => {
    const first = many((seed) => handFor(`sag ${seed} 0`).whole(0, 9));
    for (let digit = 0; digit < 10; digit++) {
      expect(Math.abs(first.filter((value) => value === digit).length - 200)).toBeLessThan(70);
    }
  });

  it("draws round numbers near a value", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), fc.string(), (value, text) => {
        const near = handFor(text).near(value, { spread: 0.2, figures: 2 });
        expect(near).toBe(rounded(near, 2));
        // Two figures round by up to a twentieth.
        expect(near / value).toBeGreaterThan(0.75);
        expect(near / value).toBeLessThan(1.27);
      }),
    );
  });

  it("takes another size where the machine has none", () => {
    const near = handFor("zero").near(0, { otherwise: 50, spread: 0.1 });
    expect(near).toBeGreaterThanOrEqual(45);
    expect(near).toBeLessThanOrEqual(55);
  });

  it("never counts below the least", () => {
    const hand = handFor("count");
    const counts = many(() => hand.count(9, 3, 8));
    expect([Math.min(...counts), Math.max(...counts)]).toEqual([8, 12]);
  });

  it("has nothing to pick from an empty list", () => {
    expect(() => handFor("none").pick([])).toThrow(RangeError);
  });
});

describe("the hash of a text", () => {
  // Test vectors of FNV-1a, 32 bits: Fowler, Noll, Vo, draft-eastlake-fnv, appendix (from memory).
  it.each([
    ["", 0x811c9dc5],
    ["a", 0xe40c292c],
    ["foobar", 0xbf9cf968],
  ])("of “%s”", (text, bits) => {
    expect(hash(text)).toBe(bits);
  });
});
