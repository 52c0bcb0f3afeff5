import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { atRest } from "#blocks/at-rest";

const placed = () => {
  const host = document.createElement("div");
  document.body.replaceChildren(host);
  return host;
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("work that waits for the hand to rest", () => {
  it("begins only when nothing was asked anew for a moment, and does every piece in turn", () => {
    const done: number[] = [];
    const later = atRest(placed());
    later([1, 2, 3].map((i) => () => void done.push(i)));
    vi.advanceTimersByTime(100);
    expect(done).toEqual([]);
    vi.advanceTimersByTime(2000);
    expect(done).toEqual([1, 2, 3]);
  });

  it("waits on while it is asked again and again, and makes only the pieces that it does", () => {
    let made = 0;
    const later = atRest(placed());
    const pieces = function* () {
      for (let i = 0; i < 2; i++) {
        made += 1;
        yield () => {};
      }
    };
    for (let i = 0; i < 20; i++) {
      later(pieces());
      vi.advanceTimersByTime(100);
    }
    expect(made).toBe(0);
    vi.advanceTimersByTime(2000);
    expect(made).toBe(2);
  });

  it("drops what was left when it is asked anew, even in the middle", () => {
    const done: string[] = [];
    const later = atRest(placed());
    later([
      () => {
        done.push("old");
        later([() => void done.push("new")]);
      },
      () => void done.push("never"),
    ]);
    vi.advanceTimersByTime(5000);
    expect(done).toEqual(["old", "new"]);
  });

  it("isn't done for what has left the page", () => {
    const done: string[] = [];
    const host = placed();
    atRest(host)([() => void done.push("gone")]);
    host.remove();
    vi.advanceTimersByTime(5000);
    expect(done).toEqual([]);
  });
});
