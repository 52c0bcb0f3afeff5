/**
 * The browser's own store: the machines are there tomorrow, and undo survives turning the page. A store that is full,
 * forbidden or holds rubbish costs nothing but the keeping: work goes on, the reader is told, nothing stored is lost.
 */
import type { Bench, BenchHistory, BenchState } from "./bench.ts";
import { machineRecord, readJson } from "./file.ts";
import { readLink, writeLink } from "./link.ts";
import { type Problem, readMachine } from "./validate.ts";
import { sentences } from "./words.ts";

/** The part of the browser's `Storage` that is used. */
export interface StorageLike {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/** What the store gave back. */
interface Stored {
  /** Null when nothing usable was there. */
  readonly state: BenchState | null;
  readonly problems: Problem[];
}

export interface Store {
  /** Reads what was kept. Call it once, before the first `save`: it puts unreadable records aside. */
  load(): Stored;
  /** Keeps both machines; a message in words where that can't be done. */
  save(state: BenchState): Problem | null;
  /** The steps of undo of this sitting, if they belong to this state; undefined otherwise. */
  loadHistory(state: BenchState): BenchHistory | undefined;
  /** Keeps the last steps of undo for the next page. */
  saveHistory(state: BenchState, history: BenchHistory): void;
}

/** The key names the version of what stands under it. */
export const STORE_KEY = "governor-workbook.bench.1";
export const HISTORY_KEY = "governor-workbook.history.1";
/** Records that could not be read are put aside under these keys, never written over. */
export const asideKey = (n: number): string => `${STORE_KEY}.aside.${n}`;
const MOST_ASIDE = 9;
/** So many steps of undo go along to the next page. */
const MOST_KEPT_STEPS = 20;

const told = (words: string): Problem => ({ path: "", value: undefined, words });

/** Puts a text aside under the first free key; false when there is no room for it. */
function putAside(storage: StorageLike, text: string): boolean {
  for (let n = 1; n <= MOST_ASIDE; n++) {
    const there = storage.getItem(asideKey(n));
    if (there === text) return true;
    if (there === null) {
      storage.setItem(asideKey(n), text);
      return storage.getItem(asideKey(n)) === text;
    }
  }
  return false;
}

interface Parsed {
  readonly state: BenchState | null;
  readonly problems: Problem[];
}

function parsed(text: string): Parsed {
  const json = readJson(text, "The machine kept in this browser");
  if (!json.ok) return { state: null, problems: [json.problem] };
  const { now, whatIf } = (
    typeof json.value === "object" && json.value !== null ? json.value : {}
  ) as Partial<BenchState>;
  const first = readMachine(now);
  // A note tells of fields that were left out of a machine that is there.
  if (first.problems.some(({ path, note }) => !note && (path === "" || path === "version")))
    return { state: null, problems: first.problems };
  const second = whatIf === null || whatIf === undefined ? null : readMachine(whatIf, first.machine);
  const problems = [...first.problems, ...(second?.problems ?? [])];
  return { state: { now: first.machine, whatIf: second?.machine ?? null }, problems };
}

const recordOf = ({ now, whatIf }: BenchState): string =>
  JSON.stringify({ now: machineRecord(now), whatIf: whatIf && machineRecord(whatIf) });

const links = new WeakMap<BenchState, string>();

/** A past state as a link. Each is written once: the same states are kept again and again while others are added. */
function linkOf(state: BenchState): string {
  const known = links.get(state);
  if (known !== undefined) return known;
  const link = writeLink(state);
  links.set(state, link);
  return link;
}

function stateOf(link: unknown): BenchState | null {
  const reading = typeof link === "string" ? readLink(link) : null;
  return reading?.now && reading.problems.length === 0 ? { now: reading.now, whatIf: reading.whatIf } : null;
}

/**
 * A store over the browser's two storages. They come as functions, because a browser that forbids them throws as soon
 * as they are named: `openStore(() => localStorage, () => sessionStorage)`.
 */
export function openStore(local: () => StorageLike, session: () => StorageLike): Store {
  // Something is stored that could be neither read nor put aside: it must not be written over.
  let locked = false;

  return {
    load() {
      let text: string | null;
      let storage: StorageLike;
      try {
        storage = local();
        text = storage.getItem(STORE_KEY);
      } catch {
        return { state: null, problems: [told(sentences.storeForbidden())] };
      }
      if (text === null) return { state: null, problems: [] };
      const { state, problems } = parsed(text);
      if (problems.length === 0) return { state, problems };
      try {
        locked = !putAside(storage, text);
      } catch {
        locked = true;
      }
      const first = told(locked ? sentences.storeLocked() : sentences.storeAside());
      return { state, problems: [first, ...problems] };
    },

    save(state) {
      if (locked) return told(sentences.storeLocked());
      let storage: StorageLike;
      try {
        storage = local();
      } catch {
        return told(sentences.storeForbidden());
      }
      try {
        storage.setItem(STORE_KEY, recordOf(state));
        return null;
      } catch {
        return told(sentences.storeFull());
      }
    },

    loadHistory(state) {
      try {
        const json = readJson(session().getItem(HISTORY_KEY) ?? "", "");
        if (!json.ok) return undefined;
        const { present, past, future } = json.value as Record<string, unknown>;
        if (present !== writeLink(state) || !Array.isArray(past) || !Array.isArray(future)) return undefined;
        const read = (links: readonly unknown[]) => links.slice(-MOST_KEPT_STEPS).map(stateOf);
        const [before, after] = [read(past), read(future)];
        if ([...before, ...after].includes(null)) return undefined;
        return { past: before as BenchState[], future: after as BenchState[] };
      } catch {
        return undefined;
      }
    },

    saveHistory(state, { past, future }) {
      const last = (states: readonly BenchState[]) => states.slice(-MOST_KEPT_STEPS).map(linkOf);
      try {
        const text = JSON.stringify({ present: writeLink(state), past: last(past), future: last(future) });
        session().setItem(HISTORY_KEY, text);
      } catch {
        // Undo then ends with this page; the machines themselves are kept by `save`, which tells of its failures.
      }
    },
  };
}

/**
 * Keeps a bench in a store: a moment after each change, and at once on `flush` (when the page is left). `tell` hears the
 * words of a failure once, and null when keeping works again.
 */
export function keepBench(
  bench: Bench,
  store: Store,
  tell: (problem: Problem | null) => void,
  wait = 400,
): { flush(): void; stop(): void } {
  let kept = bench.version;
  let failed: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let seen = kept;

  // One timer for all changes of a drag, which looks whether there were more: to start it anew with each would cost more.
  function arm(): void {
    seen = bench.version;
    timer = setTimeout(() => (bench.version === seen ? flush() : arm()), wait);
  }

  function flush(): void {
    clearTimeout(timer);
    timer = undefined;
    if (bench.version === kept) return;
    const problem = store.save(bench);
    store.saveHistory(bench, bench.history);
    kept = bench.version;
    if ((problem?.words ?? null) !== failed) {
      failed = problem?.words ?? null;
      tell(problem);
    }
  }

  const leave = bench.subscribe(() => {
    if (timer === undefined) arm();
  });
  return {
    flush,
    stop() {
      clearTimeout(timer);
      timer = undefined;
      leave();
    },
  };
}
