/**
 * The machines on the bench, *now* and *what if*, with undo over everything that is done to them. Every change goes
 * through the one validator; a refused one changes nothing and comes back as words.
 */
import { clubTrainer } from "./demos.ts";
import type { Machine } from "./machine.ts";
import { changedBetween, same, valueAt, withValue } from "./paths.ts";
import { brokenRules, nameOf } from "./rules.ts";
import { checkAt, type Problem, readMachine } from "./validate.ts";
import { chargePath, chargePercentAt, voltagePath } from "./voltage.ts";
import { sentences } from "./words.ts";

export type { Problem } from "./validate.ts";

/** Which of the two machines is meant. */
export type Which = "now" | "what-if";

export interface ChangeOptions {
  /** The machine to change; `now` where nothing is said. */
  readonly machine?: Which;
  /** Joins many steps (of one drag, say) into one step of undo. Each drag has a string of its own. */
  readonly gesture?: string;
}

/** Both machines at one moment. */
export interface BenchState {
  readonly now: Machine;
  readonly whatIf: Machine | null;
}

/** What undo and redo can go back to: the nearest state last in both lists. */
export interface BenchHistory {
  readonly past: readonly BenchState[];
  readonly future: readonly BenchState[];
}

export interface Bench extends BenchState {
  /** Proposes one change. A refused one changes nothing and comes back as words. */
  set(path: string, value: unknown, options?: ChangeOptions): Problem | null;
  /** Proposes several changes at once: all of them are made, or none. */
  change(edit: (machine: Machine) => Machine, options?: ChangeOptions): Problem[];
  /** Puts another machine on the bench: from a demo, a file or a link. */
  replace(machine: Machine, whatIf?: Machine | null): void;
  /** Puts the demo machine back, alone. Can be undone. */
  backToDemo(): void;
  /** Puts a copy of *now* beside it, unless there is a what-if machine already. */
  startWhatIf(): void;
  dropWhatIf(): void;
  /** Lets *now* and *what if* change places. */
  swap(): void;
  undo(): boolean;
  redo(): boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** The fields of either machine that the last change touched; all that differ after another machine came. */
  readonly changedPaths: readonly string[];
  /** Grows by one with every change: equal versions mean equal machines. */
  readonly version: number;
  readonly history: BenchHistory;
  /** Calls `listener` after each change, before the change returns. Returns the way out. */
  subscribe(listener: () => void): () => void;
}

/** At most so many steps can be undone. */
export const MOST_STEPS = 200;

const sameState = (a: BenchState, b: BenchState): boolean => same(a.now, b.now) && same(a.whatIf, b.whatIf);

function changedPaths(before: BenchState, after: BenchState): string[] {
  const paths = changedBetween(before.now, after.now);
  if (after.whatIf) paths.push(...changedBetween(before.whatIf ?? before.now, after.whatIf));
  return [...new Set(paths)];
}

/** The rules between fields that a change has newly broken, told from the side of the changed field where it has one. */
function broken(machine: Machine, path: string, value: unknown): Problem[] {
  return brokenRules(machine).map(({ paths, words }) => {
    const side = Math.max(
      0,
      paths.findIndex((each) => each === path || each.startsWith(`${path}.`)),
    );
    return { path: paths[side] ?? path, value, words: words[side] ?? "" };
  });
}

function proposed(machine: Machine, path: string, value: unknown): { machine: Machine } | { problem: Problem } {
  if (path === voltagePath) {
    const charge = chargePercentAt(machine, value);
    return charge.ok ? proposed(machine, chargePath, charge.percent) : { problem: charge.problem };
  }
  const checked = checkAt(path, value);
  if (!checked.ok) return { problem: checked.problem };
  if (valueAt(machine, path) === undefined) {
    const place = /^modes\.(\d+)/.exec(path)?.[1];
    const words =
      place === undefined
        ? sentences.groupIsOff(nameOf(path))
        : sentences.noSuchMode(Number(place) + 1, machine.modes.length);
    return { problem: { path, value, words } };
  }
  if (same(valueAt(machine, path), checked.value)) return { machine };
  const next = withValue(machine, path, checked.value);
  const problem = broken(next, path, value)[0];
  return problem ? { problem } : { machine: next };
}

/** Puts a machine on a bench of its own; `history` brings back the steps of an earlier sitting. */
export function createBench(now: Machine = clubTrainer, whatIf: Machine | null = null, history?: BenchHistory): Bench {
  let state: BenchState = { now, whatIf };
  let past: readonly BenchState[] = history?.past.slice(-MOST_STEPS) ?? [];
  let future: readonly BenchState[] = history?.future.slice(-MOST_STEPS) ?? [];
  let gesture: string | undefined;
  let touched: readonly string[] = [];
  let version = 0;
  const listeners = new Set<() => void>();

  function show(next: BenchState): void {
    touched = changedPaths(state, next);
    state = next;
    version += 1;
    for (const listener of [...listeners]) listener();
  }

  function go(next: BenchState, name?: string): void {
    if (sameState(state, next)) return;
    const joins = name !== undefined && name === gesture && past.length > 0;
    if (!joins) past = [...past.slice(1 - MOST_STEPS), state];
    // A drag that ends where it began has done nothing that could be undone.
    else if (sameState(past.at(-1) as BenchState, next)) {
      past = past.slice(0, -1);
      gesture = undefined;
      show(next);
      return;
    }
    future = [];
    gesture = name;
    show(next);
  }

  const target = (which: Which = "now"): Machine | null => (which === "now" ? state.now : state.whatIf);
  const placed = (which: Which = "now", machine: Machine): BenchState =>
    which === "now" ? { ...state, now: machine } : { ...state, whatIf: machine };

  function step(from: readonly BenchState[]): BenchState | undefined {
    gesture = undefined;
    return from.at(-1);
  }

  return {
    get now() {
      return state.now;
    },
    get whatIf() {
      return state.whatIf;
    },
    get canUndo() {
      return past.length > 0;
    },
    get canRedo() {
      return future.length > 0;
    },
    get changedPaths() {
      return touched;
    },
    get version() {
      return version;
    },
    get history() {
      return { past, future };
    },
    set(path, value, options = {}) {
      const machine = target(options.machine);
      if (!machine) return { path, value, words: sentences.noWhatIf() };
      const result = proposed(machine, path, value);
      if ("problem" in result) return result.problem;
      go(placed(options.machine, result.machine), options.gesture);
      return null;
    },
    change(edit, options = {}) {
      const machine = target(options.machine);
      if (!machine) return [{ path: "", value: null, words: sentences.noWhatIf() }];
      const { machine: next, problems } = readMachine(edit(machine), machine);
      if (problems.length === 0) go(placed(options.machine, next), options.gesture);
      return problems;
    },
    replace: (machine, other = null) => go({ now: machine, whatIf: other }),
    backToDemo: () => go({ now: clubTrainer, whatIf: null }),
    startWhatIf: () => go({ ...state, whatIf: state.whatIf ?? state.now }),
    dropWhatIf: () => go({ ...state, whatIf: null }),
    swap: () => state.whatIf && go({ now: state.whatIf, whatIf: state.now }),
    undo() {
      const last = step(past);
      if (!last) return false;
      past = past.slice(0, -1);
      future = [...future, state];
      show(last);
      return true;
    },
    redo() {
      const next = step(future);
      if (!next) return false;
      future = future.slice(0, -1);
      past = [...past, state];
      show(next);
      return true;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
