import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { plot } from "#plots/plot";
import type { Ink } from "#plots/state";
import { Pen } from "#view/dom";
import { fullState, mounted } from "./states.ts";

const shown = (element: Element): boolean => element.closest('[display="none"]') === null;

describe("a plot on the page", () => {
  it("has its name, a drawing with its words, a caption and a closed, empty table", () => {
    const { host, one } = mounted(fullState());
    expect(one("figure").getAttribute("data-plot")).toBe("headroom");
    expect(one("svg[role=img]").getAttribute("aria-label")).toBe(
      "Head speed against charge. Held until 20 % of charge. Then no more.",
    );
    expect(one("figcaption").textContent).toBe("Held until 20 % of charge. Then no more.");
    expect(one("figcaption b").textContent).toBe("Held until 20 % of charge.");
    expect(host.querySelectorAll("table, td")).toHaveLength(0);
    expect(plot(fullState()).view.words(fullState())).toBe(one("svg").getAttribute("aria-label"));
  });

  it("draws nothing for a state that looks the same, and still says its words", () => {
    vi.useFakeTimers();
    const { one, update } = mounted(fullState());
    // All that is drawn goes through pens, which are called for what stays the same as well.
    const set = vi.spyOn(Pen.prototype, "set");
    update(fullState(undefined, { words: "It is another machine." }));
    vi.advanceTimersByTime(1000);
    vi.useRealTimers();
    expect(set.mock.calls.map(([name]) => name)).toEqual(["aria-label"]);
    expect(one("figcaption").textContent).toBe("It is another machine.");
    set.mockClear();
    update(fullState(2210, { words: "It is another machine." }));
    expect(set).toHaveBeenCalled();
    set.mockRestore();
  });

  it("draws each of its marks in its own way", () => {
    const { one, host } = mounted(fullState());
    const ink = (key: string) => one(`[data-curve=${key}] .ink`).getAttribute("class");
    expect(["hover", "other", "earlier", "guess"].map(ink)).toEqual([
      "ink now",
      "ink what-if",
      "ink pinned-now",
      "ink pencil",
    ]);
    expect(one("[data-curve=other] .core").getAttribute("d")).toBe(one("[data-curve=other] .ink").getAttribute("d"));
    expect(one("[data-curve=hover] .core").getAttribute("d")).toBe("");
    expect(one("[data-curve=other] .ink").getAttribute("d")?.match(/M/g)).toHaveLength(2);
    expect(one("[data-zone=limit] .hatch").getAttribute("fill")).toMatch(/^url\(#hatch-headroom/);
    expect(one("[data-point=seen] path").getAttribute("d")).toMatch(/^M-4,[\d.]+h8M0/);
    const words = [...host.querySelectorAll(".plot-words text")].filter(shown).map((each) => each.textContent);
    for (const text of [
      "ceiling, hover",
      "what if, hover",
      "pinned",
      "your guess",
      "set speed",
      "now",
      "over the limit",
      "cannot be held",
      "measured",
    ]) {
      expect(words).toContain(text);
    }
  });

  it("puts the words of a point below it where they are said to stand so", () => {
    const meet = { key: "meet", kind: "place" as const, x: 50, y: 2200, label: "no room left" };
    const height = (under: boolean) =>
      Number(
        mounted(fullState(2200, { points: [{ ...meet, under }] }))
          .one("[data-point=meet] text")
          .getAttribute("y"),
      );
    expect(height(false)).toBeLessThan(0);
    expect(height(true)).toBeGreaterThan(0);
  });

  it("writes no style into its markup", () => {
    expect(mounted(fullState()).host.innerHTML).not.toMatch(/\sstyle=/);
  });

  it("keeps its elements and its axis from state to state, and hides what is gone", () => {
    const { host, update, one } = mounted(fullState(2000));
    const before = [...host.querySelectorAll("*")];
    const ticks = [...host.querySelectorAll(".plot-grid text")].map((each) => each.textContent);
    const path = one("[data-curve=hover] .ink").getAttribute("d");
    update(fullState(2040));
    expect([...host.querySelectorAll("*")]).toEqual(before);
    expect([...host.querySelectorAll(".plot-grid text")].map((each) => each.textContent)).toEqual(ticks);
    expect(one("[data-curve=hover] .ink").getAttribute("d")).toBe(path);
    const fewer = fullState();
    update({ ...fewer, curves: fewer.curves.slice(0, 1), levels: [], zones: [], points: [], handles: [] });
    const left = [
      ...host.querySelectorAll("[data-curve], [data-level], [data-zone], [data-point], [data-handle]"),
    ].filter(shown);
    expect(left.map((each) => each.getAttribute("data-curve"))).toEqual(["hover"]);
    const words = [...host.querySelectorAll(".plot-words text")].filter(shown).map((each) => each.textContent);
    expect(words.filter(Boolean)).toEqual(["ceiling, hover"]);
  });

  it("moves its level with the state", () => {
    const { update, one } = mounted(fullState(2000));
    const at = () => Number(one("[data-level=set] line").getAttribute("y1"));
    const before = at();
    update(fullState(2100));
    expect(at()).toBeLessThan(before);
    expect(one("[data-level=set] line").getAttribute("y2")).toBe(String(at()));
  });

  it("turns the words of a zone that is too narrow for them", () => {
    const words = (from: number) => {
      const { host } = mounted(
        fullState(2000, { zones: [{ key: "high", words: "above the usable band", x: [from, null] }] }),
      );
      const found = [...host.querySelectorAll(".words.limit")].find((each) => each.textContent?.includes("above"));
      return found?.getAttribute("transform");
    };
    expect(words(95)).toMatch(/^rotate\(-90,/);
    expect(words(20)).toBe("");
  });

  it("fills its table when it is opened, and keeps it up to date while it is", () => {
    const { one, host, update } = mounted(fullState(2000));
    const details = one("details") as HTMLDetailsElement;
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
    const rows = () => [...host.querySelectorAll("tr")].map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows()[0]).toEqual([
      "charge, %",
      "ceiling, hover, rpm",
      "what if, hover, rpm",
      "pinned, rpm",
      "your guess, rpm",
      "head speed, rpm",
      "set speed, rpm",
    ]);
    expect(rows()[3]).toEqual(["50", "2,250", "–", "2,050", "2,200", "1,900", "2,000"]);
    const cells = [...host.querySelectorAll("td")];
    update(fullState(2110));
    expect(rows()[3]?.at(-1)).toBe("2,110");
    expect([...host.querySelectorAll("td")]).toEqual(cells);
  });

  it("never shows anything but numbers, whatever the values", () => {
    const number = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    const ink = fc.constantFrom<Ink>("now", "what-if", "pinned-now", "pencil", "plain");
    const points = fc.array(fc.tuple(number, fc.option(number)), { maxLength: 6 });
    const some = mounted(fullState());
    fc.assert(
      fc.property(fc.array(fc.tuple(ink, points, fc.boolean()), { maxLength: 3 }), number, (curves, level) => {
        some.update(
          fullState(level, {
            curves: curves.map(([inkOf, list, dots], i) => ({
              key: `c${i}`,
              label: `curve ${i}`,
              ink: inkOf,
              dots,
              xs: list.map(([at]) => at),
              ys: list.map(([, at]) => at),
            })),
          }),
        );
        expect(some.host.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 60 },
    );
  });
});
