/** A cell as the page gets it: a plain record, made when the site is built. */
export interface CellRecord {
  /** The `data-cell` of its place in the page's HTML. */
  readonly id: string;
  /** Where it stands in its Markdown file. */
  readonly line: number;
  /** The names that it needs, in the order in which `run` takes them. */
  readonly needs: readonly string[];
  /** The names that it declares, in the order in which `run` gives them. */
  readonly gives: readonly string[];
  readonly shows: boolean;
  /** Gives what the cell shows, then the values of `gives`; a cell that waits gives a promise of that. */
  run(...needs: never[]): unknown[] | Promise<unknown[]>;
}
