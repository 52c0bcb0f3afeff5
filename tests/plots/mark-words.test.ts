import { describe, expect, it } from "vitest";
import { type Area, areaOf } from "#plots/labels";
import type { Layout } from "#plots/layout";
import { spotFor, spotsBeside } from "#plots/mark-words";

const over = (a: Area, b: Area): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

describe("a spot", () => {
  it("beside a mark begins where it is wished for, and none of the spots covers the mark", () => {
    for (const left of [true, false]) {
      for (const below of [true, false]) {
        const [first, ...others] = spotsBeside(100, 100, 7, left, below);
        expect(first).toMatchObject({ x: left ? 93 : 107, anchor: left ? "end" : "start" });
        expect(first!.y > 100).toBe(below);
        for (const each of [first!, ...others]) {
          expect(over(areaOf(["club"], each), { left: 94, right: 106, top: 94, bottom: 106 })).toBe(0);
        }
      }
    }
  });
});

describe("the spot for a mark's words", () => {
  const layout = (taken: Area[]) => ({ left: 40, right: 300, top: 0, bottom: 400, taken }) as unknown as Layout;
  const [own, other] = [
    { x: 140, y: 200 },
    { x: 150, y: 167 },
  ];
  const far = ({ x, y }: { x: number; y: number }, area: Area) =>
    Math.hypot(Math.max(area.left - x, 0, x - area.right), Math.max(area.top - y, 0, y - area.bottom));

  it("is rather over something than nearer to another mark", () => {
    // What lies around leaves only spots beside the other mark clear.
    const taken = [{ left: 60, right: 220, top: 176, bottom: 260 }];
    const area = areaOf(["club"], spotFor("club", own, [own, other], true, layout([...taken])));
    expect(far(other, area)).toBeGreaterThan(far(own, area));
    const alone = areaOf(["club"], spotFor("club", own, [own], true, layout([...taken])));
    expect(over(alone, taken[0]!)).toBe(0);
    expect(far(other, alone)).toBeLessThan(far(own, alone));
  });

  it("leaves one that another mark is nearly as near to, where a clearer one costs nothing", () => {
    const near = { x: 130, y: 168 };
    const alone = spotFor("club", own, [own], true, layout([]));
    expect(far(near, areaOf(["club"], alone))).toBeLessThan(1.6 * far(own, areaOf(["club"], alone)));
    const area = areaOf(["club"], spotFor("club", own, [own, near], true, layout([])));
    expect(far(near, area)).toBeGreaterThan(1.6 * far(own, area));
  });

  it("is level with the mark where there is no room above and below", () => {
    const [over, under] = [
      { left: 40, right: 300, top: 0, bottom: 194 },
      { left: 40, right: 300, top: 206, bottom: 400 },
    ];
    const left = spotFor("club", own, [own], true, layout([over, under]));
    expect(left).toMatchObject({ y: 205, anchor: "end" });
    const right = spotFor("club", own, [own], true, layout([over, under, areaOf(["club"], left)]));
    expect(right).toMatchObject({ y: 205, anchor: "start" });
    for (const spot of [left, right]) expect(Math.abs(spot.x - own.x)).toBeGreaterThan(15);
  });

  it("is over a mark that stands alone, or under it where the plot ends", () => {
    expect(spotFor("club", own, [own], false, layout([]))).toMatchObject({ x: 140, anchor: "middle", y: 183 });
    const high = { x: 140, y: 12 };
    expect(spotFor("club", high, [high], false, layout([])).y).toBeGreaterThan(12);
    expect(areaOf(["club"], spotFor("club", { x: 42, y: 200 }, [own], false, layout([]))).left).toBeGreaterThanOrEqual(
      40,
    );
  });

  it("is taken from then on", () => {
    const taken: Area[] = [];
    const first = spotFor("club", own, [own], true, layout(taken));
    expect(taken).toEqual([areaOf(["club"], first)]);
    expect(spotFor("sporty", own, [own], true, layout(taken))).not.toEqual(first);
  });
});
