import { describe, expect, it } from "vitest";
import type { PlotState } from "#plots/state";
import { plotTogether } from "#plots/together";

const xs = [0, 50, 100];
const state = (speed: number, over: Partial<PlotState> = {}): PlotState => ({
  name: "headroom",
  title: "Head speed",
  unit: "rpm",
  x: { label: "charge", unit: "percent" },
  y: { label: "head speed", unit: "rpm" },
  curves: [
    { key: "hover", label: "hover", ink: "now", xs, ys: [speed, speed + 100, speed + 200] },
    { key: "rest", label: "at rest", ink: "plain", xs, ys: [speed + 300, speed + 300, speed + 300] },
  ],
  words: `It turns ${speed}. More is said.`,
  ...over,
});
const curves = ({ curves }: PlotState) => curves.map(({ key, ink, label }) => [key, ink, label]);

describe("machines together on one plot", () => {
  it("leaves a plot as it is when there is no other", () => {
    const alone = state(2000);
    expect(plotTogether(alone, { pinnedAs: "" })).toBe(alone);
    expect(plotTogether(alone, { pinned: state(1900, { name: "tip" }), pinnedAs: "14 t" })).toBe(alone);
  });

  it("draws the pinned curve below the ink, dashed, and says what it is", () => {
    const both = plotTogether(state(2000), { pinned: state(1900), pinnedAs: "14 t" });
    expect(curves(both)).toEqual([
      ["pinned-hover", "pinned-now", "pinned: 14 t"],
      ["hover", "now", "hover"],
      ["rest", "plain", "at rest"],
    ]);
    expect(both.curves[0]?.ys).toEqual([1900, 2000, 2100]);
    expect(both.words).toBe("It turns 2000. More is said. Pinned (14 t): It turns 1900.");
  });

  it("writes the words once, on the first of several curves", () => {
    const two = (speed: number) =>
      state(speed, {
        curves: ["hover", "full"].map((key) => ({
          key,
          label: key,
          ink: "now" as const,
          xs,
          ys: [speed, speed, speed],
        })),
      });
    const both = plotTogether(two(2000), { pinned: two(1900), pinnedAs: "14 t" });
    expect(both.curves.map(({ label }) => label)).toEqual(["", "pinned: 14 t", "hover", "full"]);
    expect(both.curves.slice(0, 2).map(({ name }) => name)).toEqual(["full, pinned: 14 t", "hover, pinned: 14 t"]);
  });

  it("draws what is the same once, and says so", () => {
    const both = plotTogether(state(2000), { pinned: state(2000), pinnedAs: "12 magnet poles" });
    expect(curves(both)).toEqual(curves(state(2000)));
    expect(both.words).toMatch(/Nothing here differs from what was pinned\.$/);
    expect(plotTogether(state(2000), { pinned: state(2000), pinnedAs: "" }).words).toBe(state(2000).words);
  });

  it("takes a curve that only ends elsewhere for the same", () => {
    const line = (high: number, offset = 0): PlotState =>
      state(2000, {
        curves: [
          { key: "power", label: "power", ink: "now", xs: [0, 1, 2, high], ys: [0, 1, 2, high].map((y) => y + offset) },
        ],
      });
    expect(plotTogether(line(3), { pinned: line(4), pinnedAs: "14 t" }).curves).toHaveLength(1);
    expect(plotTogether(line(3), { pinned: line(4, 0.1), pinnedAs: "14 t" }).curves).toHaveLength(2);
  });

  it("draws the what-if in its own ink, unless the plot does it itself", () => {
    const both = plotTogether(state(2000), { whatIf: state(2200), pinnedAs: "" });
    expect(curves(both)[0]).toEqual(["what-if-hover", "what-if", "what if"]);
    const own = state(2000);
    const itself = { ...own, curves: [...own.curves, { ...own.curves[0]!, key: "mine", ink: "what-if" as const }] };
    expect(curves(plotTogether(itself, { whatIf: state(2200), pinnedAs: "" }))).toEqual(curves(itself));
  });

  it("keeps levels in ink and the places of marks, where they differ", () => {
    const marked = (speed: number): PlotState =>
      state(2000, {
        levels: [
          { key: "most", axis: "y", at: speed, label: "most", ink: "now" },
          { key: "limit", axis: "y", at: speed, label: "limit", ink: "plain" },
        ],
        points: [{ key: "own", kind: "now", x: 50, y: speed }],
        handles: [
          {
            key: "set",
            x: 30,
            y: speed,
            moves: "y",
            path: "modes.0.headRpm",
            value: speed,
            min: 0,
            max: 4000,
            step: 10,
            name: "head speed",
            valueText: "",
          },
        ],
      });
    const { levels, points } = plotTogether(marked(2000), { pinned: marked(1800), pinnedAs: "14 t" });
    expect(levels?.map(({ key, at, ink }) => [key, at, ink])).toEqual([
      ["pinned-most", 1800, "pinned-now"],
      ["most", 2000, "now"],
      ["limit", 2000, "plain"],
    ]);
    expect(points?.map(({ key, x, y, kind }) => [key, x, y, kind])).toEqual([
      ["pinned-set", 30, 1800, "pinned"],
      ["pinned-own", 50, 1800, "pinned"],
      ["own", 50, 2000, "now"],
    ]);
  });

  it("leaves no ring where a mark has hardly moved", () => {
    const own = (y: number) => state(2000, { points: [{ key: "own", kind: "now", x: 50, y }] });
    expect(plotTogether(own(2100), { pinned: own(2100.3), pinnedAs: "14 t" }).points).toHaveLength(1);
    expect(plotTogether(own(2100), { pinned: own(2110), pinnedAs: "14 t" }).points).toHaveLength(2);
  });

  it("has the ticks of both where only single values have any", () => {
    const at = (ticks: number[]) => state(2000, { x: { label: "teeth", unit: "", ticks } });
    expect(plotTogether(at([11, 12, 13]), { pinned: at([10, 11, 12]), pinnedAs: "11 t" }).x.ticks).toEqual([
      10, 11, 12, 13,
    ]);
    expect(plotTogether(at([6, 9, 12]), { pinned: at([6, 9, 10, 12]), pinnedAs: "10 t" }).x.ticks).toEqual([6, 9, 12]);
  });
});
