/** The moment looked at, across all lanes: a line, a veil over what is yet to come, and each lane's name and figures. */
import type { FlightResult } from "#flights/flight";
import { type LaneName, laneAt, lanes } from "#flights/lanes";
import type { Layout } from "#plots/layout";
import type { PlotState } from "#plots/state";
import { Pen, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { timeUnit } from "./flight-lanes.ts";
import type { FlightState } from "./flight-state.ts";

/** Most runs whose figures stand beside a lane's name. */
const FIGURES = 2;
/** Signs that the widest figure takes, and their width, px: the second run's figures stand to the left of the first's. */
const FIGURE_WIDTH = 78;

export interface Cursor {
  put(state: FlightState, plots: readonly PlotState[], layouts: readonly Layout[]): void;
  /** Moves to a time (s); null: no flight to look at. */
  show(time: number | null, state: FlightState, results: readonly FlightResult[]): void;
}

/** Draws into a layer above the lanes. */
export function cursorOn(doc: Document, layer: Element): Cursor {
  const veil = new Pen(svgEl(doc, "rect", { class: "flight-veil" }));
  const line = new Pen(svgEl(doc, "line", { class: "flight-cursor" }));
  layer.append(veil.element, line.element);
  const names: { title: Pen; unit: Pen; figures: Pen[] }[] = [];
  let first: Layout | undefined;
  let last: Layout | undefined;

  const nameAt = (i: number) => {
    let made = names[i];
    if (!made) {
      const title = new Pen(svgEl(doc, "tspan", { class: "lane-name" }));
      const unit = new Pen(svgEl(doc, "tspan"));
      const text = svgEl(doc, "text", { x: 0 }, title.element, unit.element);
      const figures = Array.from({ length: FIGURES }, () => new Pen(svgEl(doc, "text", { "text-anchor": "end" })));
      layer.append(text, ...figures.map((figure) => figure.element));
      made = { title, unit, figures };
      names[i] = made;
    }
    return made;
  };

  return {
    put(_, plots, layouts) {
      first = layouts[0];
      last = layouts.at(-1);
      for (const [i, plot] of plots.entries()) {
        const { title, unit, figures } = nameAt(i);
        const layout = layouts[i]!;
        title.text(plot.title);
        unit.text(plot.unit === "" ? "" : `, ${plot.unit}`);
        new Pen(title.element.parentElement!).set("y", layout.top - 11);
        for (const [k, figure] of figures.entries()) {
          figure.set("x", layout.right - k * FIGURE_WIDTH);
          figure.set("y", layout.top - 11);
        }
      }
    },
    show(time, state, results) {
      const flown = time !== null && first && last;
      veil.show(Boolean(flown));
      line.show(Boolean(flown));
      if (flown) {
        const place = Math.round(first!.x(time / timeUnit(state.seconds)) * 10) / 10;
        veil.set("x", place);
        veil.set("y", first!.top - 8);
        veil.set("width", Math.max(0, first!.right - place));
        veil.set("height", last!.bottom - first!.top + 8);
        line.set("x1", place);
        line.set("x2", place);
        line.set("y1", first!.top - 6);
        line.set("y2", last!.bottom);
      }
      for (const [i, name] of state.lanes.entries()) {
        for (const [k, figure] of (names[i]?.figures ?? []).entries()) {
          const run = state.runs[k];
          const result = results[k];
          figure.text(run && result?.ok && time !== null ? valueText(name, laneAt(result.trace, name, time)) : "");
          if (run) figure.set("class", `figure ${run.ink}`);
        }
      }
    },
  };
}

/** A lane's value as it stands beside its name and in the words of the time slider. */
export const valueText = (name: LaneName, value: number | null): string =>
  value === null ? "" : formatValue(value, lanes[name].unit);
