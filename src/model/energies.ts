/** Energies of everyday things, to set beside what turning blades hold. J. */

/** One thing that everybody has a feeling for. `joules` is its energy. */
export interface EverydayEnergy {
  readonly what: string;
  readonly joules: number;
  readonly source: string;
}

/** From the smallest to the largest. Weapons are left out on purpose. */
export const everydayEnergies: readonly EverydayEnergy[] = [
  { what: "a 1 kg bag of sugar falling off a table", joules: 7.4, source: "m g h with 0.75 m" },
  { what: "a tennis ball at 100 km/h", joules: 22, source: "OpenStax College Physics, table 7.1" },
  { what: "a person walking", joules: 69, source: "m v²/2 with 70 kg and 1.4 m/s" },
  {
    what: "a hard cricket throw",
    joules: 128,
    source: "m v²/2 with 40 m/s; ball of 160 g by the Laws of Cricket, from memory",
  },
  { what: "a very fast baseball pitch", joules: 147, source: "m v²/2 with 145 g and 45 m/s" },
  {
    what: "a cyclist and bicycle at 20 km/h",
    joules: 1543,
    source: "m v²/2 with 100 kg; inputs from the University of Arizona's energy notes, course 195A",
  },
  { what: "a person sprinting", joules: 2240, source: "m v²/2 with 70 kg and 8 m/s" },
  { what: "100 kg falling from 10 m", joules: 9807, source: "m g h" },
  { what: "a small car at 90 km/h", joules: 310_000, source: "OpenStax College Physics, table 7.1" },
  { what: "the rotor of a rescue helicopter", joules: 526_000, source: "OpenStax College Physics, example 10.9" },
];

/**
 * The everyday energy that is nearest in proportion to a given one, and how many times it the given one is (ratio).
 * Null for an energy (J) that isn't above zero. Source: the entry's own.
 */
export function nearestEnergy(joules: number): { readonly energy: EverydayEnergy; readonly times: number } | null {
  if (!(joules > 0)) return null;
  const apart = (e: EverydayEnergy) => Math.abs(Math.log(joules / e.joules));
  const energy = everydayEnergies.reduce((best, e) => (apart(e) < apart(best) ? e : best));
  return { energy, times: joules / energy.joules };
}
