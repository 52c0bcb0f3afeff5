import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { rested } from "#view/rested";

describe("words that follow when the hand rests", () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ["setTimeout", "performance"] }));
  afterEach(() => void vi.useRealTimers());

  it("are said at once for a single change", () => {
    const work = vi.fn();
    const say = rested(work);
    say();
    expect(work).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(500);
    say();
    expect(work).toHaveBeenCalledTimes(2);
    vi.advanceTimersByTime(500);
    expect(work).toHaveBeenCalledTimes(2);
  });

  it("wait through a movement, and are said once after it", () => {
    let now = 0;
    const said: number[] = [];
    const say = rested(() => said.push(now));
    for (now = 1; now <= 30; now++) {
      say();
      vi.advanceTimersByTime(16);
    }
    expect(said).toEqual([1]);
    now = 99;
    vi.advanceTimersByTime(200);
    expect(said).toEqual([1, 99]);
  });

  it("each wait for their own hand, on one clock", () => {
    const said: string[] = [];
    const [left, right] = ["left", "right"].map((side) => rested(() => said.push(side))) as [() => void, () => void];
    for (let frame = 0; frame < 30; frame++) {
      left();
      if (frame < 10) right();
      expect(vi.getTimerCount()).toBeLessThanOrEqual(1);
      vi.advanceTimersByTime(16);
    }
    expect(said).toEqual(["left", "right", "right"]);
    vi.advanceTimersByTime(200);
    expect(said).toEqual(["left", "right", "right", "left"]);
    expect(vi.getTimerCount()).toBe(0);
  });
});
