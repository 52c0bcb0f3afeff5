/**
 * Solving ahead of the reader: the loads of a machine at all the speeds that moving its other parts may ask for. A rotor is
 * costly to solve and its points are kept, so what is done while nobody waits is not to be done in the middle of a movement.
 */
import type { Figures } from "./figures.ts";
import type { Rig } from "./rig.ts";

/** How far from a head speed gears, motor and pack may lead: a factor, either way. */
const FAR = 6;
/** Speeds in one piece: some milliseconds of work on a slow machine. */
const PIECE = 2;
/** Distance of the speeds in their logarithm: that of the points that loads keep. */
const STEP = 0.02;

/** The loads of a rig, each once. */
const loadsOf = (rig: Rig) =>
  new Set([rig.load("hover", 0), ...rig.parts.modes.map((_, mode) => rig.load("full-pitch", mode)), rig.flat]);

/**
 * The work in small pieces, the speeds nearest to the first mode's first. What is known already costs next to nothing.
 * Units: none. Errors: none. Source: definition.
 */
export function* aheadOf({ rig }: Figures): Generator<() => void> {
  const middle = rig.parts.modes[0]?.headSpeed ?? 0;
  const loads = loadsOf(rig);
  const steps = Math.ceil(Math.log(FAR) / STEP);
  for (let first = 0; first < steps; first += PIECE) {
    yield () => {
      for (let i = first; i < first + PIECE; i++) {
        for (const load of loads) {
          load(middle * Math.exp(i * STEP));
          load(middle * Math.exp(-i * STEP));
        }
      }
    };
  }
}
