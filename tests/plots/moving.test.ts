import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fullState, mounted } from "./states.ts";

const shown = (element: Element): boolean => element.closest('[display="none"]') === null;

describe("the axes of a plot", () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ["setTimeout", "performance"] }));
  afterEach(() => void vi.useRealTimers());

  const line = (top: number) =>
    fullState(top, {
      curves: [{ key: "line", label: "line", ink: "now", xs: [0, 100], ys: [0, top] }],
      levels: [],
      zones: [],
      points: [],
      handles: [],
    });
  const highest = (host: HTMLElement) => {
    const shownTexts = [...host.querySelectorAll(".plot-grid g.y text")].filter(shown);
    return Math.max(...shownTexts.map((text) => Number(text.textContent?.replace(/\D/g, ""))));
  };

  it("only grow while a hand moves, and fit again when it rests", () => {
    const { host, update } = mounted(line(1000));
    for (const top of [2000, 4000, 2000, 1000]) {
      vi.advanceTimersByTime(16);
      update(line(top));
      expect(highest(host)).toBeGreaterThanOrEqual(top);
    }
    expect(highest(host)).toBe(4000);
    vi.advanceTimersByTime(300);
    expect(highest(host)).toBe(1000);
  });

  it("fit at once after a single change", () => {
    const { host, update } = mounted(line(4000));
    vi.advanceTimersByTime(1000);
    update(line(1000));
    expect(highest(host)).toBe(1000);
  });
});
