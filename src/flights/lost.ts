/** Where in a pack a mode is lost: not a dip that the governor mends, but a drop that full duty doesn't end. */
import type { Flight } from "#model/flight/run";
import { valueAt } from "#model/flight/trace";

/** A drop that lasts longer than this with the duty at its limit is a mode that is lost, s. Our choice. */
const lasting = 0.4;

export interface ModeLost {
  /** s */
  readonly time: number;
  /** 0 to 1 */
  readonly charge: number;
  /** Lowest rotor speed of that drop and the speed asked for, rad/s. */
  readonly lowest: number;
  readonly set: number;
}

/**
 * The first drop of more than 1 % for longer than 0.4 s in which the duty stood at its limit: time (s), charge (ratio), speeds
 * (rad/s); null when the mode was held to the end. Source: definition.
 */
export function modeLostIn({ spans, trace }: Pick<Flight, "spans" | "trace">): ModeLost | null {
  const limits = spans.filter((span) => span.kind === "duty-at-limit");
  const drop = spans.find(
    (low) =>
      low.kind === "speed-low" &&
      low.to - low.from >= lasting &&
      limits.some((limit) => Math.min(limit.to, low.to) - Math.max(limit.from, low.from) >= lasting / 2),
  );
  if (!drop) return null;
  return { time: drop.from, charge: valueAt(trace, "charge", drop.from), lowest: drop.value, set: drop.level };
}
