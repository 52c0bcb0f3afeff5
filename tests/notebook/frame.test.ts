import { describe, expect, it, vi } from "vitest";

// A browser's clock, moved by hand: it must be there before the runtime is loaded.
let waiting: ((time: number) => void)[] = [];
const frame = vi.fn((callback: (time: number) => void) => waiting.push(callback));
vi.stubGlobal("requestAnimationFrame", frame);
const nextFrame = () => {
  const due = waiting;
  waiting = [];
  for (const callback of due) callback(0);
};
const soon = () => new Promise((done) => setTimeout(done, 5));

describe("the moment at which cells run", async () => {
  const { openNotebook } = await import("../../src/notebook/runtime.ts");
  const shown: unknown[] = [];
  const notebook = openNotebook([{ id: "a", line: 1, needs: ["x"], gives: [], shows: true, run: (x: number) => [x] }], {
    given: { x: 1 },
    show: (_, value) => shown.push(value),
    fail: () => {},
  });

  it("is the frame in which the first change came; more changes in it wait for the next", async () => {
    await soon();
    expect(shown).toEqual([1]);
    notebook.give({ x: 2 });
    notebook.give({ x: 3 });
    await soon();
    expect(shown).toEqual([1]);
    nextFrame();
    await soon();
    expect(shown).toEqual([1, 3]);
    nextFrame();
    notebook.give({ x: 4 });
    await soon();
    expect(shown).toEqual([1, 3, 4]);
  });

  it("does not come when all that is given is as it was", async () => {
    nextFrame();
    frame.mockClear();
    notebook.give({ x: 4 });
    await soon();
    expect(frame).not.toHaveBeenCalled();
  });

  it("leaves everybody else the browser's own clock", () => {
    expect(globalThis.requestAnimationFrame).toBe(frame);
  });
});
