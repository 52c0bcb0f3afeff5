/** The drawing of a plot: the elements of its five marks, made once and brought from state to state. */
import { Pen, svgEl } from "#view/dom";
import { areaOf, clearSpot, textWidth } from "./labels.ts";
import { axisWords, BASELINE, type Layout } from "./layout.ts";
import { spotsBeside } from "./mark-words.ts";
import { dotsPath, linePath, pencilPath } from "./path.ts";
import { type Slot, Slots } from "./slots.ts";
import type { PlotState } from "./state.ts";
import { Words } from "./words.ts";
import { zoneDrawing } from "./zones.ts";

type Put = (state: PlotState, layout: Layout) => void;

const round = (place: number): number => Math.round(place * 10) / 10;
/** Lines of one pixel lie on whole pixels and a half, so that they are sharp. */
const sharp = (place: number): number => Math.round(place - 0.5) + 0.5;

interface Pointed extends Slot {
  readonly bar: Pen;
  readonly text: Pen;
}

interface Lined extends Slot {
  readonly line: Pen;
  readonly text: Pen;
}

interface Leveled extends Slot {
  readonly line: Pen;
  readonly text: Words;
}

interface Traced extends Slot {
  readonly line: Pen;
  readonly core: Pen;
  readonly end: Words;
}

const pen = <E extends Element>(element: E): Pen<E> => new Pen(element);

function lined(parent: Element): Lined {
  const doc = parent.ownerDocument;
  const line = pen(svgEl(doc, "line"));
  const text = pen(svgEl(doc, "text"));
  const group = pen(svgEl(doc, "g", {}, line.element, text.element));
  parent.append(group.element);
  return { group, line, text };
}

/** The bar of a measured point, with a cap at each end. */
function barPath(low: number, high: number): string {
  return low === high ? "" : `M-4,${round(low)}h8M0,${round(low)}V${round(high)}M-4,${round(high)}h8`;
}

