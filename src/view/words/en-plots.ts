/** The words of the plot parts. */
import { capital } from "../text.ts";

export const plotWords = {
  table: "The same in numbers",
  save: "Save as a spreadsheet file",
  point: "point",
  none: "–",
  whatIf: "what if",
  /** What an earlier state is called on a plot, by what it has that the machine now has not. */
  pinned: (as: string) => (as === "" ? "pinned" : `pinned: ${as}`),
  /** The same in a caption, before what the plot then said. */
  pinnedLong: (as: string) => `pinned (${as})`,
  otherwise: (name: string, words: string) => `${capital(name)}: ${words}`,
  samePinned: "Nothing here differs from what was pinned.",
};
