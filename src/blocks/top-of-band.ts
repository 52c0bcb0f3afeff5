/** What is left above the top of the usable band when the pack is half empty: the answer to the question of a page. */
import { type Figures, figuresOf } from "#figures/figures";
import { withValue } from "#machine/paths";
import { formatValue } from "#view/format";

export interface TopOfBand {
  /** Ceiling at full pitch and half charge less the top of the band, rpm; null where there is no such ceiling. */
  readonly roomAtHalf: number | null;
  readonly words: string;
}

/** The room above the top of the band at half charge, at the full pitch of a mode. */
export function topOfBand(figures: Figures, mode: number): TopOfBand {
  const half = figuresOf(withValue(figures.machine, "pack.chargePercent", 50));
  const top = figures.number("usable-high-head-speed");
  const ceiling = half.number("ceiling-full-pitch", mode);
  if (top === null || ceiling === null) {
    return {
      roomAtHalf: null,
      words: "This motor doesn't turn that rotor at full pitch on half a pack, so there is no ceiling at all.",
    };
  }
  const room = ceiling - top;
  const words =
    room >= 0
      ? `At half charge and full pitch the ceiling lies at ${formatValue(ceiling, "rpm")}: this machine has room even there. Try more pitch, or a tired pack.`
      : `At half charge and full pitch the ceiling has sunk to ${formatValue(ceiling, "rpm")}. The ten per cent are gone, and the governor stands at full duty, waiting for less pitch.`;
  return { roomAtHalf: room, words };
}
