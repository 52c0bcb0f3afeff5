/** Where the words of a mark go: beside it, clear of what lies there, and never so that another mark's owner takes them. */
import { type Area, clearSpot, type Extra, LINE, type Spot, textWidth } from "./labels.ts";
import type { Layout } from "./layout.ts";

/** A place on a plot, px. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/** How far a mark stands from words, px. */
const distance = ({ x, y }: Point, { left, right, top, bottom }: Area): number =>
  Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom));

/** Words are clearly a mark's own when every other mark is farther from them by this factor; ours. */
const CLEARLY = 1.6;

/** Marks that are nearer to each other than this, px, lie over each other: no place for words can tell them apart. */
const APART = 14;

/**
 * For the words of one of several marks: nearer to another they would be read as its words, which is worse than covering
 * something; nearly as near to it, they had better stand elsewhere where that costs little.
 */
const ownWords =
  (own: Point, marks: readonly Point[]): Extra =>
  (area) => {
    const near = distance(own, area);
    let next = Number.POSITIVE_INFINITY;
    for (const mark of marks) {
      if (Math.hypot(mark.x - own.x, mark.y - own.y) >= APART) next = Math.min(next, distance(mark, area));
    }
    const share = next <= near ? 2 : next <= CLEARLY * near ? 0.1 : 0;
    return share * (area.right - area.left) * (area.bottom - area.top);
  };

/**
 * Spots for words beside a mark, the best first: on the side and at the height that are asked for, then across, then
 * further off.
 */
export function spotsBeside(x: number, y: number, off: number, toLeft: boolean, below: boolean): Spot[] {
  const [up, down] = [-11, 22];
  const at = (left: boolean, under: boolean, away: number): Spot => ({
    x: left ? x - off : x + off,
    anchor: left ? "end" : "start",
    y: y + (under ? down + away * LINE : up - away * LINE),
  });
  return [0, 1, 2].flatMap((away) => [
    at(toLeft, below, away),
    at(!toLeft, !below, away),
    at(toLeft, !below, away),
    at(!toLeft, below, away),
  ]);
}

/** Spots for the words of one of several marks: as beside any mark, or else level with it, clear of its arrows. */
function spotsAmong({ x: px, y: py }: Point, below: boolean): Spot[] {
  const level = { y: py + 5 };
  return [
    ...spotsBeside(px, py, -6, true, below),
    { ...level, x: px - 17, anchor: "end" },
    { ...level, x: px + 17, anchor: "start" },
  ];
}

/** Spots for the words of a mark that stands alone: over it, under it, and further off; within the plot. */
function spotsOver({ x: px, y: py }: Point, width: number, { left, right }: Layout, below: boolean): Spot[] {
  const x = Math.min(Math.max(px, left + width / 2), Math.max(left + width / 2, right - width / 2));
  const ups = [-17, -17 - LINE].map((by): Spot => ({ x, y: py + by, anchor: "middle" }));
  const downs = [30, 30 + LINE].map((by): Spot => ({ x, y: py + by, anchor: "middle" }));
  return below ? [downs[0]!, ups[0]!, downs[1]!, ups[1]!] : [ups[0]!, downs[0]!, ups[1]!, downs[1]!];
}

/** The spot for a mark's words among what is taken already; it is taken from then on. `among` says that other marks have words. */
export function spotFor(shows: string, mark: Point, marks: readonly Point[], among: boolean, layout: Layout): Spot {
  const { left, right, top, bottom, taken } = layout;
  const below = mark.y < top + 30;
  // Among several marks each has its words to the left, where the next one does not cover them.
  const spots = among ? spotsAmong(mark, below) : spotsOver(mark, textWidth(shows), layout, below);
  return clearSpot([shows], spots, taken, { left, right, top: 0, bottom }, ownWords(mark, marks));
}
