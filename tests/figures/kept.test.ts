import { expect, it } from "vitest";
import { keeper } from "#figures/kept";

it("makes a thing once for the same parts, and anew for any other", () => {
  const keep = keeper<number>();
  let made = 0;
  const make = () => ++made;
  const [a, b] = [{}, {}];
  expect([keep([a, 1], make), keep([a, 1], make), keep([b, 1], make), keep([a, 2], make), keep([a], make)]).toEqual([
    1, 1, 2, 3, 4,
  ]);
  expect(keep([a, 1], make)).toBe(1);
  keep([9], make);
  expect(keep([a, 1], make)).toBe(6);
});
