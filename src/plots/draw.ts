/** The drawing of a plot: the elements of its five marks, made once and brought from state to state. */
import { Pen, svgEl } from "#view/dom";
import { toPage } from "./axis.ts";
import { textWidth } from "./labels.ts";
import { axisWords, BASELINE, type Layout } from "./layout.ts";
import { dotsPath, linePath, pencilPath } from "./path.ts";
import { type Slot, Slots } from "./slots.ts";
import type { PlotState } from "./state.ts";
import { zoneDrawing } from "./zones.ts";

type Put = (state: PlotState, layout: Layout) => void;

const round = (place: number): number => Math.round(place * 10) / 10;
/** Lines of one pixel lie on whole pixels and a half, so that they are sharp. */
const sharp = (place: number): number => Math.round(place - 0.5) + 0.5;

interface Lined extends Slot {
  readonly line: Pen;
  readonly text: Pen;
}

interface Traced extends Slot {
  readonly line: Pen;
  readonly core: Pen;
  readonly end: Pen;
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
  const putZones = zoneDrawing(svg, name);
  const clipped = layer("plot-marks", { "clip-path": `url(#clip-${name})` });
  const words = layer("plot-words");

  const xAxis = new Slots(() => lined(grid));
  const yAxis = new Slots(() => lined(grid));
  const axisLabel = pen(svgEl(doc, "text", { "text-anchor": "middle" }));
  const firstEnd = pen(svgEl(doc, "text", { "text-anchor": "start" }));
  const lastEnd = pen(svgEl(doc, "text", { "text-anchor": "end" }));
  grid.append(axisLabel.element, firstEnd.element, lastEnd.element);

  const levels = new Slots((): Lined => {
    const line = pen(svgEl(doc, "line"));
    const text = pen(svgEl(doc, "text"));
    const group = pen(svgEl(doc, "g"));
    group.element.append(line.element);
    clipped.append(group.element);
    words.append(text.element);
    return { group, line, text, outside: text };
  });
  const curves = new Slots((): Traced => {
    const line = pen(svgEl(doc, "path"));
    const core = pen(svgEl(doc, "path", { class: "core" }));
    const group = pen(svgEl(doc, "g"));
    group.element.append(line.element, core.element);
    clipped.append(group.element);
    const end = pen(svgEl(doc, "text"));
    words.append(end.element);
    return { group, line, core, end, outside: end };
  });
  const points = new Slots((): Lined => {
    const made = lined(words);
    made.group.element.prepend(svgEl(doc, "circle", { r: 5 }));
    return made;
  });

  const putAxes: Put = (state, { x, y, xTicks, yTicks, left, right, top, bottom }) => {
    yAxis.draw(yTicks, ({ group, line, text }, tick) => {
      const place = sharp(toPage(y, tick.value));
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
      const place = toPage(x, tick.value);
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
    clip.set("x", left - 1);
    clip.set("y", top - 6);
    clip.set("width", Math.max(0, round(right - left + 7)));
    clip.set("height", Math.max(0, bottom - top + 7));
  };

  const putLevels: Put = (state, { x, y, left, right, top, bottom, levelLabels }) => {
    levels.draw(state.levels ?? [], ({ group, line, text }, level, i) => {
      const place = round(toPage(level.axis === "x" ? x : y, level.at));
      const inside =
        level.axis === "x" ? place >= left - 1 && place <= right + 1 : place >= top - 1 && place <= bottom + 1;
      group.set("data-level", level.key);
      line.set("class", `ink ${level.ink}`);
      line.show(inside);
      const upright = level.axis === "x";
      line.set("x1", upright ? place : left);
      line.set("x2", upright ? place : right);
      line.set("y1", upright ? top - 4 : place);
      line.set("y2", upright ? bottom : place);
      const label = levelLabels[i];
      text.set("class", `words ${level.ink}`);
      text.show(inside);
      text.text(level.label);
      if (label) {
        text.set("x", round(label.x));
        text.set("y", round(label.y));
        text.set("text-anchor", label.anchor);
      } else {
        const half = textWidth(level.label) / 2;
        text.set("x", round(Math.min(Math.max(place, left + half), Math.max(right - half, left + half))));
        text.set("y", top - 9);
        text.set("text-anchor", "middle");
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
      end.show(true);
      end.set("class", `words ${curve.ink}`);
      end.set("x", round(label.x));
      end.set("y", round(label.y));
      end.set("text-anchor", label.anchor);
      end.text(label.text);
    });
  };

  const putPoints: Put = (state, { x, y, left, right, top, bottom }) => {
    const inside = (state.points ?? []).filter((point) => {
      const px = toPage(x, point.x);
      const py = toPage(y, point.y);
      return px >= left - 1 && px <= right + 1 && py >= top - 7 && py <= bottom + 1;
    });
    points.draw(inside, ({ group, line, text }, point) => {
      group.set("data-point", point.key);
      group.set("class", `point ${point.kind}`);
      const px = round(toPage(x, point.x));
      const py = round(toPage(y, point.y));
      group.set("transform", `translate(${px},${py})`);
      const bar = point.low !== undefined && point.high !== undefined;
      line.show(bar);
      line.set("y1", bar ? round(toPage(y, point.low) - py) : 0);
      line.set("y2", bar ? round(toPage(y, point.high) - py) : 0);
      const label = point.label ?? "";
      const width = textWidth(label) + 8;
      const toLeft = px + width > right && px - width > left;
      text.set("class", "words");
      text.set("x", toLeft ? -7 : 7);
      text.set("y", py < top + 22 ? 22 : -11);
      text.set("text-anchor", toLeft ? "end" : "start");
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
    putZones(state, layout);
    putLevels(state, layout);
    putCurves(state, layout);
    putPoints(state, layout);
  };
}
