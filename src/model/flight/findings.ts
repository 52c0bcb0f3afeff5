/** What a page asks of a flight that was flown: the charge at which a mode is lost. */
import type { Flight } from "./run.ts";
import { valueAt } from "./trace.ts";
import type { Span } from "./watch.ts";

/** A drop of the speed that lasts longer than this with the duty at its limit is a mode that is lost, not a dip that the governor mends: s. Our choice. */
const lasting = 0.4;

/** When and at what charge a mode was lost. */
export interface Loss {
  /** s */
  readonly time: number;
  /** 0 to 1 */
  readonly charge: number;
  /** Lowest rotor speed of that drop, and the speed asked for, rad/s. */
  readonly lowest: number;
  readonly set: number;
}

/**
 * The first drop of more than 1 % below the set speed for longer than 0.4 s in which the duty stood at its limit for 0.2 s in all, with the
 * charge (ratio) at its beginning; null: the mode was held to the end. Source: definition.
 */
export function modeLost({ spans, trace }: Pick<Flight, "spans" | "trace">): Loss | null {
  const limits = spans.filter((span) => span.kind === "duty-at-limit");
  const atLimit = (low: Span): number =>
    limits.reduce((sum, limit) => sum + Math.max(0, Math.min(limit.to, low.to) - Math.max(limit.from, low.from)), 0);
  const drop = spans.find(
    (low) => low.kind === "speed-low" && low.to - low.from >= lasting && atLimit(low) >= lasting / 2,
  );
  if (!drop) return null;
  return { time: drop.from, charge: valueAt(trace, "charge", drop.from), lowest: drop.value, set: drop.level };
}
