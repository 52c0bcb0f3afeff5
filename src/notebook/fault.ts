/** What is wrong in a notebook, in words, at a place in its file. */

/** One mistake: `at` is the offset in the notebook's text. */
export interface Fault {
  readonly at: number;
  readonly words: string;
}

export interface Place {
  /** Both count from 1. */
  readonly line: number;
  readonly column: number;
}

export function placeOf(text: string, at: number): Place {
  const before = text.slice(0, at);
  const start = before.lastIndexOf("\n") + 1;
  return { line: before.split("\n").length, column: at - start + 1 };
}

/**
 * All mistakes of one notebook. Vite shows it as an overlay and clears it when the file is mended; the fields `id`,
 * `loc` and `frame` are those that Vite reads (its columns count from 0).
 */
export class NotebookError extends Error {
  override readonly name = "NotebookError";
  readonly id: string;
  readonly loc: { file: string; line: number; column: number };
  readonly frame: string;
  readonly faults: readonly (Place & { words: string })[];

  constructor(file: string, text: string, faults: readonly Fault[]) {
    const placed = faults.toSorted((a, b) => a.at - b.at).map(({ at, words }) => ({ ...placeOf(text, at), words }));
    super(placed.map(({ line, column, words }) => `${file}:${line}:${column}: ${words}`).join("\n"));
    const first = placed[0] ?? { line: 1, column: 1 };
    this.faults = placed;
    this.id = file;
    this.loc = { file, line: first.line, column: first.column - 1 };
    this.frame = frame(text, first);
    // Where the compiler found it is of no use to whoever wrote the notebook.
    this.stack = "";
  }
}

/** The line in question with its neighbours and a mark below the place. */
function frame(text: string, { line, column }: Place): string {
  const lines = text.split("\n");
  const from = Math.max(0, line - 3);
  return lines
    .slice(from, line + 2)
    .flatMap((words, i) => {
      const number = String(from + i + 1).padStart(4);
      const shown = `${number} | ${words}`;
      return from + i + 1 === line ? [shown, `     | ${" ".repeat(column - 1)}^`] : [shown];
    })
    .join("\n");
}
