import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Bench } from "#machine/bench";
import { plot, plotView } from "#plots/plot";
import type { Ink, PlotState } from "#plots/state";
import { fullState } from "./states.ts";

interface Proposal {
  path: string;
  value: unknown;
  machine?: string | undefined;
  gesture?: string | undefined;
}

function mounted(state: PlotState, problem: string | null = null) {
  const proposals: Proposal[] = [];
  const bench = {
    set(path: string, value: unknown, options: { machine?: string; gesture?: string } = {}) {
      proposals.push({ path, value, machine: options.machine, gesture: options.gesture });
      return problem === null ? null : { path, value, words: problem };
    },
  } as unknown as Bench;
  const host = document.createElement("div");
  document.body.append(host);
  const update = plotView.mount(host, bench);
  update(state);
  const one = (selector: string): Element => {
    const found = host.querySelector(selector);
    if (!found) throw new Error(`nothing matches ${selector}`);
    return found;
  };
  return { host, update, proposals, one };
}

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

describe("a mark that can be dragged", () => {
  const press = (element: Element, key: string, options: KeyboardEventInit = {}) =>
    element.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...options }));

  it("says what it is, what it holds and what it may hold", () => {
    const { one } = mounted(fullState());
    const handle = one("[data-handle=set]");
    const said = [
      "role",
      "tabindex",
      "aria-label",
      "aria-valuenow",
      "aria-valuemin",
      "aria-valuemax",
      "aria-valuetext",
      "aria-orientation",
    ];
    expect(said.map((name) => handle.getAttribute(name))).toEqual([
      "slider",
      "0",
      "head speed of the mode hover",
      "2000",
      "600",
      "3600",
      "2000 rpm",
      "vertical",
    ]);
    expect(handle.closest("[role=img]")).toBeNull();
  });

  it.each([
    ["set", "ArrowUp", false, 2010],
    ["set", "ArrowDown", true, 1900],
    ["set", "PageUp", false, 2100],
    ["set", "Home", false, 600],
    ["set", "End", false, 3600],
    // The charge falls to the right: the mark goes where the arrow points.
    ["charge", "ArrowRight", false, 59],
    ["charge", "ArrowLeft", true, 70],
    ["charge", "ArrowUp", false, 61],
  ])("proposes by keys: %s, %s, shift %s", (key, pressed, shiftKey, value) => {
    const { one, proposals } = mounted(fullState());
    press(one(`[data-handle=${key}]`), pressed, { shiftKey });
    expect(proposals).toHaveLength(1);
    expect(proposals[0]).toMatchObject({ path: key === "set" ? "modes.0.headRpm" : "pack.chargePercent", value });
    expect(proposals[0]?.machine).toBe(key === "charge" ? "what-if" : undefined);
  });

  it("shows arrows only where it can still go", () => {
    const { one, update } = mounted(fullState(2000));
    const arrows = () => one("[data-handle=set] .arrows").getAttribute("d");
    const both = arrows();
    update(fullState(3600));
    const down = arrows();
    update(fullState(600));
    expect(down).toBe("M-4,11L0,15L4,11");
    expect(both).toBe(`${arrows()}${down}`);
  });

  it("leaves other keys to the page", () => {
    const { one, proposals } = mounted(fullState());
    expect(press(one("[data-handle=set]"), "a")).toBe(true);
    expect(press(one("[data-handle=set]"), "ArrowUp", { ctrlKey: true })).toBe(true);
    expect(proposals).toEqual([]);
  });

  it("proposes the value under the pointer while it is held, in one gesture", () => {
    const { one, proposals } = mounted(fullState());
    const handle = one("[data-handle=charge]");
    const point = (kind: string, clientX: number) =>
      handle.dispatchEvent(new PointerEvent(kind, { clientX, clientY: 0, button: 0, pointerId: 1, bubbles: true }));
    const [, x = ""] = /translate\(([\d.]+),/.exec(handle.getAttribute("transform") ?? "") ?? [];
    const axis = one('.plot-grid [class="y"] line');
    const perPercent = (Number(axis.getAttribute("x2")) - Number(axis.getAttribute("x1"))) / 100;
    point("pointermove", 0);
    point("pointerdown", Number(x) + 3);
    point("pointermove", Number(x) + 3 - 10 * perPercent);
    point("pointermove", Number(x) + 3 - 20 * perPercent);
    point("pointermove", -9999);
    point("pointerup", -9999);
    point("pointermove", 0);
    expect(proposals.map((each) => each.value)).toEqual([70, 80, 100]);
    expect(new Set(proposals.map((each) => each.gesture)).size).toBe(1);
    point("pointerdown", 0);
    point("pointermove", 5 * perPercent);
    expect(proposals.at(-1)?.gesture).not.toBe(proposals[0]?.gesture);
  });

  it("shows the bench's words when a value is refused", () => {
    const { one } = mounted(fullState(), "Head speed: holds 2,010 rpm. Allowed: less than 2,005 rpm.");
    expect(one(".plot-problem").hasAttribute("hidden")).toBe(true);
    press(one("[data-handle=set]"), "ArrowUp");
    expect(one(".plot-problem").textContent).toContain("less than 2,005");
    expect(one(".plot-problem").hasAttribute("hidden")).toBe(false);
  });

  it("keeps its axis still while it is held", () => {
    const { one, update } = mounted(fullState(2000));
    const handle = one("[data-handle=set]");
    const ticks = () => [...document.querySelectorAll(".plot-grid")].at(-1)?.textContent;
    const before = ticks();
    handle.dispatchEvent(new PointerEvent("pointerdown", { clientX: 0, clientY: 0, button: 0, pointerId: 1 }));
    update(fullState(3400));
    expect(ticks()).toBe(before);
    handle.dispatchEvent(new PointerEvent("pointerup", { pointerId: 1 }));
    expect(ticks()).not.toBe(before);
  });
});
