/** A whole pack in every mode: flown in the worker, drawn as bars, said in words, and a table for the transmitter. */
import type { FlightResult } from "#flights/flight";
import type { PackMix } from "#flights/scenarios";
import type { Machine } from "#machine/machine";
import { tableBehind } from "#plots/table";
import type { Answers } from "#view/answers";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { firstAndRest } from "#view/text";
import { enWholePack } from "#view/words/en-whole-pack";
import { patientFlyer } from "#worker/patient";
import { factsTable } from "./facts-table.ts";
import { whenSeen } from "./when-seen.ts";
import { barsIn } from "./whole-pack-bars.ts";
import { knownPacks, packTable, packWords, toFly, type WholePackState, wholePackState } from "./whole-pack-state.ts";
import "./whole-pack.css";

const en = enWholePack.modes;
let figures = 0;

/** Where in the pack each mode is lost, flown with a mix of loads; shown once the reader has guessed. */
export const wholePackModes = (
  machine: Machine,
  whatIf: Machine | null,
  answers: Answers,
  mode: number,
  mix: PackMix,
): Shown<WholePackState> => show<WholePackState>(wholePackView, wholePackState(machine, whatIf, answers, mode, mix));

/** The rows without those of the pinned machine. */
const ownRows = (state: WholePackState): WholePackState => ({
  ...state,
  rows: state.rows.filter(({ which }) => which !== "pinned"),
});

function wordsOf(state: WholePackState): string {
  if (!state.go) return en.wait;
  const known = knownPacks(state);
  return known ? packWords(known.state, known.results) : en.soon;
}

const wholePackView: View<WholePackState> = {
  name: "whole-pack-modes",
  words: (state) => `${en.title}. ${wordsOf(state)}`,
  mount(host, bench) {
    const doc = host.ownerDocument;
    const svg = svgEl(doc, "svg", { class: "plot-drawing", role: "img" });
    const image = new Pen(svg);
    const bars = barsIn(doc, svg, `whole-pack-hatch-${++figures}`);
    const frame = el(doc, "div", { class: "whole-pack-frame" }, svg);
    const first = el(doc, "b");
    const rest = el(doc, "span");
    const bar = el(doc, "progress", { max: 1, class: "flight-progress", hidden: true, "aria-label": en.soon });
    const caption = el(doc, "figcaption", {}, el(doc, "span", { role: "status" }, first, rest));
    const behind = tableBehind(doc);
    const title = el(doc, "p", { class: "plot-title" }, en.title);
    const figure = el(
      doc,
      "figure",
      { class: "plot whole-pack", "data-plot": "whole-pack-modes" },
      title,
      frame,
      bar,
      caption,
      behind.element,
    );
    const facts = el(doc, "div");
    host.append(figure, facts);
    let state: WholePackState | null = null;
    let results: readonly FlightResult[] | null = null;
    /** The rows that the results belong to. */
    let shown: WholePackState | null = null;
    const flyer = patientFlyer();
    let putFacts: ((next: ReturnType<typeof packTable>) => void) | null = null;

    const say = (text: string) => {
      const [main, more] = firstAndRest(text);
      setText(first, main);
      setText(rest, more);
      image.set("aria-label", `${en.title}. ${text}`);
    };
    const draw = () => {
      const now = shown ?? ownRows(state!);
      image.set("height", bars.put(now, results));
      const table = packTable(now, results);
      putFacts ??= factsTable(table).view.mount(facts, bench);
      putFacts(table);
      behind.put({
        name: "whole-pack-modes",
        title: en.title,
        unit: "%",
        x: { label: "", unit: "" },
        y: { label: "", unit: "" },
        curves: [],
        words: "",
        table: { columns: table.columns, rows: table.rows.map((row) => [row.title, ...row.cells]) },
      });
    };
    const advance = (share: number) => {
      bar.hidden = false;
      bar.value = share;
    };
    const settle = (known: ReturnType<typeof knownPacks>) => {
      bar.hidden = true;
      setAttribute(figure, "data-busy", null);
      results = known?.results ?? null;
      shown = known?.state ?? null;
      draw();
      say(known ? packWords(known.state, known.results) : en.wait);
    };
    const render = () => {
      if (!state) return;
      const now = state;
      const known = now.go ? knownPacks(now) : null;
      if (known || !now.go) {
        settle(known);
        const later = known ? toFly(now, true) : [];
        // Once each: what can't be kept isn't flown again and again.
        const done = () => settle(state && knownPacks(state));
        if (later.length > 0) flyer.fly({ requests: later, done, progress: advance });
        else flyer.drop();
        return;
      }
      const begun = flyer.fly({
        requests: toFly(now, false),
        done() {
          if (state && knownPacks(state)) render();
        },
        progress(share) {
          advance(share);
          say(en.flying(`${Math.round(share * 100)}\u00a0%`));
        },
      });
      // An answer elsewhere on the page is no reason to begin anew.
      if (!begun) return;
      // The last good picture stays, dimmed, until the new one is there.
      setAttribute(figure, "data-busy", results ? "again" : "first");
      if (results) return;
      draw();
      say(en.soon);
    };
    const seen = whenSeen(figure, render);
    return (next) => {
      const begun = state === null;
      const same = state !== null && ownRows(state).rows.length === ownRows(next).rows.length;
      state = next;
      if (begun) {
        draw();
        say(next.go ? en.soon : en.wait);
      } else if (!same) results = shown = null;
      seen.wake();
    };
  },
};
