import { expect, it } from "vitest";
import { blemishes } from "./plain.ts";

it("finds whatever can't be put before a reader, at any depth", () => {
  const state = {
    a: [1, Number.NaN],
    b: { c: undefined, d: "gives NaN rpm" },
    e: new Float64Array([1 / 0]),
    f: () => 1,
  };
  expect(blemishes(state)).toEqual([
    "state.a[1] is NaN",
    "state.b.c is undefined",
    "state.b.d says 'gives NaN rpm'",
    "state.e[0] is Infinity",
    "state.f is a function",
  ]);
});

it("lets figures, words and gaps pass", () => {
  expect(blemishes({ xs: [1, 2], ys: [null, 2.5], words: "nothing is undefinable", shown: true })).toEqual([]);
});
