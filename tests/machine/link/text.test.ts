import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shapeAt } from "#machine/fields";
import { checksum, readText, readValue, writeText, writeValue } from "#machine/link/text";
import { isLeaf, type Leaf } from "#machine/shape";

const leaf = (path: string): Leaf => {
  const shape = shapeAt(path);
  if (!shape || !isLeaf(shape)) throw new Error(path);
  return shape;
};

describe("text in a link", () => {
  it("comes back as it was, in letters that are safe", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        expect(writeText(text)).toMatch(/^[a-z0-9.-]*$/);
        expect(readText(writeText(text))).toBe(text);
      }),
    );
    expect(writeText("6-cell Été")).toBe("6.2dcell-.c3.89t.c3.a9");
  });

  it.each([".", ".4", ".zz", "A", ".c3", ".ff.fe"])("%j is none", (written) => {
    expect(readText(written)).toBeNull();
  });

  it("numbers come back to the last digit", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }).filter((x) => !Object.is(x, -0)),
        (value) => {
          const written = writeValue(leaf("motor.kvRpmPerVolt"), value);
          expect(written).toMatch(/^[0-9.en]+$/);
          expect(readValue(leaf("motor.kvRpmPerVolt"), written)).toBe(value);
        },
      ),
    );
    expect(readValue(leaf("mainRotor.ratedRpm"), writeValue(leaf("mainRotor.ratedRpm"), null))).toBeNull();
    expect(readValue(leaf("pack.chemistry"), "life")).toBe("life");
  });

  it.each(["", "x", "1..2", "1n", "nn1", "1e", "0x10", ".5", "9".repeat(30)])(
    "%j is no number and stays as it is",
    (written) => {
      expect(readValue(leaf("motor.kvRpmPerVolt"), written)).toBe(written);
    },
  );
});

describe("the checksum of a link", () => {
  // Test vectors of the 32-bit FNV-1a hash, Fowler, Noll and Vo (draft-eastlake-fnv), from memory.
  it.each([
    ["", 0x811c9dc5],
    ["a", 0xe40c292c],
    ["foobar", 0xbf9cf968],
  ])("of %j is the published one", (text, hash) => {
    expect(Number.parseInt(checksum(text), 36)).toBe(hash);
    expect(checksum(text)).toHaveLength(7);
  });
});
