import { describe, expect, expectTypeOf, it } from "vitest";
import {
  choice,
  defaultOf,
  filled,
  group,
  groupOrNull,
  isLeaf,
  list,
  real,
  realOrNull,
  text,
  type ValueOf,
  whole,
} from "#machine/shape";

const named = { name: "n", symbol: "", read: "r" };
const range = { ...named, unit: "mm", low: 1, high: 2, min: 0, max: 3, step: 1, tolerance: {} };
const item = group("Item", { a: real({ ...range, default: 1.5 }), b: whole({ ...range, default: 2 }) });
const tree = group("Tree", {
  word: choice({
    ...named,
    choices: [
      { value: "x", name: "X" },
      { value: "y", name: "Y" },
    ],
    default: "y",
  }),
  free: text({ ...named, max: 5, default: "hi" }),
  open: realOrNull({ ...range, default: null }),
  perhaps: groupOrNull("Perhaps", "none", { a: real({ ...range, default: 3 }) }),
  items: list("Items", [1, 2], item, [{ a: 1, b: 1 }]),
});

describe("shapes of the record", () => {
  it("give the default of every field, null for a group that may be null", () => {
    expect(defaultOf(tree)).toEqual({ word: "y", free: "hi", open: null, perhaps: null, items: [{ a: 1, b: 1 }] });
  });

  it("fill a group that may be null", () => {
    expect(filled(tree.entries.perhaps)).toEqual({ a: 3 });
  });

  it("tell a field from groups and lists", () => {
    expect(isLeaf(tree.entries.word)).toBe(true);
    expect(isLeaf(tree.entries.items)).toBe(false);
    expect(isLeaf(tree)).toBe(false);
  });

  it("give the record its type", () => {
    expectTypeOf<ValueOf<typeof tree>>().toEqualTypeOf<{
      readonly word: "x" | "y";
      readonly free: string;
      readonly open: number | null;
      readonly perhaps: { readonly a: number } | null;
      readonly items: readonly { readonly a: number; readonly b: number }[];
    }>();
  });
});
