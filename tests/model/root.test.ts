import fc from "fast-check";
import { expect, it } from "vitest";
import { bracketedRoot } from "#model/root";

it.each([
  // Closed forms.
  ["x² = 2", (x: number) => x * x - 2, 0, 2, Math.SQRT2],
  ["exp(x) = 5", (x: number) => Math.exp(x) - 5, -10, 10, Math.log(5)],
  ["a triple zero", (x: number) => (x - 0.3) ** 3, -1, 2, 0.3],
  ["a step", (x: number) => (x < 0.7 ? -1 : 1), 0, 1, 0.7],
  ["an end", (x: number) => x, 0, 1, 0],
])("finds %s", (_, f, a, b, zero) => {
  expect(bracketedRoot(f, a, b, 1e-12)).toBeCloseTo(zero, 6);
  expect(bracketedRoot(f, b, a, 1e-12)).toBeCloseTo(zero, 6);
});

it("says null when nothing is bracketed", () => {
  expect(bracketedRoot((x) => x * x + 1, -1, 1, 1e-12)).toBeNull();
});

it("finds the zero of any cubic that rises, in few calls", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      (x0, c) => {
        let calls = 0;
        const f = (x: number) => {
          calls++;
          return (x - x0) * (c + (x - x0) ** 2);
        };
        const x = bracketedRoot(f, -3, 4, 1e-13)!;
        expect(Math.abs(x - x0)).toBeLessThan(2e-13);
        expect(calls).toBeLessThan(40);
      },
    ),
  );
});
