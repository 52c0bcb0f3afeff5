import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hover, type RotorGeometry } from "#model/rotor/bemt";
import { sections } from "#model/rotor/section";

/**
 * Largest difference of neighbours along a way through one input. Where a figure is continuous, half the steps' length halves it;
 * where it jumps somewhere on the way, the jump stays.
 */
function largest(figure: (share: number) => number, steps: number): { step: number; size: number } {
  let [before, step, size] = [figure(0), 0, 0];
  for (let i = 1; i <= steps; i++) {
    const next = figure(i / steps);
    step = Math.max(step, Math.abs(next - before));
    size = Math.max(size, Math.abs(next));
    before = next;
  }
  return { step, size };
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("along a whole way through an input", { timeout: 120_000 }, () => {
  const ways = ["speed", "collective", "climb", "density", "viscosity", "soundSpeed", "chord", "twist"] as const;

  it.each(ways)("no figure jumps: %s", (way) => {
    fc.assert(
      fc.property(number(0.15, 1), number(0.02, 0.09), number(0.1, 0.5), (radius, collective, mach) => {
        const at = (share: number) => {
          const from = <T extends (typeof ways)[number]>(name: T, low: number, high: number, still: number) =>
            way === name ? low + share * (high - low) : still;
          const chord = radius * from("chord", 0.05, 0.12, 0.08);
          const geometry: RotorGeometry = {
            blades: 2,
            radius,
            rootCutout: 0.15 * radius,
            chordRoot: chord,
            chordTip: chord,
            twist: from("twist", -0.1, 0.02, 0),
            section: sections["symmetric-12"],
          };
          const air = {
            density: from("density", 0.7, 1.4, 1.2),
            viscosity: from("viscosity", 1.5e-5, 2e-5, 1.8e-5),
            soundSpeed: from("soundSpeed", 310, 360, 343),
          };
          const speed = (from("speed", 0.2, 1.5, 1) * mach * 343) / radius;
          return hover(geometry, air, {
            speed,
            collective: from("collective", -0.08, 0.11, collective),
            climb: from("climb", -0.005, 0.05, 0) * speed * radius,
          });
        };
        for (const key of ["thrustCoefficient", "torqueCoefficient"] as const) {
          const [coarse, fine] = [largest((s) => at(s)[key], 100), largest((s) => at(s)[key], 400)];
          expect(fine.step).toBeLessThan(0.5 * coarse.step + 1e-6 * fine.size);
        }
      }),
      { numRuns: 4 },
    );
  });
});
