/** Limits: hatched zones with words in them, and a firm line where the limit itself lies. */
import { Pen, svgEl } from "#view/dom";
import { type Scale, slopeOf } from "./axis.ts";
import { type Area, areaOf, clearArea, LINE, textWidth, wrapped } from "./labels.ts";
import { BASELINE, type Layout } from "./layout.ts";
import { areaPath } from "./path.ts";
import { type Slot, Slots } from "./slots.ts";
import type { PlotState, Zone } from "./state.ts";
import { Words } from "./words.ts";

interface Hatched extends Slot {
  readonly area: Pen;
  readonly edge: Pen;
  readonly text: Words;
}

interface Said {
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  /** In a zone that is too narrow for words, they read upwards. */
  readonly upright?: boolean;
}

interface Drawn {
  readonly area: string;
  readonly edge: string;
  /** Where the middle of the words may go, the best place first; none when nothing of the zone is in view. */
  readonly words: readonly Said[];
}

const round = (place: number): number => Math.round(place * 10) / 10;
const nothing: Drawn = { area: "", edge: "", words: [] };

/** Heights for words in a zone, as shares of the room there: in the middle, else higher or lower where less stands. */
const SHARES = [0.5, 0.25, 0.75, 0, 1] as const;

/** The two ends of one side of a zone on the page, cut at the frame, and which of them are limits in view. */
function cut(scale: Scale, side: readonly [number | null, number | null] | undefined, from: number, to: number) {
  const places = [side?.[0] ?? null, side?.[1] ?? null].map((value) => (value === null ? null : scale(value)));
  const [a, b] = slopeOf(scale) > 0 ? [places[0]!, places[1]!] : [places[1]!, places[0]!];
  const low = Math.max(from, a ?? from);
  const high = Math.min(to, b ?? to);
  const limits = [a, b].filter((place): place is number => place !== null && place >= from && place <= to);
  return { low, high, limits };
}

/** The first line's baseline of lines around a height. */
const baseline = (middle: number, lines: readonly string[]): number =>
  middle + BASELINE - ((lines.length - 1) * (LINE - 1)) / 2;

function rectangle(zone: Zone, { x, y, left, right, top, bottom }: Layout): Drawn {
  const across = cut(x, zone.x, left, right);
  const up = cut(y, zone.y, top - 4, bottom);
  if (across.high - across.low < 0.5 || up.high - up.low < 0.5) return nothing;
  const [x0, x1, y0, y1] = [across.low, across.high, up.low, up.high].map(round) as [number, number, number, number];
  const edges = [
    ...across.limits.map((place) => `M${round(place)},${y0}V${y1}`),
    ...up.limits.map((place) => `M${x0},${round(place)}H${x1}`),
  ];
  const lines = x1 - x0 < textWidth(zone.words) + 8 ? wrapped(zone.words) : [zone.words];
  const shape = { area: `M${x0},${y0}H${x1}V${y1}H${x0}Z`, edge: edges.join("") };
  const widest = Math.max(...lines.map((line) => textWidth(line)));
  const heights = (tall: number) => SHARES.map((share) => y0 + tall / 2 + share * (y1 - y0 - tall));
  if (widest + 6 > x1 - x0 && x1 - x0 >= LINE && y1 - y0 > textWidth(zone.words) + 8) {
    const all = heights(textWidth(zone.words) + 8);
    return { ...shape, words: all.map((y) => ({ x: (x0 + x1) / 2, y, lines: [zone.words], upright: true })) };
  }
  // Too thin for words: they stand just outside its limit.
  const fits = y1 - y0 >= lines.length * LINE + 2;
  const outside = y0 - LINE > top ? y0 - LINE / 2 - 2 : y1 + LINE / 2 + 2;
  const half = widest / 2 + 4;
  // In a zone across the whole plot they stand at its start, where curves that rise into it do not come yet.
  const wanted = across.limits.length === 0 ? left + half + 6 : (x0 + x1) / 2;
  const middle = Math.min(Math.max(wanted, left + half), Math.max(right - half, left + half));
  const all = fits ? heights(lines.length * LINE) : [outside];
  return { ...shape, words: all.map((y) => ({ x: middle, y, lines })) };
}

