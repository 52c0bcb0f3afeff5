/**
 * The plot: a figure with its title, the drawing, its sentence and the table behind it. Named plots are functions that
 * make a `PlotState` from the machine's figures and hand it to `plot`.
 */
import { same } from "#machine/paths";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { rested } from "#view/rested";
import { type Shown, show, type View } from "#view/shown";
import { firstAndRest } from "#view/text";
import { drawing } from "./draw.ts";
import { type Handles, handleDrawing } from "./handles.ts";
import { type Box, layOut, noMemory } from "./layout.ts";
import { inShownUnits } from "./shown-units.ts";
import type { PlotState } from "./state.ts";
import { tableBehind } from "./table.ts";

/** A drawing has this width until the page has told the real one; its height is the one that the style sheet keeps free. */
const FIRST_WIDTH = 640;
const HEIGHTS = { short: 220, regular: 320, tall: 400 } as const;

/** A finger on a mark that moves up and down drags it; elsewhere on a plot it may scroll the page that way. */
function keepUpright(event: TouchEvent): void {
  if ((event.target as Element).closest('[data-moves="y"]')) event.preventDefault();
}

/** Whether two states look the same. Their words and tables may differ: those are brought up to date in any case. */
const looksLike = (a: PlotState, b: PlotState): boolean =>
  same({ ...a, words: "", table: null }, { ...b, words: "", table: null });

/** Tells the ids of one drawing from those of another. */
let plots = 0;

/** Shows a plot: the value of a cell. */
export function plot(state: PlotState): Shown<PlotState> {
  return show(plotView, inShownUnits(state));
}

/** How a state is drawn. Built once; then only what differs from the last state is written. */
export const plotView: View<PlotState> = {
  name: "plot",
  words: (state) => `${state.title}. ${state.words}`,
  mount(host, bench) {
    const doc = host.ownerDocument;
    const unit = el(doc, "span", { class: "unit" });
    const title = el(doc, "span", { class: "title" });
    const svg = svgEl(doc, "svg", { class: "plot-drawing", role: "img" });
    const image = new Pen(svg);
    const grips = svgEl(doc, "svg", { class: "plot-handles" });
    const overlay = new Pen(grips);
    const problem = el(doc, "p", { class: "plot-problem error", role: "status", hidden: true });
    const frame = el(doc, "div", { class: "plot-frame" }, svg);
    frame.addEventListener("touchstart", keepUpright, { passive: false });
    const caption = el(doc, "figcaption");
    const first = el(doc, "b");
    const rest = doc.createTextNode("");
    caption.append(first, rest);
    const table = tableBehind(doc);
    const figure = el(
      doc,
      "figure",
      { class: "plot" },
      el(doc, "p", { class: "plot-title" }, title, " ", unit),
      frame,
      problem,
      caption,
      table.element,
    );
    host.append(figure);

    const memory = noMemory();
    let box: Box | null = null;
    let state: PlotState | null = null;
    let put: ReturnType<typeof drawing> | null = null;
    let handles: Handles | null = null;
    let said = "";
    // Changes of a movement so far: a single one is none.
    let changes = 0;
    plots += 1;
    const number = plots;

    const refused = (words: string | null) => {
      setText(problem, words ?? "");
      problem.hidden = words === null;
    };
    const draw = () => {
      if (!state) return;
      put ??= drawing(svg, `${state.name}-${number}`);
      box ??= { width: FIRST_WIDTH, height: HEIGHTS[state.size ?? "regular"] };
      const layout = layOut(state, box, memory, handles?.held ?? null, changes > 1);
      put(state, layout);
      if (!state.handles?.length && !handles) return;
      if (!handles) {
        handles = handleDrawing(grips, bench, refused, draw);
        frame.append(grips);
      }
      overlay.set("viewBox", `0 0 ${box.width} ${box.height}`);
      handles.put(state, layout);
    };
    const name = (next: PlotState) => {
      setText(title, next.title);
      setText(unit, next.unit);
    };
    const say = rested(() => {
      if (!state) return;
      if (state.words !== said) {
        said = state.words;
        const [main, more] = firstAndRest(said);
        setText(first, main);
        rest.data = more;
      }
      image.set("aria-label", plotView.words(state));
    });

    const settle = rested(() => {
      const moved = changes > 1;
      changes = 0;
      // Axes that grew in the movement may now be too long.
      if (moved) draw();
    });

    const Observer = doc.defaultView?.ResizeObserver;
    if (Observer) {
      new Observer((entries) => {
        const size = entries.at(-1)?.contentRect;
        if (!size || size.width < 120 || size.height < 100) return;
        const next = { width: Math.round(size.width), height: Math.round(size.height) };
        if (box?.width === next.width && box.height === next.height) return;
        box = next;
        memory.beside = 0;
        draw();
      }).observe(frame);
    }

    return (next) => {
      if (next === state) return;
      if (next.name !== state?.name) figure.dataset.plot = next.name;
      if (next.size !== state?.size || !state) setAttribute(figure, "data-size", next.size ?? "regular");
      const drawn = state !== null && looksLike(state, next);
      state = next;
      if (!drawn) {
        settle();
        changes += 1;
        draw();
      }
      name(next);
      say();
      table.put(next);
    };
  },
};