/** Draws everything but the handles into `svg`; returns the function that brings it to a state and a layout. */
export function drawing(svg: SVGSVGElement, name: string): Put {
  const doc = svg.ownerDocument;
  const layer = (kind: string, attributes: Record<string, string> = {}) => {
    const group = svgEl(doc, "g", { class: kind, ...attributes });
    svg.append(group);
    return group;
  };
  const clip = pen(svgEl(doc, "rect"));
  svg.append(svgEl(doc, "defs", {}, svgEl(doc, "clipPath", { id: `clip-${name}` }, clip.element)));
  const grid = layer("plot-grid");
  const zones = zoneDrawing(doc, name);
  svg.append(zones.hatch, zones.areas);
  const clipped = layer("plot-marks", { "clip-path": `url(#clip-${name})` });
  const words = layer("plot-words");
  words.append(zones.words);

  const xAxis = new Slots(() => lined(grid));
  const yAxis = new Slots(() => lined(grid));
  const axisLabel = pen(svgEl(doc, "text", { "text-anchor": "middle" }));
  const firstEnd = pen(svgEl(doc, "text", { "text-anchor": "start" }));
  const lastEnd = pen(svgEl(doc, "text", { "text-anchor": "end" }));
  grid.append(axisLabel.element, firstEnd.element, lastEnd.element);

  const levels = new Slots((): Leveled => {
    const line = pen(svgEl(doc, "line"));
    const group = pen(svgEl(doc, "g", {}, line.element));
    clipped.append(group.element);
    const text = new Words(words);
    return { group, line, text, outside: text };
  });
  const curves = new Slots((): Traced => {
    const line = pen(svgEl(doc, "path"));
    const core = pen(svgEl(doc, "path", { class: "core" }));
    const group = pen(svgEl(doc, "g", {}, line.element, core.element));
    clipped.append(group.element);
    const end = new Words(words);
    return { group, line, core, end, outside: end };
  });
  const points = new Slots((): Pointed => {
    const bar = pen(svgEl(doc, "path"));
    const text = pen(svgEl(doc, "text", { class: "words" }));
    const group = pen(svgEl(doc, "g", {}, bar.element, svgEl(doc, "circle", { r: 5 }), text.element));
    words.append(group.element);
    return { group, bar, text };
  });

  const putAxes: Put = (state, { x, y, xTicks, yTicks, left, right, top, bottom }) => {
    yAxis.draw(yTicks, ({ group, line, text }, tick) => {
      const place = sharp(y(tick.value));
      group.set("class", "y");
      line.set("x1", left);
      line.set("x2", right);
      line.set("y1", place);
      line.set("y2", place);
      text.set("x", left - 8);
      text.set("y", round(place + BASELINE));
      text.set("text-anchor", "end");
      text.text(tick.text);
    });
    xAxis.draw(xTicks, ({ group, line, text }, tick) => {
      const place = x(tick.value);
      group.set("class", "x");
      line.set("x1", sharp(place));
      line.set("x2", sharp(place));
      line.set("y1", bottom);
      line.set("y2", bottom + 5);
      text.set("x", round(place));
      text.set("y", bottom + 20);
      text.set("text-anchor", "middle");
      text.text(tick.text);
    });
    const below = bottom + 39;
    axisLabel.set("x", round((left + right) / 2));
    axisLabel.set("y", below);
    axisLabel.text(axisWords(state.x));
    firstEnd.set("x", left);
    firstEnd.set("y", below);
    firstEnd.text(state.x.ends?.[0] ?? "");
    lastEnd.set("x", right);
    lastEnd.set("y", below);
    lastEnd.text(state.x.ends?.[1] ?? "");
    clip.set("x", left - 5);
    clip.set("y", top - 6);
    clip.set("width", Math.max(0, round(right - left + 11)));
    clip.set("height", Math.max(0, bottom - top + 12));
  };

  const putLevels: Put = (state, { x, y, left, right, top, bottom, levelLabels, taken }) => {
    levels.draw(state.levels ?? [], ({ group, line, text }, level, i) => {
      const place = round((level.axis === "x" ? x : y)(level.at));
      const inside =
        level.axis === "x" ? place >= left - 1 && place <= right + 1 : place >= top - 1 && place <= bottom + 1;
      group.set("data-level", level.key);
      line.set("class", `ink ${level.ink} ${level.axis}`);
      line.show(inside);
      const upright = level.axis === "x";
      line.set("x1", upright ? place : left);
      line.set("x2", upright ? place : right);
      line.set("y1", upright ? top - 4 : place);
      line.set("y2", upright ? bottom : place);
      const label = levelLabels[i];
      if (!inside) text.show(false);
      else if (label) text.put(level.ink, label.lines, label.x, label.y, label.anchor);
      else {
        const half = textWidth(level.label) / 2;
        const middle = Math.min(Math.max(place, left + half), Math.max(right - half, left + half));
        text.put(level.ink, [level.label], middle, top - 9, "middle");
        taken.push(areaOf([level.label], { x: middle, y: top - 9, anchor: "middle" }));
      }
    });
  };

  const putCurves: Put = (state, { x, y, curveLabels }) => {
    curves.draw(state.curves, ({ group, line, core, end }, curve, i) => {
      const path = curve.dots
        ? dotsPath(curve.xs, curve.ys, x, y, 4)
        : curve.ink === "pencil"
          ? pencilPath(curve.xs, curve.ys, x, y)
          : linePath(curve.xs, curve.ys, x, y);
      group.set("data-curve", curve.key);
      group.set("class", curve.dots ? "dots" : "line");
      line.set("class", `ink ${curve.ink}`);
      line.set("d", path);
      // The what-if is a hollow line: told from the other by its shape, not by its colour alone.
      core.set("d", curve.ink === "what-if" && !curve.dots ? path : "");
      const label = curveLabels[i]!;
      end.put(curve.ink, label.lines, label.x, label.y, label.anchor);
    });
  };

  const putPoints: Put = (state, { x, y, left, right, top, bottom, taken }) => {
    const frame = { left, right, top: 0, bottom };
    const inside = (state.points ?? []).filter((point) => {
      const px = x(point.x);
      const py = y(point.y);
      return px >= left - 1 && px <= right + 1 && py >= top - 7 && py <= bottom + 1;
    });
    points.draw(inside, ({ group, bar, text }, point) => {
      group.set("data-point", point.key);
      group.set("class", `point ${point.kind}`);
      const px = round(x(point.x));
      const py = round(y(point.y));
      group.set("transform", `translate(${px},${py})`);
      bar.set("d", barPath(y(point.low ?? point.y) - py, y(point.high ?? point.y) - py));
      const label = point.label ?? "";
      const width = textWidth(label) + 8;
      const toLeft = px + width > right && px - width > left;
      // Words of the machine now stand above; those of another one below, where they meet the fewest.
      const other = point.kind === "pinned" || point.kind === "what-if";
      const below = py < top + 22 || ((other || point.under === true) && py < bottom - 26);
      const spot = label === "" ? null : clearSpot([label], spotsBeside(px, py, 7, toLeft, below), taken, frame);
      text.set("x", spot ? round(spot.x - px) : 0);
      text.set("y", spot ? round(spot.y - py) : 0);
      text.set("text-anchor", spot?.anchor ?? "start");
      text.text(label);
    });
  };

  let box = "";
  return (state, layout) => {
    const { width, height } = layout.box;
    const next = `0 0 ${width} ${height}`;
    if (next !== box) {
      box = next;
      svg.setAttribute("viewBox", next);
    }
    putAxes(state, layout);
    zones.put(state, layout);
    putLevels(state, layout);
    putCurves(state, layout);
    putPoints(state, layout);
  };
}
