import { expect, it } from "vitest";
import { speedHeadroom } from "#model/headroom";

it("is what the ceiling has above the set speed, less than nothing when it lies below", () => {
  // Definition.
  expect(speedHeadroom({ ceiling: 2180, setSpeed: 2050 })).toBe(130);
  expect(speedHeadroom({ ceiling: 1980, setSpeed: 2050 })).toBe(-70);
});
