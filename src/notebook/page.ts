/** Draws what the cells show into their places on a page. */
import type { Bench } from "#machine/bench";
import { isShown, type Shown, type View } from "#view/shown";
import { inTurn } from "#view/turns";
import { cellWords } from "#view/words/en-cells";
import type { CellRecord } from "./record.ts";
import { type Failure, type OpenCells, type OpenNotebook, openNotebook } from "./runtime.ts";
import { steadyPlaces } from "./steady.ts";

// For whoever draws the pages: it has to come from the same module that the cells use.
export { failed } from "#view/claims";

export interface PageOptions<G extends object> {
  /** The page; each cell's place is its element with the cell's `data-cell`. */
  readonly document: Document;
  readonly records: readonly CellRecord[];
  readonly given: G;
  /** What the views propose changes to. */
  readonly bench: Bench;
}

/** What a cell shows for the machines beside the one on the page, by their names. */
export type Beside = Readonly<Record<string, Shown | undefined>>;

/** The state of what is shown with the states of the others put into it. */
export type Join = (shown: Shown, others: Beside) => unknown;

export interface OpenPage<G extends object> extends OpenNotebook<G> {
  /** Runs the cells with other values too, by name, and lets `join` draw what they show into the same places. */
  compare(givens: Readonly<Record<string, G>>, join: Join): void;
}

/** Opens a notebook on a page whose prose stands already. What was drawn when the site was built gives way cell by cell. */
export function openPage<G extends object>({ document, records, given, bench }: PageOptions<G>): OpenPage<G> {
  const slots = new Map<CellRecord, Slot>();
  const sight = watch(document);
  const steady = steadyPlaces(document);
  for (const record of records) {
    const host = document.querySelector<HTMLElement>(`[data-cell="${record.id}"]`);
    if (!host) continue;
    // Figures in the text are cheap enough to be drawn wherever they stand, and have no height of their own.
    const place = host.localName === "div";
    slots.set(record, new Slot(host, bench, place ? sight.of(host) : () => true, place ? steady.of(host) : () => {}));
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
  const others = new Map<string, OpenCells<G>>();
  return {
    ...notebook,
    dispose() {
      sight.end();
      steady.end();
      notebook.dispose();
    },
    async settled() {
      await Promise.all([notebook, ...others.values()].map((cells) => cells.settled()));
    },
    compare(givens, join) {
      for (const slot of slots.values()) slot.join = join;
      for (const [name, cells] of others) {
        if (name in givens) continue;
        others.delete(name);
        cells.close();
        for (const slot of slots.values()) slot.beside(name, undefined);
      }
      for (const [name, other] of Object.entries(givens)) {
        const cells = others.get(name);
        if (cells) cells.give(other);
        else {
          const show = (cell: CellRecord, value: unknown) => slots.get(cell)?.beside(name, value);
          others.set(name, notebook.beside({ given: other, show, fail: (cell) => show(cell, undefined) }));
        }
      }
    },
  };
}

/** Tells which places are in sight, or nearly. */
function watch(document: Document): { of(host: HTMLElement): () => boolean; end(): void } {
  const hidden = new WeakSet<Element>();
  const Observer = document.defaultView?.IntersectionObserver;
  const observer =
    Observer &&
    new Observer(
      (entries) => {
        for (const { target, isIntersecting } of entries) {
          if (isIntersecting) hidden.delete(target);
          else hidden.add(target);
        }
      },
      { rootMargin: "100px" },
    );
  return {
    of(host) {
      observer?.observe(host);
      return () => !hidden.has(host);
    },
    end: () => observer?.disconnect(),
  };
}

/** One cell's place. A view is mounted once and from then on only brought to its next state. */
class Slot {
  readonly #host: HTMLElement;
  readonly #bench: Bench;
  #view: View<unknown> | null = null;
  #update: (state: unknown) => void = () => {};
  #text: string | null = null;
  #shown: Shown | null = null;
  #state: unknown;
  #others: Record<string, Shown> = {};
  readonly #inSight: () => boolean;
  readonly #steady: () => void;
  /** Draws what is to be shown by the time of its turn. */
  readonly #later: () => void;
  join: Join | null = null;

  constructor(host: HTMLElement, bench: Bench, inSight: () => boolean, steady: () => void) {
    this.#host = host;
    this.#bench = bench;
    this.#inSight = inSight;
    this.#steady = steady;
    this.#later = inTurn(() => this.#shown && this.#put(this.#shown), inSight);
  }

  show(value: unknown): void {
    this.#steady();
    this.#shown = isShown(value) ? value : null;
    const view = this.#shown?.view;
    if (view && view === this.#view && (view.patient || !this.#inSight())) this.#later();
    else this.#put(value);
  }

  #put(value: unknown): void {
    try {
      if (isShown(value)) this.#draw(value.view, this.#joined(value));
      else this.#write(plainWords(value));
    } catch (error) {
      this.say(cellWords.stopped(reason(error)));
    }
  }

  /** Takes up what the cell shows for another machine. */
  beside(name: string, value: unknown): void {
    const { [name]: before, ...rest } = this.#others;
    if (!before && !isShown(value)) return;
    this.#others = isShown(value) ? { ...rest, [name]: value } : rest;
    if (this.#shown && this.#joined(this.#shown) !== this.#state) this.show(this.#shown);
  }

  #joined(shown: Shown): unknown {
    return this.join ? this.join(shown, this.#others) : shown.state;
  }

  /** Says why there is nothing to show. */
  say(words: string): void {
    this.#shown = null;
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
    this.#state = state;
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
