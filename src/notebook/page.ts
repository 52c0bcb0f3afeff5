/** Draws what the cells show into their places on a page. */
import type { Bench } from "#machine/bench";
import { isShown, type View } from "#view/shown";
import { cellWords } from "#view/words/en-cells";
import type { CellRecord } from "./record.ts";
import { type Failure, type OpenNotebook, openNotebook } from "./runtime.ts";

export interface PageOptions<G extends object> {
  /** The page; each cell's place is its element with the cell's `data-cell`. */
  readonly document: Document;
  readonly records: readonly CellRecord[];
  readonly given: G;
  /** What the views propose changes to. */
  readonly bench: Bench;
}

/** Opens a notebook on a page whose prose stands already. What was drawn when the site was built gives way cell by cell. */
export function openPage<G extends object>({ document, records, given, bench }: PageOptions<G>): OpenNotebook<G> {
  const slots = new Map<CellRecord, Slot>();
  for (const record of records) {
    const host = document.querySelector<HTMLElement>(`[data-cell="${record.id}"]`);
    if (host) slots.set(record, new Slot(host, bench));
  }
  const notebook = openNotebook(records, {
    given,
    show: (cell, value) => slots.get(cell)?.show(value),
    fail: (cell, failure) => slots.get(cell)?.say(failureWords(cell, failure)),
  });
  void notebook.settled().then(() => {
    // From here on the page answers; those who drive it can wait for this.
    document.documentElement.dataset.live = "true";
  });
  return notebook;
}

/** One cell's place. A view is mounted once and from then on only brought to its next state. */
class Slot {
  readonly #host: HTMLElement;
  readonly #bench: Bench;
  #view: View<unknown> | null = null;
  #update: (state: unknown) => void = () => {};
  #text: string | null = null;

  constructor(host: HTMLElement, bench: Bench) {
    this.#host = host;
    this.#bench = bench;
  }

  show(value: unknown): void {
    try {
      if (isShown(value)) this.#draw(value.view, value.state);
      else this.#write(plainWords(value));
    } catch (error) {
      this.say(cellWords.stopped(reason(error)));
    }
  }

  /** Says why there is nothing to show. */
  say(words: string): void {
    this.#write(words);
    this.#host.dataset.stopped = "true";
  }

  #draw(view: View<unknown>, state: unknown): void {
    if (view !== this.#view) {
      this.#clear();
      this.#update = view.mount(this.#host, this.#bench);
      this.#view = view;
    }
    this.#update(state);
  }

  #write(text: string): void {
    if (text === this.#text && !this.#host.dataset.stopped) return;
    this.#clear();
    this.#host.textContent = text;
    this.#text = text;
  }

  #clear(): void {
    delete this.#host.dataset.stopped;
    this.#host.replaceChildren();
    this.#view = null;
    this.#text = null;
  }
}

/** The words for a value that is no view's; nothing for none. */
function plainWords(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (typeof value === "string") return value;
  if (typeof value !== "number") throw new Error(cellWords.unshown);
  if (!Number.isFinite(value)) throw new Error(cellWords.noNumber);
  return String(value);
}

export function failureWords(cell: CellRecord, failure: Failure): string {
  if (failure.cell === cell) return cellWords.stopped(reason(failure.error));
  const { gives, line } = failure.cell;
  return cellWords.waits(gives[0] === undefined ? cellWords.cell(line) : cellWords.cellOf(gives[0], line));
}

function reason(error: unknown): string {
  const words = error instanceof Error ? error.message : typeof error === "string" ? error : "";
  return words || cellWords.noWords;
}
