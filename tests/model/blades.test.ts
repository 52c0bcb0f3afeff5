import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bladeInertia, bladePull, rotorEnergy, tipMach, tipSpeed, uniformCentre } from "#model/blades";
import { gravity, rpm } from "#model/constants";
import { integral } from "#model/gauss";

describe("published rotors", () => {
  it("the rescue helicopter of OpenStax College Physics, example 10.9", () => {
    // Four blades of 4.00 m and 50.0 kg as thin rods, 300 rpm: 31.4 rad/s, 1067 kg m2, 5.26e5 J.
    const inertia = bladeInertia({ mass: 50, root: 0, tip: 4 })!;
    expect(Math.abs(4 * inertia - 1067)).toBeLessThan(0.5);
    const energy = rotorEnergy({ blades: 4, inertia, speed: 300 * rpm });
    expect(Math.abs(energy / 526000 - 1)).toBeLessThan(2e-3);
    // It would lift the 1000 kg machine by 53.7 m.
    expect(Math.abs(energy / (1000 * gravity) - 53.7)).toBeLessThan(0.1);
  });
});

describe("a blade of 0.15 kg at 2000 rpm", () => {
  const speed = 2000 * rpm;

  it("pulls with m r w²", () => {
    // Closed form: centre of mass at 0.40 m, 2631.89 N or 268.38 kgf.
    const pull = bladePull({ mass: 0.15, centre: 0.4, speed });
    expect(Math.abs(pull - 2631.89)).toBeLessThan(0.02);
    expect(Math.abs(pull / gravity - 268.38)).toBeLessThan(0.02);
  });

  it("that is uniform obeys F = m R w²/2 and E = F R / 3", () => {
    const inertia = bladeInertia({ mass: 0.15, root: 0, tip: 0.8 })!;
    const pull = bladePull({ mass: 0.15, centre: uniformCentre(0, 0.8), speed });
    const energy = rotorEnergy({ blades: 1, inertia, speed });
    expect(Math.abs(pull / 2631.89450696 - 1)).toBeLessThan(1e-11);
    expect(Math.abs(energy / 701.838535189 - 1)).toBeLessThan(1e-11);
    expect(energy - (pull * 0.8) / 3).toBeCloseTo(0, 9);
  });

  it("has a tip speed of w R and its Mach number", () => {
    // Closed form, with the speed of sound of ISO 2533 at sea level.
    const tip = tipSpeed({ speed, radius: 0.8 });
    expect(Math.abs(tip - 167.5516)).toBeLessThan(1e-4);
    expect(Math.abs(tipMach({ tipSpeed: tip, soundSpeed: 340.294 }) - 0.492373)).toBeLessThan(1e-6);
  });
});

describe("moment of inertia", () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it("of a uniform blade with a root cut-out is m (R² + R r0 + r0²) / 3", () => {
    fc.assert(
      fc.property(number(0.01, 0.3), number(0.31, 1), (root, tip) => {
        const inertia = bladeInertia({ mass: 2, root, tip })!;
        expect(inertia).toBeCloseTo((2 * (tip ** 2 + tip * root + root ** 2)) / 3, 12);
      }),
    );
  });

  it("is the integral over a mass that rises evenly along the blade", () => {
    // Density 1 + k u over u = -1..1: centre of mass at k/3 of the half length.
    fc.assert(
      fc.property(number(-1, 1), number(0, 0.2), (k, root) => {
        const half = (0.8 - root) / 2;
        const at = (u: number) => root + half * (1 + u);
        const mass = integral((u) => 1 + k * u, -1, 1);
        const centre = integral((u) => (1 + k * u) * at(u), -1, 1) / mass;
        const exact = integral((u) => (1 + k * u) * at(u) ** 2, -1, 1) / mass;
        expect(bladeInertia({ mass: 1, root, tip: 0.8, centre })!).toBeCloseTo(exact, 12);
      }),
    );
  });

  it("grows with the centre of mass, without a jump, up to a point mass at the tip", () => {
    const at = (centre: number) => bladeInertia({ mass: 1, root: 0.1, tip: 0.8, centre })!;
    let before = 0;
    for (let centre = 0.1; centre <= 0.8; centre += 0.001) {
      const now = at(centre);
      expect(now).toBeGreaterThan(before);
      if (before > 0) expect(now - before).toBeLessThan(0.003);
      before = now;
    }
    expect(at(0.8)).toBeCloseTo(0.64, 12);
    expect(at(0.1)).toBeCloseTo(0.01, 12);
  });

  it("is unknown for a centre of mass outside the blade, or no blade at all", () => {
    expect(bladeInertia({ mass: 1, root: 0.1, tip: 0.8, centre: 0.9 })).toBeNull();
    expect(bladeInertia({ mass: 1, root: 0.1, tip: 0.8, centre: 0.05 })).toBeNull();
    expect(bladeInertia({ mass: 1, root: 0.8, tip: 0.8 })).toBeNull();
    expect(bladeInertia({ mass: 0, root: 0.1, tip: 0.8 })).toBeNull();
  });
});
