/** What a warning is, and the names that other programs rely on. */
import type { Figures } from "./figures.ts";

export type WarningName =
  | "above-usable-band"
  | "below-usable-band"
  | "no-headroom"
  | "stale-reference"
  | "blade-speed-over-limit"
  | "motor-speed-over-limit"
  | "electrical-speed-over-limit"
  | "tip-mach-high"
  | "pack-current-high"
  | "pinion-mesh-poor"
  | "tail-speed-high"
  | "tail-thrust-short"
  | "hover-pitch-short"
  | "hover-speed-lost"
  | "learning-speed-over-limit";

export interface Warning {
  readonly name: WarningName;
  /** The flight mode it belongs to; null for the whole machine. */
  readonly mode: number | null;
  readonly value: number | null;
  readonly limit: number;
  readonly unit: string;
  readonly words: string;
}

/** A warning that doesn't know yet what it belongs to; null where there is none. */
export type Found = Omit<Warning, "mode"> | null;

/** Looks for one kind of fault in a flight mode. */
export type ModeCheck = (figures: Figures, mode: number) => Found;