function between(zone: Zone, layout: Layout): Drawn {
  const { x, y, left, right } = layout;
  const { xs, lower, upper } = zone.between!;
  const area = areaPath(xs, lower, upper, x, y);
  let widest = 0;
  let words: Said | null = null;
  const half = textWidth(zone.words) / 2 + 6;
  for (let i = 0; i < xs.length; i++) {
    const low = lower[i];
    const high = upper[i];
    if (low === null || high === null || low === undefined || high === undefined) continue;
    const place = x(xs[i]!);
    const gap = Math.abs(slopeOf(y) * (high - low));
    // Words go where the area is high, yet not out of the frame.
    if (place - half < left || place + half > right || gap <= widest) continue;
    widest = gap;
    words = { x: place, y: (y(low) + y(high)) / 2, lines: [zone.words] };
  }
  const [lowest, highest] = y.domain();
  const seenAt = words && y.invert(words.y);
  return {
    area,
    edge: "",
    words: words && widest > 3 && seenAt !== null && seenAt >= lowest && seenAt <= highest ? [words] : [],
  };
}

/** What words of a zone take; upright ones lie on their side. */
function areaIn({ x, y, lines, upright }: Said): Area {
  const area = areaOf(lines, { x, y: baseline(y, lines), anchor: "middle" });
  if (!upright) return area;
  const half = (area.right - area.left) / 2;
  return { left: x - LINE / 2, right: x + LINE / 2, top: y - half, bottom: y + half };
}

function put(text: Words, { x, y, lines, upright }: Said): void {
  // Turned words turn around the middle of their baseline.
  if (upright) text.put("limit", lines, x + BASELINE, y, "middle", true);
  else text.put("limit", lines, x, baseline(y, lines), "middle");
}

/** The zones' part of a drawing: hatch and areas lie under the curves, their words over them. */
export interface ZoneDrawing {
  readonly hatch: Element;
  readonly areas: Element;
  readonly words: Element;
  put(state: PlotState, layout: Layout): void;
}

/** Makes the zones of a drawing, whose clip path bears the same name. */
export function zoneDrawing(doc: Document, name: string): ZoneDrawing {
  const turned = { width: 8, height: 8, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" };
  const pattern = svgEl(doc, "pattern", { id: `hatch-${name}`, ...turned }, svgEl(doc, "line", { y2: 8 }));
  const areas = svgEl(doc, "g", { class: "plot-zones" });
  const words = svgEl(doc, "g", { class: "plot-zones" });
  const zones = new Slots((): Hatched => {
    const area = new Pen(
      svgEl(doc, "path", { class: "hatch", fill: `url(#hatch-${name})`, "clip-path": `url(#clip-${name})` }),
    );
    const edge = new Pen(svgEl(doc, "path", { class: "edge" }));
    const group = new Pen(svgEl(doc, "g", {}, area.element, edge.element));
    areas.append(group.element);
    const text = new Words(words);
    return { group, area, edge, text, outside: text };
  });
  return {
    hatch: svgEl(doc, "defs", { class: "plot-hatch" }, pattern),
    areas,
    words,
    put(state, layout) {
      const { left, right, top, bottom } = layout;
      const frame = { left, right, top: top - 4, bottom };
      zones.draw(state.zones ?? [], ({ group, area, edge, text }, zone) => {
        const drawn = zone.between ? between(zone, layout) : rectangle(zone, layout);
        group.set("data-zone", zone.key);
        area.set("d", drawn.area);
        edge.set("d", drawn.edge);
        const { words } = drawn;
        if (words.length === 0) text.show(false);
        else put(text, words[clearArea(words.map(areaIn), layout.taken, frame)]!);
      });
    },
  };
}
