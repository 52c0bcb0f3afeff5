/** How the map of gears is drawn: its grid, the pair that is looked at, the marks in words, a table behind. */
import type { Bench } from "#machine/bench";
import { el, setText } from "#view/dom";
import { unitText } from "#view/format";
import type { View } from "#view/shown";
import { enGearMap as en } from "#view/words/en-gear-map";
import { factsOf, gearGrid } from "./gear-grid.ts";
import type { GearMapState } from "./gear-map.ts";
import { gearTable } from "./gear-table.ts";
import "./gear-map.css";
import "./gear-map-words.css";

/** Puts a pair of gears into the what-if, starting one where there is none. What is refused comes back as words. */
function choose(bench: Bench, pinionTeeth: number, mainTeeth: number): string {
  const geared = (machine: Bench["now"]) => ({ ...machine, gears: { ...machine.gears, pinionTeeth, mainTeeth } });
  const pair = en.pair(pinionTeeth, mainTeeth);
  if (bench.whatIf) {
    const [problem] = bench.change(geared, { machine: "what-if" });
    return problem ? problem.words : en.chosen(pair);
  }
  const { gears } = bench.now;
  if (gears.pinionTeeth === pinionTeeth && gears.mainTeeth === mainTeeth) return en.same(pair);
  bench.replace(bench.now, geared(bench.now));
  return en.chosen(pair);
}

/** Every mark on the map with its words. */
function marksOf(state: GearMapState): { readonly mark: string; readonly words: string }[] {
  const found = Object.entries(en.marks).filter(([mark]) => state.cells.some((cell) => cell.mark === mark));
  return [
    { mark: "fits", words: en.fits },
    { mark: "outside", words: en.outside },
    ...found.map(([mark, { tag, says }]) => ({ mark, words: `${en.mark(tag, says)}.` })),
  ];
}

export const gearMapView: View<GearMapState> = {
  name: "gear-map",
  words: (state) => `${state.title}. ${state.summary}`,
  mount(host, bench) {
    const doc = host.ownerDocument;
    const title = el(doc, "span", { class: "title" });
    const unit = el(doc, "span", { class: "unit" });
    const readout = el(doc, "p", { class: "gear-map-at" });
    const status = el(doc, "p", { class: "gear-map-status", role: "status" });
    const marks = el(doc, "ul", { class: "gear-map-marks", "aria-label": en.legend });
    const caption = el(doc, "figcaption");
    const behind = gearTable(doc);
    let state: GearMapState | null = null;
    let looked = 0;
    const say = () => {
      const cell = state?.cells[looked];
      if (!state || !cell) return;
      setText(readout, `${en.label(cell.pinionTeeth, cell.mainTeeth)}: ${cell.says}; ${factsOf(state, cell)}.`);
    };
    const grid = gearGrid(
      doc,
      (cell) => {
        looked = cell;
        say();
      },
      (place) => {
        const cell = state?.cells[place];
        if (cell) setText(status, choose(bench, cell.pinionTeeth, cell.mainTeeth));
      },
    );
    host.append(
      el(
        doc,
        "figure",
        { class: "gear-map", "data-map": "gears" },
        el(doc, "p", { class: "plot-title" }, title, " ", unit),
        grid.element,
        readout,
        el(doc, "p", { class: "gear-map-how" }, en.how),
        status,
        marks,
        caption,
        behind.element,
      ),
    );
    let written = "";
    return (next) => {
      if (next === state) return;
      state = next;
      setText(title, next.title);
      setText(unit, unitText(next.unit));
      grid.put(next);
      setText(caption, next.summary);
      const found = marksOf(next);
      const key = found.map(({ mark }) => mark).join(" ");
      if (key !== written) {
        written = key;
        marks.replaceChildren(
          ...found.map(({ mark, words }) => el(doc, "li", {}, el(doc, "span", { "data-mark": mark }), words)),
        );
      }
      say();
      behind.put(next);
    };
  },
};
