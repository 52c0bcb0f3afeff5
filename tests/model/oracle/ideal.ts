/** What closed forms of a rotor take for granted: the far wake of momentum theory, and a section without stall. */
import type { Section } from "#model/rotor/section";

/** Speed of the far wake over that in the disc, no unit. Source: momentum theory. */
export const idealWake = 2;

/**
 * A section with straight lift and constant drag, for closed forms: C_l = a sin alpha, C_d = C_d0, without stall.
 *
 * @param slope lift slope a, 1/rad
 * @param drag drag coefficient C_d0, no unit
 * @returns the section. Source: definition.
 */
export function linearSection(slope: number, drag: number): Section {
  return {
    name: "straight lift",
    coefficients(_reynolds, _mach, out, at) {
      out[at] = slope;
      out[at + 1] = 0;
      out[at + 2] = 0;
      out[at + 3] = drag;
      out[at + 4] = 0;
      out[at + 5] = 0;
    },
  };
}
