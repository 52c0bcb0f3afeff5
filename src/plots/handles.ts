/**
 * Marks that can be dragged with mouse, finger or pen, and moved by keys. A drag proposes values to the bench; the
 * mark itself moves when the state that follows says so. A finger that starts beside a mark scrolls.
 */
import type { Bench } from "#machine/bench";
import { Pen, svgEl } from "#view/dom";
import { rested } from "#view/rested";
import { inTurn } from "#view/turns";
import { type Scale, slopeOf } from "./axis.ts";
import type { Layout } from "./layout.ts";
import { spotFor } from "./mark-words.ts";
import { type Slot, Slots } from "./slots.ts";
import type { Handle, PlotState } from "./state.ts";

/** With shift, or by page keys, a mark moves so many steps at once. */
const COARSE = 10;
let gestures = 0;

/** The nearest value that a handle's field may take. */
function snapped(handle: Handle, value: number): number {
  const decimals = Math.max(0, Math.ceil(-Math.log10(handle.step) - 1e-9) + 1);
  const step = Number((Math.round(value / handle.step) * handle.step).toFixed(decimals));
  return Math.min(handle.max, Math.max(handle.min, step));
}

/** The field's value at a place on the handle's axis. */
function fieldValue(handle: Handle, axisValue: number): number {
  return snapped(handle, axisValue * (handle.scale ?? 1) + (handle.offset ?? 0));
}

/**
 * The value that a key asks for, or null for a key that means nothing here. Along its axis a mark goes where the arrow
 * points; across it, up and right mean more.
 */
function keyValue(handle: Handle, scale: Scale, key: string, shift: boolean): number | null {
  const step = handle.step * (shift ? COARSE : 1);
  const more = Math.sign((handle.scale ?? 1) * slopeOf(scale)) || 1;
  const ahead = handle.moves === "x" ? more : -more;
  const along = handle.moves === "x" ? ["ArrowRight", "ArrowLeft"] : ["ArrowUp", "ArrowDown"];
  const move = (by: number) => {
    const next = snapped(handle, handle.value + by);
    // From between two steps, a step must not go the wrong way or nowhere.
    return next === handle.value ? snapped(handle, next + Math.sign(by) * handle.step) : next;
  };
  if (key === along[0]) return move(ahead * step);
  if (key === along[1]) return move(-ahead * step);
  if (key === "ArrowUp" || key === "ArrowRight") return move(step);
  if (key === "ArrowDown" || key === "ArrowLeft") return move(-step);
  if (key === "PageUp") return move(handle.step * COARSE);
  if (key === "PageDown") return move(-handle.step * COARSE);
  if (key === "Home") return handle.min;
  if (key === "End") return handle.max;
  return null;
}

/** Small arrows on the sides to which a mark can still go. */
function arrowsOf(handle: Handle, scale: Scale): string {
  const onward = (handle.scale ?? 1) * slopeOf(scale) > 0 ? handle.value < handle.max : handle.value > handle.min;
  const backward = (handle.scale ?? 1) * slopeOf(scale) > 0 ? handle.value > handle.min : handle.value < handle.max;
  if (handle.moves === "x") return (backward ? "M-11,-4L-15,0L-11,4" : "") + (onward ? "M11,-4L15,0L11,4" : "");
  return (backward ? "M-4,-11L0,-15L4,-11" : "") + (onward ? "M-4,11L0,15L4,11" : "");
}

interface Grip extends Slot {
  readonly text: Pen;
  readonly arrows: Pen;
  handle: Handle | null;
}

export interface Handles {
  put(state: PlotState, layout: Layout): void;
  /** The axis along which a mark is being dragged, which must not change its ends meanwhile. */
  readonly held: "x" | "y" | null;
}

