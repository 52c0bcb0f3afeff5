import { describe, expect, it, vi } from "vitest";
import type { CellRecord } from "../../src/notebook/record.ts";
import { Failure, openNotebook, runHeadless } from "../../src/notebook/runtime.ts";

type Run = (...needs: never[]) => unknown[] | Promise<unknown[]>;
let line = 0;
const cell = (needs: string[], gives: string[], run: Run): CellRecord => {
  line++;
  return { id: `cell-${line}`, line, needs, gives, shows: true, run };
};

/** A notebook with what its cells have shown, newest last, and how they failed. */
function opened<G extends object>(records: readonly CellRecord[], given: G) {
  const shown = new Map<CellRecord, unknown[]>(records.map((record) => [record, []]));
  const notebook = openNotebook<G>(records, {
    given,
    show: (record, value) => shown.get(record)?.push(value),
    fail: (record, failure) => shown.get(record)?.push(failure),
  });
  return { ...notebook, of: (record: CellRecord) => shown.get(record) ?? [] };
}

describe("an open notebook", () => {
  it("runs each cell once its needs are there, whatever the order", async () => {
    const sum = cell(["a", "b", "x"], [], (a: number, b: number, x: number) => [a + b + x]);
    const pair = cell(["x"], ["a", "b"], (x: number) => ["pair", x + 1, x + 2]);
    const notebook = opened([sum, pair], { x: 1 });
    await notebook.settled();
    expect(notebook.of(sum)).toEqual([6]);
    expect(notebook.of(pair)).toEqual(["pair"]);
  });

  it("runs again what a new value concerns, and nothing else", async () => {
    const [ofX, ofY] = [vi.fn((x: number) => [x, x * 2]), vi.fn((y: number) => [y])];
    const first = cell(["x"], ["double"], ofX);
    const second = cell(["double"], [], (double: number) => [double]);
    const other = cell(["y"], [], ofY);
    const notebook = opened([first, second, other], { x: 1, y: 1 });
    await notebook.settled();
    notebook.give({ x: 5, y: 1 });
    await notebook.settled();
    expect(notebook.of(second)).toEqual([2, 10]);
    expect(ofX).toHaveBeenCalledTimes(2);
    expect(ofY).toHaveBeenCalledTimes(1);
    expect(notebook.of(other)).toEqual([1]);
  });

  it("stops where nothing has changed", async () => {
    const run = vi.fn((even: boolean) => [even]);
    const parity = cell(["x"], ["even"], (x: number) => [undefined, x % 2 === 0]);
    const words = cell(["even"], [], run);
    const notebook = opened([parity, words], { x: 2 });
    await notebook.settled();
    notebook.give({ x: 4 });
    await notebook.settled();
    expect(run).toHaveBeenCalledTimes(1);
    expect(notebook.of(words)).toEqual([true]);
    notebook.give({ x: 5 });
    await notebook.settled();
    expect(notebook.of(words).at(-1)).toBe(false);
  });

  it("takes several new values as one change, and of several in a row the last", async () => {
    const run = vi.fn((x: number, y: number) => [x + y]);
    const sum = cell(["x", "y"], [], run);
    const notebook = opened([sum], { x: 1, y: 1 });
    await notebook.settled();
    notebook.give({ x: 2, y: 3 });
    notebook.give({ x: 10 });
    await notebook.settled();
    expect(run.mock.calls.slice(1)).toEqual([[10, 3]]);
  });

  it("takes a function that is given as a value", async () => {
    const use = cell(["f"], [], (f: (x: number) => number) => [f(2)]);
    const notebook = opened([use], { f: (x: number) => x + 1 });
    await notebook.settled();
    notebook.give({ f: (x: number) => x * 10 });
    await notebook.settled();
    expect(notebook.of(use)).toEqual([3, 20]);
  });

  it("runs nothing after it was closed", async () => {
    const run = vi.fn((x: number) => [x]);
    const notebook = opened([cell(["x"], [], run)], { x: 1 });
    await notebook.settled();
    notebook.dispose();
    notebook.give({ x: 2 });
    await new Promise((done) => setTimeout(done, 20));
    expect(run).toHaveBeenCalledTimes(1);
  });
});

describe("a cell that waits", () => {
  it("is waited for, by its dependants and by `settled`", async () => {
    const slow = cell(["x"], ["y"], async (x: number) => {
      await new Promise((done) => setTimeout(done, 5));
      return ["slow", x + 1];
    });
    const after = cell(["y"], [], (y: number) => [y]);
    const notebook = opened([after, slow], { x: 1 });
    await notebook.settled();
    expect(notebook.of(after)).toEqual([2]);
  });

  it("shows the newest answer last, however long an older one took", async () => {
    const waits: Record<number, number> = { 1: 0, 2: 30, 3: 1 };
    const slow = cell(["x"], [], async (x: number) => {
      await new Promise((done) => setTimeout(done, waits[x]));
      return [x];
    });
    const notebook = opened([slow], { x: 1 });
    await notebook.settled();
    notebook.give({ x: 2 });
    await new Promise((done) => setTimeout(done, 5));
    notebook.give({ x: 3 });
    await notebook.settled();
    await new Promise((done) => setTimeout(done, 40));
    expect(notebook.of(slow).at(-1)).toBe(3);
  });
});

describe("a cell that throws", () => {
  const broken = () =>
    cell(["x"], ["a"], (x: number) => {
      if (x > 1) throw new Error("too much");
      return [undefined, x];
    });

  it("fails in its own place; its dependants know for which cell they wait; all else goes on", async () => {
    const first = broken();
    const second = cell(["a"], ["b"], (a: number) => [undefined, a]);
    const third = cell(["b", "x"], [], (b: number) => [b]);
    const other = cell(["x"], [], (x: number) => [x]);
    const notebook = opened([first, second, third, other], { x: 2 });
    await notebook.settled();
    for (const record of [first, second, third]) {
      expect(notebook.of(record)).toEqual([new Failure(first, new Error("too much"))]);
    }
    expect(notebook.of(other)).toEqual([2]);
  });

  it("is well again when its needs are", async () => {
    const first = broken();
    const second = cell(["a"], [], (a: number) => [a]);
    const notebook = opened([first, second], { x: 2 });
    await notebook.settled();
    notebook.give({ x: 1 });
    await notebook.settled();
    expect(notebook.of(second).at(-1)).toBe(1);
  });

  it("fails the same when it waited first", async () => {
    const first = cell([], ["a"], async () => {
      await null;
      throw "no error object";
    });
    const second = cell(["a"], [], (a: number) => [a]);
    const results = await runHeadless([first, second], {});
    expect(results.map(({ failure }) => failure)).toEqual([
      new Failure(first, "no error object"),
      new Failure(first, "no error object"),
    ]);
  });
});

describe("a headless run", () => {
  it("gives every cell's result, in the order of the page", async () => {
    const [b, a] = [cell(["a"], [], (v: number) => [v + 1]), cell([], ["a"], () => ["shown", 1])];
    expect(await runHeadless([b, a], {})).toEqual([
      { cell: b, value: 2, failure: null },
      { cell: a, value: "shown", failure: null },
    ]);
  });
});
