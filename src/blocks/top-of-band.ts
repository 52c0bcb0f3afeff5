/** What is left above the top of the usable band when the pack is half empty: the answer to the question of a page. */
import { type Figures, figuresOf } from "#figures/figures";
import { withValue } from "#machine/paths";
import { formatModelled } from "#view/format";
import { enBlocks } from "#view/words/en-blocks";

const words = enBlocks.top;

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
  if (top === null || ceiling === null) return { roomAtHalf: null, words: words.none };
  const room = ceiling - top;
  return { roomAtHalf: room, words: (room >= 0 ? words.room : words.gone)(formatModelled(ceiling)) };
}