/** `refused` gets the bench's words for a value that it did not take, or null; `settled` runs when a drag has ended. */
export function handleDrawing(
  svg: SVGSVGElement,
  bench: Bench,
  refused: (words: string | null) => void,
  settled: () => void,
): Handles {
  const doc = svg.ownerDocument;
  let layout: Layout | null = null;
  let held: { grip: Grip; by: number; origin: number; gesture: string; asked: number } | null = null;
  let keys = "";

  const propose = (handle: Handle, value: number, gesture: string) => {
    const options = handle.machine ? { gesture, machine: handle.machine } : { gesture };
    refused(bench.set(handle.path, value, options)?.words ?? null);
  };
  const scaleFor = (handle: Handle): Scale => (handle.moves === "x" ? layout!.x : layout!.y);
  const place = (event: PointerEvent, handle: Handle) => (handle.moves === "x" ? event.clientX : event.clientY);

  function listen(grip: Grip, element: SVGGElement): void {
    element.addEventListener("pointerdown", (event) => {
      const { handle } = grip;
      if (!handle || !layout || event.button !== 0) return;
      element.setPointerCapture?.(event.pointerId);
      element.focus?.({ preventScroll: true });
      const rect = svg.getBoundingClientRect();
      const start = handle.moves === "x" ? rect.left : rect.top;
      const stands = scaleFor(handle)(handle[handle.moves] ?? 0);
      // The place where the mark was taken hold of stays under the finger.
      held = {
        grip,
        by: place(event, handle) - start - stands,
        origin: start,
        gesture: newGesture(),
        asked: handle.value,
      };
      grip.group.set("data-held", "true");
      if (event.pointerType === "mouse") event.preventDefault();
    });
    element.addEventListener("pointermove", (event) => {
      const { handle } = grip;
      if (!handle || held?.grip !== grip) return;
      const value = fieldValue(handle, scaleFor(handle).invert(place(event, handle) - held.origin - held.by));
      if (value === held.asked) return;
      held.asked = value;
      propose(handle, value, held.gesture);
    });
    const end = () => {
      if (held?.grip !== grip) return;
      held = null;
      grip.group.set("data-held", "false");
      settled();
    };
    for (const kind of ["pointerup", "pointercancel", "lostpointercapture"] as const)
      element.addEventListener(kind, end);
    element.addEventListener("keydown", (event) => {
      const { handle } = grip;
      if (!handle || !layout || event.altKey || event.ctrlKey || event.metaKey) return;
      const value = keyValue(handle, scaleFor(handle), event.key, event.shiftKey);
      if (value === null) return;
      event.preventDefault();
      if (!event.repeat || keys === "") keys = newGesture();
      if (value !== handle.value) propose(handle, value, keys);
    });
  }

  const grips = new Slots((): Grip => {
    const text = new Pen(svgEl(doc, "text", { class: "words", "text-anchor": "middle", "aria-hidden": "true" }));
    const arrows = new Pen(svgEl(doc, "path", { class: "arrows" }));
    const target = svgEl(doc, "circle", { class: "target", r: 14 });
    const dot = svgEl(doc, "circle", { class: "dot", r: 7 });
    const element = svgEl(
      doc,
      "g",
      { class: "handle", role: "slider", tabindex: 0 },
      target,
      arrows.element,
      dot,
      text.element,
    );
    svg.append(element);
    const grip: Grip = { group: new Pen(element), text, arrows, handle: null };
    listen(grip, element);
    return grip;
  });

  const told = rested(() => {
    for (const grip of grips.all) tell(grip);
  });

  let state: PlotState | null = null;
  const draw = () => {
    if (!state || !layout) return;
    const { x, y, left, right, top, bottom } = layout;
    const handles = state.handles ?? [];
    const among = handles.filter((handle) => handle.shows).length > 1;
    const marks = handles.map((handle) => ({
      x: within(handle.x === null ? right : x(handle.x), left, right),
      y: within(handle.y === null ? (handle.x === null ? top : bottom) : y(handle.y), top, bottom),
    }));
    grips.draw(handles, (grip, handle, index) => {
      grip.handle = handle;
      const { group, text, arrows } = grip;
      const mark = marks[index]!;
      const [px, py] = [mark.x, mark.y];
      group.set("transform", `translate(${px},${py})`);
      group.set("data-handle", handle.key);
      group.set("data-moves", handle.moves);
      group.set("data-machine", handle.machine ?? "now");
      // Who moves this very mark hears each step; who moves something else hears of it when the hand rests.
      if (held?.grip === grip || doc.activeElement === group.element) tell(grip);
      arrows.set("d", arrowsOf(handle, handle.moves === "x" ? x : y));
      const shows = handle.shows ?? "";
      const spot = shows === "" ? null : spotFor(shows, mark, marks, among, layout!);
      text.set("text-anchor", spot?.anchor ?? "middle");
      text.set("x", spot ? Math.round(spot.x - px) : 0);
      text.set("y", spot ? Math.round(spot.y - py) : 0);
      text.text(shows);
    });
    told();
  };
  const drawInTurn = inTurn(draw);

  return {
    get held() {
      return held?.grip.handle?.moves ?? null;
    },
    put(next, around) {
      state = next;
      layout = around;
      // The mark in hand goes with the hand; marks that follow another input may wait for their turn.
      if (held || grips.all.length === 0 || svg.contains(doc.activeElement)) draw();
      else drawInTurn();
    },
  };
}

/** Writes what is heard of a mark. */
function tell({ group, handle }: Grip): void {
  if (!handle) return;
  group.set("aria-label", handle.name);
  group.set("aria-orientation", handle.moves === "x" ? "horizontal" : "vertical");
  group.set("aria-valuemin", handle.min);
  group.set("aria-valuemax", handle.max);
  group.set("aria-valuenow", handle.value);
  group.set("aria-valuetext", handle.valueText);
}

function within(place: number, low: number, high: number): number {
  return Math.round(Math.min(Math.max(place, low), Math.max(low, high)) * 10) / 10;
}

function newGesture(): string {
  gestures += 1;
  return `plot-${gestures}`;
}
