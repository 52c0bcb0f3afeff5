/** Draws the lanes of a flight, each into a part of its own. */
import { drawing } from "#plots/draw";
import type { Layout } from "#plots/layout";
import type { PlotState } from "#plots/state";
import { svgEl } from "#view/dom";

/** Gives the function that brings the lanes to their states; `id` names their hatches. */
export function lanesIn(doc: Document, svg: SVGElement, id: string) {
  const puts = new Map<string, ReturnType<typeof drawing>>();
  return (plots: readonly PlotState[], layouts: readonly Layout[]): void => {
    for (const [i, plot] of plots.entries()) {
      let put = puts.get(plot.name);
      if (!put) {
        const part = svgEl(doc, "svg", {});
        svg.append(part);
        put = drawing(part, `${id}-${plot.name}`);
        puts.set(plot.name, put);
      }
      put(plot, layouts[i]!);
    }
  };
}
