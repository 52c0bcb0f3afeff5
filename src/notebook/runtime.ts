/**
 * The one place that touches the reactive runtime: plain cell records go in, what they show and how they fail comes out.
 * A failure travels through the graph as a value, so each cell that waits knows for which one.
 */
// First, because the runtime takes its clock while it loads.
import "./frame.ts";
import { type Module, Runtime, type Variable } from "@observablehq/runtime";
import { endLoading } from "./frame.ts";
import type { CellRecord } from "./record.ts";

endLoading();

/** Why a cell has no value: it threw itself, or one that it needs did; `cell` is the one that threw. */
export class Failure {
  readonly cell: CellRecord;
  readonly error: unknown;

  constructor(cell: CellRecord, error: unknown) {
    this.cell = cell;
    this.error = error;
  }
}

export interface NotebookOptions<G extends object> {
  /** The names from outside and their first values. */
  readonly given: G;
  /** A cell that shows something has a new value. */
  show(cell: CellRecord, value: unknown): void;
  /** A cell threw, or waits for one that did (`failure.cell`). */
  fail(cell: CellRecord, failure: Failure): void;
}

/** The cells of a notebook at work with one set of given values. */
export interface OpenCells<G extends object> {
  /** Gives names new values, all at once; those that are the same as before cost nothing. */
  give(values: Partial<G>): void;
  /** Resolves when every cell has answered to all that was given so far. */
  settled(): Promise<void>;
  /** Ends their work. */
  close(): void;
}

export interface OpenNotebook<G extends object> extends OpenCells<G> {
  /** Lets the same cells work with other values as well, in the same turn of the graph. */
  beside(options: NotebookOptions<G>): OpenCells<G>;
  dispose(): void;
}

// Names of the graph that no cell can declare, because no identifier looks like them.
const beat = "(beat)";
const cellName = ({ id }: CellRecord): string => `(${id})`;

/** Opens a notebook: every cell runs once, and again whenever something that it needs has changed. */
export function openNotebook<G extends object>(
  records: readonly CellRecord[],
  options: NotebookOptions<G>,
): OpenNotebook<G> {
  const runtime = new Runtime();
  return {
    ...openCells(runtime, records, options),
    beside: (other) => openCells(runtime, records, other),
    dispose: () => runtime.dispose(),
  };
}

function openCells<G extends object>(
  runtime: Runtime,
  records: readonly CellRecord[],
  options: NotebookOptions<G>,
): OpenCells<G> {
  const module = runtime.module();
  const given = new Map<string, unknown>(Object.entries(options.given));
  const variables = [...given].map(([name, value]) => module.define(name, [], () => value));

  const running = new Set<CellRecord>();
  let waiting: (() => void)[] = [];
  let beats = 0;
  let beaten = 0;
  let closed = false;
  const answered = (): void => {
    if (running.size > 0 || beaten < beats) return;
    const done = waiting;
    waiting = [];
    for (const resolve of done) resolve();
  };
  const pulse = module.variable({
    fulfilled: (turn) => {
      beaten = turn as number;
      answered();
    },
  });
  variables.push(pulse.define(beat, [], () => 0));

  for (const record of records) {
    let last: unknown;
    const observer = {
      pending: () => running.add(record),
      fulfilled: (value: unknown) => {
        running.delete(record);
        // A node that is taken out of the graph says so with nothing.
        if (closed) return;
        // A cell that did not have to run again has the very same result.
        if (value !== last) {
          last = value;
          if (value instanceof Failure) options.fail(record, value);
          else options.show(record, (value as readonly unknown[])[0]);
        }
        answered();
      },
    };
    variables.push(...addCell(module, record, observer));
  }

  return {
    give(values) {
      for (const [name, value] of Object.entries(values)) {
        if (given.has(name) && Object.is(given.get(name), value)) continue;
        given.set(name, value);
        module.redefine(name, [], () => value);
      }
    },
    settled() {
      const turn = ++beats;
      module.redefine(beat, [], () => turn);
      return new Promise((resolve) => waiting.push(resolve));
    },
    close() {
      closed = true;
      for (const variable of variables) variable.delete();
    },
  };
}

type Observer = { pending(): void; fulfilled(value: unknown): void };

/** A cell is one node of the graph, and each name that it gives one more that picks it out. */
function addCell(module: Module, record: CellRecord, observer: Observer): Variable[] {
  const cell = module.variable(observer).define(cellName(record), record.needs, guarded(record));
  const names = record.gives.map((name, i) =>
    module.define(name, [cellName(record)], (all: unknown) =>
      all instanceof Failure ? all : (all as readonly unknown[])[i + 1],
    ),
  );
  return [cell, ...names];
}

/** The cell's function, which never throws, and does not run again when all that it needs is as it was. */
function guarded(record: CellRecord): (...needs: unknown[]) => unknown {
  const run = record.run as (...needs: unknown[]) => unknown[] | Promise<unknown[]>;
  const failed = (error: unknown): Failure => new Failure(record, error);
  let before: unknown[] | null = null;
  let result: unknown;
  return (...needs) => {
    if (before?.every((value, i) => Object.is(value, needs[i]))) return result;
    before = needs;
    const missing = needs.find((value) => value instanceof Failure);
    if (missing) {
      result = missing;
      return result;
    }
    try {
      result = run(...needs);
      if (result instanceof Promise) result = result.catch(failed);
    } catch (error) {
      result = failed(error);
    }
    return result;
  };
}

/** What one cell came to: a value, or the failure that keeps it from one. */
export interface CellResult {
  readonly cell: CellRecord;
  readonly value: unknown;
  readonly failure: Failure | null;
}

/** Runs a notebook without a page, once, with the same graph: for tests, and for drawing pages at build time. */
export async function runHeadless<G extends object>(records: readonly CellRecord[], given: G): Promise<CellResult[]> {
  const results = new Map<CellRecord, CellResult>();
  const notebook = openNotebook(records, {
    given,
    show: (cell, value) => results.set(cell, { cell, value, failure: null }),
    fail: (cell, failure) => results.set(cell, { cell, value: undefined, failure }),
  });
  await notebook.settled();
  notebook.dispose();
  return records.flatMap((record) => results.get(record) ?? []);
}
