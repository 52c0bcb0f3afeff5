/** Where words go on a plot. Their widths are reckoned from the font's own advances: nothing is read from the page. */

/** Size of all words on a plot, px: reading size, also on a phone. */
export const SIZE = 14.5;
/** Height that one line of words takes, px. */
export const LINE = 18;

const NARROW = "ijlI.,:;'| ()’";
const WIDE = "mwMW%±→";

const advanceOf = (sign: string): number =>
  NARROW.includes(sign) ? 0.27 : WIDE.includes(sign) ? 0.8 : sign < "a" ? 0.54 : 0.5;

/** Advances of the signs met so far, by their code: words are measured in every frame. */
const advances: number[] = [];

/** Width of a text in the label font, px, on the safe side. */
export function textWidth(text: string, size = SIZE): number {
  let em = 0;
  for (let i = 0; i < text.length; i++) em += advances[text.charCodeAt(i)] ??= advanceOf(text.charAt(i));
  return Math.ceil(em * size);
}

const split = new Map<string, readonly string[]>();

/** Words up to this width stay in one line. */
const SHORT = 66;

/** A text that is not short in two lines of about the same length, where it has a space to break at. */
export function wrapped(text: string): readonly string[] {
  const known = split.get(text);
  if (known) return known;
  let best: readonly string[] = [text];
  let width = textWidth(text);
  for (let i = width > SHORT ? text.indexOf(" ") : -1; i > 0; i = text.indexOf(" ", i + 1)) {
    const lines = [text.slice(0, i), text.slice(i + 1)] as const;
    const widest = Math.max(textWidth(lines[0]), textWidth(lines[1]));
    if (widest < width) {
      best = lines;
      width = widest;
    }
  }
  // Words with a moving number in them are many; the few in use come back at once.
  if (split.size > 200) split.clear();
  split.set(text, best);
  return best;
}

/** Words that want their middle at a height, and the height that they take. */
export interface Wanted {
  readonly middle: number;
  readonly height: number;
}

/**
 * Moves words apart so that none lies over another and all middles lie between `top` and `bottom`, each as near to its
 * own place and all in their order as that allows. Where there is no room for all, they draw closer together.
 */
export function spread(words: readonly Wanted[], top: number, bottom: number): number[] {
  const order = words.map((_, i) => i).sort((a, b) => words[a]!.middle - words[b]!.middle || a - b);
  const offsets: number[] = [];
  for (const [k, i] of order.entries()) {
    const before = words[order[k - 1] ?? i]!;
    offsets.push(k === 0 ? 0 : offsets[k - 1]! + (before.height + words[i]!.height) / 2);
  }
  const room = Math.max(0, bottom - top);
  const needed = offsets.at(-1) ?? 0;
  const squeeze = needed > room ? room / needed : 1;
  // Less their offsets, the middles have to be in rising order: those that are not are set to their mean.
  const runs: { mean: number; count: number }[] = [];
  for (const [k, i] of order.entries()) {
    let run = { mean: words[i]!.middle - offsets[k]! * squeeze, count: 1 };
    for (let last = runs.at(-1); last && last.mean > run.mean; last = runs.at(-1)) {
      runs.pop();
      const count = last.count + run.count;
      run = { mean: (last.mean * last.count + run.mean * run.count) / count, count };
    }
    runs.push(run);
  }
  const starts = runs.flatMap(({ mean, count }) => new Array<number>(count).fill(mean));
  const placed = new Array<number>(words.length);
  for (const [k, i] of order.entries()) {
    const start = Math.min(Math.max(starts[k]!, top), Math.max(top, bottom - needed * squeeze));
    placed[i] = start + offsets[k]! * squeeze;
  }
  return placed;
}

/** A piece of the page, px. */
export interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where words could stand: the baseline of their first line, and which of their ends lies there. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

/** Letters reach this far above and below their baseline, px. */
const [RISE, FALL] = [12, 4];

/** What words take of the page at a spot. */
export function areaOf(lines: readonly string[], { x, y, anchor }: Spot): Area {
  const width = Math.max(0, ...lines.map((line) => textWidth(line)));
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, right: left + width, top: y - RISE, bottom: y + (lines.length - 1) * (LINE - 1) + FALL };
}

/** A mark with so many px to each side. */
export const around = (x: number, y: number, size: number): Area => ({
  left: x - size,
  right: x + size,
  top: y - size,
  bottom: y + size,
});

const shared = (a: Area, b: Area): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

/** Words out of the frame are worse than words over others. */
const OUTSIDE = 4;

/** What an area costs besides what it covers. */
export type Extra = (area: Area) => number;

/** The place whose area costs least, the first if several cost nothing; areas behind that one are never worked out. */
function cheapest(count: number, areaAt: (place: number) => Area, taken: Area[], frame: Area, extra?: Extra): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  let found = frame;
  for (let i = 0; i < count; i++) {
    const area = areaAt(i);
    const all = (area.right - area.left) * (area.bottom - area.top);
    let cost = OUTSIDE * (all - shared(area, frame));
    for (const other of taken) cost += shared(area, other);
    if (extra && cost < least) cost += extra(area);
    if (cost >= least - 1e-9) continue;
    [best, least, found] = [i, cost, area];
    if (cost < 1e-9) break;
  }
  taken.push(found);
  return best;
}

/**
 * Which of the areas lies over nothing and within the frame, the first if there are several; where there is none, the one
 * that covers least. It is added to `taken`.
 */
export const clearArea = (areas: readonly Area[], taken: Area[], frame: Area): number =>
  cheapest(areas.length, (i) => areas[i]!, taken, frame);

/** The spot at which words lie best, as `clearArea` chooses it. */
export const clearSpot = <S extends Spot>(
  lines: readonly string[],
  spots: readonly S[],
  taken: Area[],
  frame: Area,
  extra?: Extra,
): S => spots[cheapest(spots.length, (i) => areaOf(lines, spots[i]!), taken, frame, extra)]!;
