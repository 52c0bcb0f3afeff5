/** Weights of everyday things, to set beside the pull of a turning blade. Masses in kg. */
import { gravity } from "./constants.ts";

/** One thing whose weight everybody has felt or seen. `mass` in kg. */
export interface EverydayWeight {
  readonly what: string;
  readonly mass: number;
  readonly source: string;
}

/** From the lightest to the heaviest. */
export const everydayWeights: readonly EverydayWeight[] = [
  { what: "a bucket of water", mass: 10, source: "10 litres at 1 kg each" },
  { what: "a grown person", mass: 70, source: "as in OpenStax College Physics, chapter 7" },
  { what: "an upright piano", mass: 220, source: "from memory, 180 to 270 kg" },
  { what: "a small car", mass: 1000, source: "from memory, 900 to 1,100 kg" },
];

/**
 * Mass whose weight at rest is a force, m = F / g, kg, for a force in N. Source: definition of weight; g by ISO 80000-3.
 */
export const massOfWeight = (force: number): number => force / gravity;

/** Weight of a mass at rest, F = m g, N, for a mass in kg. Source: as above. */
export const weightOfMass = (mass: number): number => mass * gravity;
