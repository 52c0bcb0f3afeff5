/** What head speed does to the blades as masses: stored energy and pull at the bolt, and what a limit means on another rotor. */
import { bladePull, rotorEnergy, tipSpeed } from "#model/blades";
import { rpm } from "#model/constants";
import type { Figures } from "./figures.ts";

/** Energy and pull over head speed. */
export interface BladeCurves {
  /** rpm, from 0 up */
  readonly speeds: readonly number[];
  /** J, all blades; null for blades whose inertia can't be. */
  readonly energies: readonly (number | null)[];
  /** N, one blade */
  readonly pulls: readonly number[];
  /** The maker's printed limit, rpm; null where none is printed. */
  readonly limit: number | null;
}

const STEPS = 36;
/** So much of the axis lies beyond the limit, or beyond the mode's own speed where no limit is printed. */
const BEYOND = 1.2;

/** Stored energy (J) and pull (N) against head speed in rpm, past limit and set speed. Errors: null for an impossible blade. Source: `rotorEnergy`, `bladePull`. */
export function bladeCurves(figures: Figures, mode: number): BladeCurves {
  const { rig, machine } = figures;
  const { blades, bladeMass: mass, bladeCentre: centre } = rig.parts.mainRotor;
  const limit = machine.mainRotor.ratedRpm;
  const top = Math.max(...[limit ?? 0, figures.number("set-head-speed", mode) ?? 0].map((speed) => BEYOND * speed));
  const speeds = Array.from({ length: STEPS + 1 }, (_, i) => (top * i) / STEPS);
  const inertia = rig.bladeInertia;
  return {
    speeds,
    energies: speeds.map((speed) => (inertia === null ? null : rotorEnergy({ blades, inertia, speed: speed * rpm }))),
    pulls: speeds.map((speed) => bladePull({ mass, centre, speed: speed * rpm })),
    limit,
  };
}

/** Tip speed at the maker's printed limit, m/s; null where none is printed. Source: definition. */
export function tipSpeedAtLimit(figures: Figures): number | null {
  const { ratedSpeed, radius } = figures.rig.parts.mainRotor;
  return ratedSpeed === null ? null : tipSpeed({ speed: ratedSpeed, radius });
}

/** Head speed, rpm, at which the tips of a rotor of a diameter in m move at so many m/s. Source: v = w R, by definition. */
export const headSpeedForTip = (tip: number, diameter: number): number => (2 * tip) / diameter / rpm;
