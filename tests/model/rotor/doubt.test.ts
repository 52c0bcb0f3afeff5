import { describe, expect, it } from "vitest";
import { expectedError } from "#model/rotor/doubt";

describe("the error to expect", () => {
  it("is what was written down before any test: 6 % from 1e5 up, 15 % at 3e4, 30 % at 1e4", () => {
    expect([1e4, 3e4, 1e5, 2e6].map(expectedError)).toEqual([0.3, expect.closeTo(0.15, 12), 0.06, 0.06]);
  });

  it("falls all the way, without a jump", () => {
    let before = expectedError(1e3);
    for (let reynolds = 1e3; reynolds < 2e5; reynolds *= 1.01) {
      const now = expectedError(reynolds);
      expect(now).toBeLessThanOrEqual(before);
      expect(now / before).toBeGreaterThan(0.98);
      before = now;
    }
  });
});
