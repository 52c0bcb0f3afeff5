import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import { discArea, figureOfMerit, idealHoverPower, inducedVelocity } from "#model/momentum";

/** Induced over hover velocity at a climb over hover velocity; density and area chosen so that hover velocity is 1. */
const flow = (climb: number) => inducedVelocity(2, climb, 1, 1);

describe("induced velocity", () => {
  // Closed form of axial momentum theory, Leishman ch. 2: climb and windmill branches.
  it.each([
    [0, 1, 1e-12],
    [0.5, 0.780776, 1e-6],
    [1, 0.618034, 1e-6],
    [2, 0.414214, 1e-6],
    [-2, 1, 1e-9],
    // Leishman ch. 2, quartic of the vortex-ring range (from memory).
    [-0.5, 1.3933125, 1e-9],
    [-1, 1.816, 1e-9],
    [-1.5, 2.0828125, 2e-3],
  ])("at a climb of %f", (climb, induced, within) => {
    expect(Math.abs(flow(climb) - induced)).toBeLessThan(within);
  });

  it("obeys T = 2 rho A (V + v) v while climbing, and turns over with the thrust", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0.01, 500), number(0, 40), (thrust, climb) => {
        const v = inducedVelocity(thrust, climb, 1.2, 1.5);
        expect(2 * 1.2 * 1.5 * (climb + v) * v).toBeCloseTo(thrust, 8);
        expect(inducedVelocity(-thrust, -climb, 1.2, 1.5)).toBe(-v);
      }),
    );
    expect(inducedVelocity(0, 3, 1.2, 1.5)).toBe(0);
  });

  it("has no jump where its branches meet", () => {
    for (const at of [0, -1.5, -2]) expect(Math.abs(flow(at + 1e-9) - flow(at - 1e-9))).toBeLessThan(1e-4);
  });

  it("grows with thrust at every climb and descent", () => {
    for (let climb = -6; climb <= 6; climb += 0.05) {
      let before = 0;
      for (let thrust = 0.05; thrust < 8; thrust += 0.05) {
        const v = inducedVelocity(thrust, climb, 1, 1);
        expect(v).toBeGreaterThan(before);
        before = v;
      }
    }
  });

  it("is that of a full-scale helicopter", () => {
    // Prouty, Helicopter Performance, Stability and Control, ch. 1 (from memory): 20,000 lb, 30 ft, 0.002377 slug/ft3.
    const area = discArea({ radius: 30 });
    expect(Math.abs(20000 / area - 7.07)).toBeLessThan(0.005);
    expect(Math.abs(inducedVelocity(20000, 0, 0.002377, area) - 38.6)).toBeLessThan(0.1);
  });

  it("leaves a climb to the power that is left", () => {
    // Houghton and Carpenter, exercise: 16 m, 170 N/m2, 53 % of 600 kW into lift times flow, 110 m/min.
    const area = discArea({ radius: 8 });
    const weight = 170 * area;
    const climb = 110 / 60;
    const flowPower = weight * (climb + inducedVelocity(weight, climb, 1.225, area));
    expect(Math.abs(flowPower / (0.53 * 600e3) - 1)).toBeLessThan(5e-3);
  });
});

describe("ideal power", () => {
  it("is thrust times hover velocity", () => {
    const [thrust, density, area] = [5 * gravity, 1.2, 1.5];
    const power = idealHoverPower({ thrust, density, area });
    expect(power).toBeCloseTo(thrust * inducedVelocity(thrust, 0, density, area), 10);
    expect(figureOfMerit({ idealPower: power, power: 2 * power })).toBe(0.5);
  });
});
