/** What the shell brings to the pages: the plugin makes each page's script from this, and draws pages with it. */
import type { Bench } from "#machine/bench";
import type { Given } from "./given.ts";
import type { CellRecord } from "./record.ts";

/** `src/shell/page.ts` exports a `shell` of this type. */
export interface Shell {
  /** Its own parts as cells; their places, by `data-cell`, stand in index.html. */
  readonly parts: readonly CellRecord[];
  /** The bench as a first visitor finds it: pages are drawn with it when the site is built. */
  atRest(): { readonly bench: Bench; readonly given: Given };
  /** Opens a page in the browser: `parts` and the page's cells, bound to the reader's bench. */
  open(records: readonly CellRecord[]): { dispose(): void };
}
