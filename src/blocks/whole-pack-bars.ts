/** A bar for each mode, from a full pack to an empty one: inked as far as the mode is held, the reader's guess in pencil. */
import type { FlightResult } from "#flights/flight";
import { packOutcome, reservePercent } from "#flights/whole-pack";
import { Pen, svgEl } from "#view/dom";
import { enWholePack } from "#view/words/en-whole-pack";
import { fullName, rowText, type WholePackState } from "./whole-pack-state.ts";

const en = enWholePack.modes;

/** How the marks of a row are inked. */
const inks = { now: "now", "what-if": "what-if", pinned: "pinned-now" } as const;

/** Places from the top, px: the scale, then a band for each bar. */
const TOP = 30;
const BAND = 50;
const FOOT = 10;
/** Strokes of the hatch are so far apart, px. */
const APART = 8;

/** Height of the drawing, px. */
const heightFor = (rows: number): number => TOP + rows * BAND + FOOT;

/** Where a charge (%) lies: full at the left, as a share of the width. */
const place = (percent: number): string => `${(100 - Math.min(100, Math.max(0, percent))).toFixed(2)}%`;

interface Band {
  readonly name: Pen;
  readonly text: Pen;
  readonly rail: Pen;
  readonly ink: Pen;
  readonly core: Pen;
  readonly end: Pen;
}

/** Draws into an SVG that is as wide as its text is set: places are shares of the width, so letters keep their size. */
export function barsIn(
  doc: Document,
  svg: SVGElement,
  id: string,
): { put(state: WholePackState, results: readonly FlightResult[] | null): number } {
  const hatch = svgEl(
    doc,
    "pattern",
    {
      id,
      width: APART,
      height: APART,
      patternUnits: "userSpaceOnUse",
      patternTransform: "rotate(45)",
      class: "plot-hatch",
    },
    svgEl(doc, "line", { x1: 0, y1: 0, x2: 0, y2: APART }),
  );
  const land = new Pen(
    svgEl(doc, "rect", { x: place(reservePercent), width: `${reservePercent}%`, y: TOP - 8, fill: `url(#${id})` }),
  );
  const edge = new Pen(
    svgEl(doc, "line", { x1: place(reservePercent), x2: place(reservePercent), y1: TOP - 8, class: "edge" }),
  );
  const text = (words: string, x: string, anchor: string, kind = "") =>
    svgEl(doc, "text", { x, y: 14, "text-anchor": anchor, ...(kind === "" ? {} : { class: kind }) }, words);
  const scale = svgEl(
    doc,
    "g",
    { class: "whole-pack-scale" },
    text(`100\u00a0% ${en.full}`, "0", "start"),
    text("50\u00a0%", "50%", "middle"),
    text(en.land, "100%", "end", "words limit"),
  );
  const guess = new Pen(svgEl(doc, "line", { class: "ink pencil whole-pack-guess" }));
  const guessWords = new Pen(svgEl(doc, "text", { class: "words pencil" }));
  guessWords.text(en.guess);
  const zones = svgEl(doc, "g", { class: "plot-zones" }, land.element, edge.element);
  const over = svgEl(doc, "g", {}, guess.element, guessWords.element);
  svg.append(svgEl(doc, "defs", {}, hatch), zones, scale, over);
  const bands: Band[] = [];
  const bandAt = (i: number): Band => {
    let made = bands[i];
    if (!made) {
      const pen = (tag: "text" | "line" | "circle") => new Pen(svgEl(doc, tag, {}));
      made = {
        name: pen("text"),
        text: pen("text"),
        rail: pen("line"),
        ink: pen("line"),
        core: pen("line"),
        end: pen("circle"),
      };
      for (const each of [made.rail, made.ink, made.core, made.end, made.name, made.text])
        svg.insertBefore(each.element, over);
      bands[i] = made;
    }
    return made;
  };
  const line = (pen: Pen, from: number, to: number, y: number, kind: string) => {
    pen.set("x1", place(from));
    pen.set("x2", place(to));
    pen.set("y1", y);
    pen.set("y2", y);
    pen.set("class", kind);
  };

  return {
    put(state, results) {
      const { rows, asked, guess: said } = state;
      const bottom = TOP + rows.length * BAND;
      land.set("height", bottom - TOP + 8);
      edge.set("y2", bottom);
      for (let i = rows.length; i < bands.length; i++) {
        for (const pen of Object.values(bands[i]!) as Pen[]) pen.show(false);
      }
      for (const [i, row] of rows.entries()) {
        const band = bandAt(i);
        for (const pen of Object.values(band) as Pen[]) pen.show(true);
        const y = TOP + i * BAND + 34;
        const ink = inks[row.which];
        const result = results?.[i];
        const outcome = packOutcome(result);
        const last = outcome?.lost?.percent ?? outcome?.endPercent ?? 0;
        band.name.set("x", "0");
        band.name.set("y", y - 13);
        band.name.set("class", `words ${ink}`);
        band.name.text(fullName(row));
        line(band.rail, 100, 0, y, "whole-pack-rail");
        line(band.ink, 100, last, y, `ink ${ink} whole-pack-ink`);
        line(band.core, 100, last, y, "core");
        band.ink.show(outcome !== null);
        band.core.show(outcome !== null && row.which === "what-if");
        band.end.show(outcome !== null);
        band.end.set("cx", place(last));
        band.end.set("cy", y);
        band.end.set("r", 5.5);
        band.end.set("class", `whole-pack-end ${ink}`);
        // The words stand above the bar's end, on whichever side there is room.
        const right = last > 55;
        band.text.set("x", place(last));
        band.text.set("dx", right ? 0 : 4);
        band.text.set("y", y - 13);
        band.text.set("text-anchor", right ? "start" : "end");
        band.text.set("class", `words ${ink}`);
        band.text.text(results ? (result?.ok ? rowText(outcome) : en.none) : "");
      }
      const at = rows.findIndex(({ mode, which }) => which === "now" && mode === asked);
      const seen = said !== null && at >= 0;
      guess.show(seen);
      guessWords.show(seen);
      if (seen) {
        const y = TOP + at * BAND + 34;
        guess.set("x1", place(said));
        guess.set("x2", place(said));
        guess.set("y1", y - 9);
        guess.set("y2", y + 12);
        guessWords.set("x", place(said));
        guessWords.set("dx", said > 50 ? 6 : -6);
        guessWords.set("y", y + 15);
        guessWords.set("text-anchor", said > 50 ? "start" : "end");
      }
      return heightFor(rows.length);
    },
  };
}
