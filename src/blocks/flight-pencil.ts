/**
 * The reader's hand on a lane: draws a curve with mouse, pen or finger, or point by point with keys. A finger that goes up
 * or down scrolls the page as ever; one that goes along the time axis draws.
 */
import type { Layout } from "#plots/layout";
import { Pen, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { enFlights as en } from "#view/words/en-flights";
import { stroke, timeOf } from "./flight-curve.ts";
import { timeText, timeUnit } from "./flight-lanes.ts";
import type { Drawing } from "./flight-state.ts";

/** What the hand works on: null for a lane that nothing is drawn on. */
export interface Sheet {
  readonly drawing: Drawing;
  readonly values: readonly number[];
  readonly layout: Layout;
  readonly seconds: number;
}

export interface Hand {
  readonly element: SVGGElement;
  /** A stroke is being drawn. */
  readonly busy: boolean;
  put(sheet: Sheet | null): void;
}

/** `drew` hears every new curve; `done` is true when a stroke or a key press has ended. */
export function handOn(doc: Document, svg: SVGSVGElement, drew: (values: number[], done: boolean) => void): Hand {
  const area = new Pen(svgEl(doc, "rect", { class: "sheet" }));
  const ring = svgEl(doc, "circle", { class: "target", r: 13 });
  const mark = new Pen(
    svgEl(
      doc,
      "g",
      { class: "pencil-point", role: "slider", tabindex: 0 },
      ring,
      svgEl(doc, "circle", { class: "tip", r: 5 }),
    ),
  );
  const element = svgEl(doc, "g", { class: "hand" }, area.element, mark.element);
  let sheet: Sheet | null = null;
  let chosen = 0;
  let last: { time: number; value: number } | null = null;
  let before: readonly number[] = [];
  let moved = false;

  const snapped = ({ low, high, step }: Drawing, value: number): number =>
    Math.min(high, Math.max(low, Math.round(value / step) * step));

  const place = (event: PointerEvent, { layout, drawing, seconds }: Sheet) => {
    const rect = svg.getBoundingClientRect();
    const scale = rect.width > 0 ? layout.box.width / rect.width : 1;
    const time = layout.x.invert((event.clientX - rect.left) * scale) * timeUnit(seconds);
    const value = layout.y.invert((event.clientY - rect.top) * scale);
    return { time: Math.min(seconds, Math.max(0, time)), value: snapped(drawing, value) };
  };
  const draw = (event: PointerEvent) => {
    if (!sheet || !last) return;
    const here = place(event, sheet);
    const values = stroke(sheet.values, sheet.seconds, last, here).map((value) => snapped(sheet!.drawing, value));
    last = here;
    moved = true;
    drew(values, false);
  };
  area.element.addEventListener("pointerdown", (event) => {
    if (!sheet || event.button !== 0) return;
    area.element.setPointerCapture?.(event.pointerId);
    last = place(event, sheet);
    before = sheet.values;
    moved = false;
    // A mouse draws at once; a finger may only want to scroll.
    if (event.pointerType !== "touch") draw(event);
    if (event.pointerType === "mouse") event.preventDefault();
  });
  area.element.addEventListener("pointermove", draw);
  area.element.addEventListener("pointerup", (event) => {
    if (!sheet || !last) return;
    if (!moved) draw(event);
    last = null;
    drew([...sheet.values], true);
  });
  area.element.addEventListener("pointercancel", () => {
    if (sheet && last && moved) drew([...before], true);
    last = null;
  });

  mark.element.addEventListener("keydown", (event) => {
    if (!sheet || event.altKey || event.ctrlKey || event.metaKey) return;
    const { drawing, values } = sheet;
    const end = values.length - 1;
    const along: Readonly<Record<string, number>> = {
      ArrowRight: chosen + 1,
      ArrowLeft: chosen - 1,
      Home: 0,
      End: end,
    };
    const up: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 1, PageDown: -1 };
    const to = along[event.key];
    const by = up[event.key];
    if (to === undefined && by === undefined) return;
    event.preventDefault();
    if (to !== undefined) {
      chosen = Math.min(end, Math.max(0, to));
      put(sheet);
    }
    if (by === undefined) return;
    const whole = event.key.startsWith("Page");
    const step = drawing.step * (event.shiftKey ? 5 : 1) * by;
    drew(
      values.map((value, i) => (i === chosen || (whole && i > chosen) ? snapped(drawing, value + step) : value)),
      true,
    );
  });

  function put(next: Sheet | null): void {
    sheet = next;
    new Pen(element).show(next !== null);
    if (!next) return;
    const { drawing, values, layout, seconds } = next;
    const { left, right, top, bottom, x, y } = layout;
    area.set("x", left);
    area.set("y", top - 8);
    area.set("width", Math.max(0, right - left));
    area.set("height", bottom - top + 16);
    chosen = Math.min(chosen, values.length - 1);
    const value = values[chosen] ?? drawing.low;
    const time = timeOf(chosen, seconds, values.length);
    mark.set("transform", `translate(${Math.round(x(time / timeUnit(seconds)))},${Math.round(y(value))})`);
    mark.set("aria-label", drawing.what === "collective" ? en.drawHand : en.drawGuess);
    mark.set("aria-valuemin", drawing.low);
    mark.set("aria-valuemax", drawing.high);
    mark.set("aria-valuenow", Number(value.toFixed(2)));
    mark.set("aria-valuetext", en.pointAt(timeText(time, seconds), formatValue(value, drawing.unit)));
  }

  return {
    element,
    get busy() {
      return last !== null;
    },
    put,
  };
}
