import { describe, expect, it } from "vitest";
import { createStepper } from "#model/flight/integrate";

/** y' = -y from 1 to t = 1 in steps of h. */
function decay(h: number): number {
  const stepper = createStepper(1, 1, (y, dy) => {
    dy[0] = -y[0]!;
  });
  const y = Float64Array.of(1);
  stepper.length[0] = h;
  for (let i = 0; i < Math.round(1 / h); i++) {
    stepper.begin(y);
    stepper.finish(y);
  }
  return y[0]!;
}

describe("Runge-Kutta step", () => {
  // Closed form of the method on y' = -y: (1 - h + h^2/2 - h^3/6 + h^4/24)^(1/h).
  it("takes one step of h = 1 to 0.375", () => {
    expect(decay(1)).toBeCloseTo(0.375, 15);
  });

  it("misses e^-1 by 3.3324e-7 with h = 0.1", () => {
    const error = Math.abs(decay(0.1) - Math.exp(-1));
    expect(error / 3.332410561e-7).toBeCloseTo(1, 3);
    expect(Math.abs(error / Math.abs(decay(0.05) - Math.exp(-1)) - 16.75)).toBeLessThan(0.3);
  });

  it("is of fourth order: halving the step divides the error by 16", () => {
    const order = Math.log2(Math.abs(decay(0.02) - Math.exp(-1)) / Math.abs(decay(0.01) - Math.exp(-1)));
    expect(Math.abs(order - 4)).toBeLessThan(0.02);
  });

  it("adds up what doesn't act with the same weights, and knows the time of each stage", () => {
    // y0' = t^3: the rule of Simpson within the step is exact for a cubic; y1 adds up y0 without acting on it.
    const since = new Float64Array(2);
    const stepper = createStepper(
      2,
      1,
      (y, dy) => {
        dy[0] = since[1]! ** 3;
        dy[1] = y[0]!;
      },
      since,
      1,
    );
    const y = new Float64Array(2);
    stepper.length[0] = 0.5;
    for (let i = 0; i < 4; i++) {
      stepper.begin(y);
      stepper.finish(y);
    }
    expect(since[1]).toBe(2);
    expect(y[0]).toBeCloseTo(4, 12);
    // Integral of t^4 / 4 to 2; the step's error on a polynomial of degree 4 is below h^5 / 120.
    expect(Math.abs(y[1]! - 32 / 20)).toBeLessThan((4.001 * 0.5 ** 5) / 120);
  });
});
