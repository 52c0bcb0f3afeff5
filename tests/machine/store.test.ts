import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createBench } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";
import { withValue } from "#machine/paths";
import { asideKey, HISTORY_KEY, keepBench, openStore, STORE_KEY, type StorageLike } from "#machine/store";

/** A storage in memory that can be full (of so many characters) or fail altogether. */
class Shelf implements StorageLike {
  readonly held = new Map<string, string>();
  room = Number.POSITIVE_INFINITY;
  getItem(key: string): string | null {
    return this.held.get(key) ?? null;
  }
  setItem(key: string, value: string): void {
    if (value.length > this.room) throw new DOMException("full", "QuotaExceededError");
    this.held.set(key, value);
  }
}

const forbidden = (): StorageLike => {
  throw new DOMException("forbidden", "SecurityError");
};

const own = withValue(clubTrainer, "gears.pinionTeeth", 14);

describe("the store", () => {
  let local: Shelf;
  let session: Shelf;
  const open = () =>
    openStore(
      () => local,
      () => session,
    );
  beforeEach(() => {
    local = new Shelf();
    session = new Shelf();
  });

  it("gives back both machines", () => {
    expect(open().load()).toEqual({ state: null, problems: [] });
    expect(open().save({ now: own, whatIf: demos[1] ?? null })).toBeNull();
    expect(open().load()).toEqual({ state: { now: own, whatIf: demos[1] }, problems: [] });
    open().save({ now: clubTrainer, whatIf: null });
    expect(open().load().state).toEqual({ now: clubTrainer, whatIf: null });
  });

  it.each([
    ["rubbish", "{now:"],
    ["an empty record", "{}"],
    ["a number", "5"],
    ["a record of a newer version", JSON.stringify({ now: { ...clubTrainer, version: 9 }, whatIf: null })],
  ])("puts %s aside, says so, and goes on", (_, text) => {
    local.setItem(STORE_KEY, text);
    const store = open();
    const { state, problems } = store.load();
    expect(state).toBeNull();
    expect(problems[0]?.words).toContain("put aside");
    expect(store.save({ now: own, whatIf: null })).toBeNull();
    expect(local.getItem(asideKey(1))).toBe(text);
  });

  it("keeps the good part of a record with a fault, and the record aside", () => {
    const text = JSON.stringify({ now: { ...own, pack: { ...own.pack, cells: 0 } }, whatIf: null });
    local.setItem(STORE_KEY, text);
    const { state, problems } = open().load();
    expect(state?.now).toEqual(own);
    expect(problems.map((problem) => problem.path)).toEqual(["", "pack.cells"]);
    expect(local.getItem(asideKey(1))).toBe(text);
    open().load();
    expect(local.getItem(asideKey(2))).toBeNull();
  });

  it("keeps a machine with any number of fields that a machine doesn't have", () => {
    for (const count of [1, 20, 21, 500]) {
      const strange = Object.fromEntries(Array.from({ length: count }, (_, i) => [`x${i}`, i]));
      local.setItem(STORE_KEY, JSON.stringify({ now: { ...own, ...strange }, whatIf: null }));
      const { state, problems } = open().load();
      expect(state).toEqual({ now: own, whatIf: null });
      expect(problems).toHaveLength(1 + Math.min(count, 21));
    }
  });

  it("never writes over what it could neither read nor put aside", () => {
    local.setItem(STORE_KEY, "rubbish");
    local.room = 3;
    const store = open();
    expect(store.load().problems[0]?.words).toContain("stays as it is");
    local.room = 1e6;
    expect(store.save({ now: own, whatIf: null })?.words).toContain("stays as it is");
    expect(local.getItem(STORE_KEY)).toBe("rubbish");
  });

  it("does not write over records put aside earlier", () => {
    for (let n = 1; n <= 9; n++) local.setItem(asideKey(n), `old ${n}`);
    local.setItem(STORE_KEY, "rubbish");
    expect(open().load().problems[0]?.words).toContain("stays as it is");
    for (let n = 1; n <= 9; n++) expect(local.getItem(asideKey(n))).toBe(`old ${n}`);
  });

  it("says in words that it is full, and keeps what it had", () => {
    open().save({ now: own, whatIf: null });
    local.room = 10;
    expect(open().save({ now: clubTrainer, whatIf: null })?.words).toContain("no room left");
    expect(open().load().state?.now).toEqual(own);
  });

  it("says in words that it is forbidden", () => {
    const store = openStore(forbidden, forbidden);
    expect(store.load()).toMatchObject({
      state: null,
      problems: [{ words: expect.stringContaining("keeps nothing") }],
    });
    expect(store.save({ now: own, whatIf: null })?.words).toContain("keeps nothing");
    store.saveHistory({ now: own, whatIf: null }, { past: [], future: [] });
    expect(store.loadHistory({ now: own, whatIf: null })).toBeUndefined();
  });

  it("carries the last steps of undo to the next page, if the machine is still the same", () => {
    const bench = createBench();
    for (let teeth = 14; teeth < 50; teeth++) bench.set("gears.pinionTeeth", teeth);
    bench.undo();
    open().saveHistory(bench, bench.history);
    const history = open().loadHistory({ now: bench.now, whatIf: null });
    expect(history?.past.map((state) => state.now.gears.pinionTeeth)).toEqual(
      Array.from({ length: 20 }, (_, i) => 28 + i),
    );
    expect(history?.future.map((state) => state.now.gears.pinionTeeth)).toEqual([49]);
    expect(open().loadHistory({ now: clubTrainer, whatIf: null })).toBeUndefined();
    for (const text of ["", "rubbish", "null", '{"present":1}']) {
      session.setItem(HISTORY_KEY, text);
      expect(open().loadHistory({ now: bench.now, whatIf: null })).toBeUndefined();
    }
  });

  describe("keeping a bench", () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    it("writes once, a moment after the last of many changes", () => {
      const bench = createBench();
      const tell = vi.fn();
      const write = vi.spyOn(local, "setItem");
      keepBench(bench, open(), tell, 400);
      for (let teeth = 14; teeth < 20; teeth++) {
        bench.set("gears.pinionTeeth", teeth);
        vi.advanceTimersByTime(100);
      }
      expect(write).not.toHaveBeenCalled();
      vi.advanceTimersByTime(800);
      expect(write).toHaveBeenCalledTimes(1);
      expect(open().load().state?.now.gears.pinionTeeth).toBe(19);
      expect(tell).not.toHaveBeenCalled();
    });

    it("writes a single change after the moment that is given, and the next one too", () => {
      const bench = createBench();
      const write = vi.spyOn(local, "setItem");
      keepBench(bench, open(), () => {}, 400);
      for (const teeth of [14, 15]) {
        write.mockClear();
        bench.set("gears.pinionTeeth", teeth);
        vi.advanceTimersByTime(390);
        expect(write).not.toHaveBeenCalled();
        vi.advanceTimersByTime(10);
        expect(write).toHaveBeenCalledTimes(1);
      }
    });

    it("writes at once when the page is left, and not again", () => {
      const bench = createBench();
      const write = vi.spyOn(local, "setItem");
      const keeper = keepBench(bench, open(), () => {});
      keeper.flush();
      bench.set("gears.pinionTeeth", 14);
      keeper.flush();
      keeper.flush();
      vi.advanceTimersByTime(1000);
      expect(write).toHaveBeenCalledTimes(1);
      keeper.stop();
      bench.set("gears.pinionTeeth", 15);
      vi.advanceTimersByTime(1000);
      expect(write).toHaveBeenCalledTimes(1);
    });

    it("tells of a failure once, and when it is over", () => {
      const bench = createBench();
      const tell = vi.fn();
      const keeper = keepBench(bench, open(), tell);
      local.room = 5;
      for (const teeth of [14, 15]) {
        bench.set("gears.pinionTeeth", teeth);
        keeper.flush();
      }
      expect(tell).toHaveBeenCalledTimes(1);
      local.room = 1e6;
      bench.set("gears.pinionTeeth", 16);
      keeper.flush();
      expect(tell.mock.calls.map(([problem]) => problem?.words ?? null)).toEqual([
        expect.stringContaining("no room"),
        null,
      ]);
    });
  });
});
