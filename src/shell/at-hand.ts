/** The page that stands open, for what is fetched later: its cells and its bench. */
import type { Bench } from "#machine/bench";
import type { CellRecord } from "#notebook/record";

interface AtHand {
  readonly records: readonly CellRecord[];
  readonly bench: Bench;
}

let open: AtHand | null = null;

/** Called by whoever opens a page. */
export const holdOpen = (page: AtHand): void => {
  open = page;
};

export const openNow = (): AtHand | null => open;
