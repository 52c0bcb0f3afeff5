import { describe, expect, it } from "vitest";
import { combinedDoubt, cubeLaw, relativeChange, squareLaw } from "#model/scaling";

describe("laws of growth", () => {
  it("lets the energy of turning blades go with the square of speed", () => {
    // OpenStax College Physics, example 10.9: J = 1067 kg m² at 31.4 rad/s hold 526 kJ (energy from memory).
    const half = squareLaw({ before: 526e3, from: 31.4, to: 15.7 });
    expect(Math.abs(half / ((1067 * 15.7 ** 2) / 2) - 1)).toBeLessThan(0.002);
  });

  it("lets the power of drag go with the cube of speed", () => {
    // Leishman, Principles of Helicopter Aerodynamics, ch. 2: P0 = rho A (Omega R)³ sigma cd / 8.
    const profile = (speed: number) => (1.225 * 0.785 * (speed * 0.5) ** 3 * 0.0535 * 0.011) / 8;
    expect(cubeLaw({ before: profile(209), from: 209, to: 262 })).toBeCloseTo(profile(262), 9);
  });
});

describe("changes and doubts", () => {
  it("counts a change against what was before", () => {
    // A display of n = 120 f / p, told 14 poles in place of 10: -28.571429 %.
    expect(relativeChange({ before: 30000, after: 21428.57143 })).toBeCloseTo(-0.28571429, 8);
  });

  it("adds doubts by their squares", () => {
    // JCGM 100:2008, 5.1.6: relative variances add; 5 % and 1 % make 5.09902 %.
    expect(combinedDoubt({ first: 0.05, second: 0.01 })).toBeCloseTo(0.0509902, 7);
  });
});
