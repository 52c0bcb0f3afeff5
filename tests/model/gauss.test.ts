import { expect, it } from "vitest";
import { integral } from "#model/gauss";

it("is exact for a polynomial of degree nine", () => {
  // Closed form: 1/10 + 1/3.
  expect(integral((x) => x ** 9 + x * x, 0, 1)).toBeCloseTo(1 / 10 + 1 / 3, 14);
});

it("comes close to a closed form with few panels, and turns sign with its ends", () => {
  expect(integral(Math.exp, 0, 3, 4)).toBeCloseTo(Math.exp(3) - 1, 9);
  expect(integral(Math.exp, 3, 0, 4)).toBeCloseTo(1 - Math.exp(3), 9);
});
