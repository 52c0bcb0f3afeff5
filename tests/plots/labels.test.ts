import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Area, areaOf, clearArea, clearSpot, LINE, type Spot, textWidth } from "#plots/labels";
import type { PlotState } from "#plots/state";
import { mounted } from "./states.ts";

const frame: Area = { left: 0, right: 300, top: 0, bottom: 200 };
const spot = (x: number, y: number, anchor: Spot["anchor"] = "start"): Spot => ({ x, y, anchor });
const over = (a: Area, b: Area): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

describe("what words take", () => {
  it("lies on the side of their anchor, and goes down a line for a second one", () => {
    const width = textWidth("gentle");
    expect(areaOf(["gentle"], spot(50, 100))).toMatchObject({ left: 50, right: 50 + width });
    expect(areaOf(["gentle"], spot(50, 100, "end"))).toMatchObject({ left: 50 - width, right: 50 });
    expect(areaOf(["gentle"], spot(50, 100, "middle"))).toMatchObject({ left: 50 - width / 2 });
    const [one, two] = [areaOf(["a"], spot(0, 100)), areaOf(["a", "b"], spot(0, 100))];
    expect(two.bottom - one.bottom).toBe(LINE - 1);
    expect(one.top).toBeLessThan(100);
    expect(one.bottom).toBeGreaterThan(100);
  });
});

describe("a place for words", () => {
  it("is the first that is clear, and is taken from then on", () => {
    const taken: Area[] = [];
    const spots = [spot(50, 50), spot(50, 100)];
    expect(clearSpot(["club"], spots, taken, frame)).toBe(spots[0]);
    expect(clearSpot(["club"], spots, taken, frame)).toBe(spots[1]);
    expect(taken).toEqual(spots.map((each) => areaOf(["club"], each)));
  });

  it("is the one that covers least where none is clear, and rather over others than out of the frame", () => {
    const taken = [{ left: 40, right: 120, top: 30, bottom: 60 }];
    expect(clearSpot(["sporty"], [spot(50, 50), spot(50, 68)], [...taken], frame)).toMatchObject({ y: 68 });
    expect(clearSpot(["sporty"], [spot(280, 50), spot(50, 50)], [...taken], frame)).toMatchObject({ x: 50 });
  });

  it("never covers more than the first wish would have", () => {
    const area = fc
      .tuple(fc.integer({ min: 0, max: 250 }), fc.integer({ min: 0, max: 180 }), fc.integer({ min: 5, max: 60 }))
      .map(([left, top, size]): Area => ({ left, right: left + size, top, bottom: top + 16 }));
    fc.assert(
      fc.property(
        fc.array(area, { minLength: 1, maxLength: 8 }),
        fc.array(area, { maxLength: 8 }),
        (wishes, others) => {
          const cost = (a: Area) =>
            others.reduce((sum, other) => sum + over(a, other), 4 * ((a.right - a.left) * 16 - over(a, frame)));
          const chosen = wishes[clearArea(wishes, [...others], frame)]!;
          for (const wish of wishes) expect(cost(chosen)).toBeLessThanOrEqual(cost(wish) + 1e-6);
        },
      ),
    );
  });
});

/** A plot with three marks so close together (px apart) that their words meet. */
const crowded = (apart: number, steep = 1): PlotState => ({
  name: "crowded",
  title: "Crowded",
  unit: "rpm",
  x: { label: "throttle", unit: "percent", low: 0, high: 100, exact: true },
  y: { label: "head speed", unit: "rpm", low: 0, high: 100, exact: true },
  curves: [],
  handles: ["gentle", "club", "sporty"].map((shows, i) => ({
    key: shows,
    x: 50 + (i * apart) / 6,
    y: 50 + (steep * i * apart) / 6,
    moves: "x" as const,
    path: `modes.${i}.headRpm`,
    value: 1,
    min: 0,
    max: 2,
    step: 1,
    name: shows,
    valueText: shows,
    shows,
  })),
  words: "Three marks.",
});

/** Where each mark stands, and the area of its words. */
const marksOf = (host: HTMLElement) =>
  [...host.querySelectorAll(".handle")].map((handle) => {
    const [, px, py] = /translate\(([-\d.]+),([-\d.]+)\)/.exec(handle.getAttribute("transform") ?? "") ?? [];
    const text = handle.querySelector("text.words")!;
    const at = (name: string) => Number(text.getAttribute(name));
    const mark = { x: Number(px), y: Number(py) };
    const anchor = text.getAttribute("text-anchor") as Spot["anchor"];
    const area = areaOf([text.textContent ?? ""], { x: mark.x + at("x"), y: mark.y + at("y"), anchor });
    return { mark, area };
  });

describe("the words of marks", () => {
  const apart = Array.from({ length: 20 }, (_, i) => 6 * (i + 1));

  it("don't lie over each other when the marks come close", () => {
    for (const by of apart) {
      const areas = marksOf(mounted(crowded(by)).host).map(({ area }) => area);
      expect(areas).toHaveLength(3);
      for (const [i, a] of areas.entries()) for (const b of areas.slice(i + 1)) expect(over(a, b)).toBeLessThan(12);
    }
  });

  it("stand clearly nearer to their own mark than to another's", () => {
    // Marks that cover each other can't be told apart by any place for words; side by side, only just.
    for (const [by, steep] of apart.filter((px) => px > 14).flatMap((px) => [1, 2, 3].map((s) => [px, s] as const))) {
      const clearly = by > 18 || steep > 1 ? 1.5 : 1;
      const all = marksOf(mounted(crowded(by, steep)).host);
      for (const { area, mark } of all) {
        const far = ({ x, y }: { x: number; y: number }) =>
          Math.hypot(Math.max(area.left - x, 0, x - area.right), Math.max(area.top - y, 0, y - area.bottom));
        for (const other of all) if (other.mark !== mark) expect(far(other.mark)).toBeGreaterThan(clearly * far(mark));
      }
    }
  });

  it("of zones keep clear of each other and of a curve's", () => {
    const { host } = mounted({
      ...crowded(120),
      handles: [],
      size: "short",
      zones: [
        { key: "a", words: "the blades stall", x: [null, 14] },
        { key: "b", words: "more pitch than this mode has", x: [14, 26] },
      ],
    });
    const lines = [...host.querySelectorAll(".plot-zones text")].filter((text) => text.textContent !== "");
    const areas = lines.map((line) =>
      areaOf([line.textContent ?? ""], {
        x: Number(line.getAttribute("x")),
        y: Number(line.getAttribute("y")),
        anchor: "middle",
      }),
    );
    expect(areas.length).toBeGreaterThan(2);
    for (const [i, a] of areas.entries()) for (const b of areas.slice(i + 1)) expect(over(a, b)).toBe(0);
  });
});
