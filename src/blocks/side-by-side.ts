/**
 * Figures of the two machines side by side, each with its band, and whether they differ by more than their doubt. The
 * figures answer in the same frame; bands take some fifty machines each and follow when the hand rests.
 */
import { catalogue, type QuantityName } from "#figures/catalogue";
import { doubtsBetween, doubtsOf, type Ranking, type Verdict, verdictOf } from "#figures/doubts";
import type { Figures } from "#figures/figures";
import { el, Pen, setText, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enTwoMachines } from "#view/words/en-two-machines";
import { atRest } from "./at-rest.ts";
import { fillOutput, quantityText } from "./quantity.ts";
import "./two-machines.css";

const en = enTwoMachines.compare;

interface SideState {
  readonly now: Figures;
  readonly whatIf: Figures | null;
  readonly names: readonly QuantityName[];
  readonly mode: number;
}

/** Some figures of both machines with bands and verdicts. */
export const sideBySide = (
  now: Figures,
  whatIf: Figures | null,
  names: readonly QuantityName[],
  mode = 0,
): Shown<SideState> => show<SideState>(sideView, { now, whatIf, names, mode });

/** What is known of a row once its bands are worked out. */
interface Settled {
  readonly now: Ranking | null;
  readonly whatIf: Ranking | null;
  readonly between: Ranking | null;
  readonly verdict: Verdict | null;
}

export function settle({ now, whatIf, mode }: SideState, name: QuantityName): Settled {
  const between = whatIf && doubtsBetween(now, whatIf, name, mode);
  return {
    now: doubtsOf(now, name, mode),
    whatIf: whatIf && doubtsOf(whatIf, name, mode, "what-if"),
    between,
    verdict: between && verdictOf(between, now.number(name, mode) ?? 0),
  };
}

const uncertaintyOf = ({ low, high }: Ranking): number => (high - low) / 4;

/** A difference in words, rounded to what it is worth. */
export function verdictWords({ between, verdict }: Settled, unit: string): string {
  if (!between || !verdict) return en.noDoubt;
  if (verdict === "same") return en.same;
  const uncertainty = uncertaintyOf(between);
  // What is nothing beside its own doubt needs no figure.
  if (verdict === "too close" && Math.abs(between.value) < 0.05 * uncertainty) return en.even;
  if (verdict === "too close") return en.close(formatValue(between.value, unit, { uncertainty, signed: true }));
  return en.clear(formatValue(Math.abs(between.value), unit, { uncertainty }), verdict);
}

/** The ends of a band, cut where its width says. */
export const rangeWords = (ranking: Ranking, unit: string): string => {
  const uncertainty = uncertaintyOf(ranking);
  const [low, high] = [ranking.low, ranking.high].map((end) => formatValue(end, unit, { uncertainty }));
  return ranking.low === ranking.high ? "" : en.range((low ?? "").replace(/\u00a0\D*$/, ""), high ?? "");
};

function summary(rows: readonly { readonly name: QuantityName; readonly settled: Settled }[]): string {
  const of = (...verdicts: Verdict[]) =>
    rows.filter(({ settled: { verdict } }) => verdict && verdicts.includes(verdict));
  const clear = of("lower", "higher").map(({ name }) => catalogue[name].title);
  return en.summary(clear.join("; "), of("too close").length, of("same").length);
}

interface Row {
  /** Writes what is known in the frame. */
  put(state: SideState): void;
  /** Draws the bands. */
  settle(settled: Settled): void;
}

const sideView: View<SideState> = {
  name: "side-by-side",
  words: ({ now, whatIf, names, mode }) =>
    `${en.title}. ${names
      .map((name) =>
        en.line(
          catalogue[name].title,
          quantityText({ figures: now, name, mode }),
          whatIf && quantityText({ figures: whatIf, name, mode }),
        ),
      )
      .join(" ")}`,
  mount(host) {
    const doc = host.ownerDocument;
    const body = el(doc, "tbody");
    const column = (words: string, name?: string) => el(doc, "th", { scope: "col", class: name }, words);
    const head = el(
      doc,
      "tr",
      {},
      el(doc, "td"),
      column(en.now, "of-now"),
      column(en.whatIf, "of-what-if"),
      column(en.bars),
      column(en.comes, "of-what-if"),
    );
    const table = el(
      doc,
      "table",
      { class: "side" },
      el(doc, "caption", {}, en.title),
      el(doc, "thead", {}, head),
      body,
    );
    const words = el(doc, "p", { class: "side-words", role: "status" });
    host.append(table, words);
    const later = atRest(host);
    let rows: Row[] = [];
    let built = "";
    let state: SideState | null = null;
    return (next) => {
      const { names, mode, now, whatIf } = next;
      if (names.join() !== built) {
        built = names.join();
        const made = names.map((name) => rowFor(doc, name));
        rows = made.map(({ row }) => row);
        body.replaceChildren(...made.map(({ element }) => element));
      } else if (state && state.now === now && state.whatIf === whatIf && state.mode === mode) return;
      state = next;
      table.classList.toggle("is-alone", whatIf === null);
      table.classList.add("is-moving");
      for (const row of rows) row.put(next);
      const known: { name: QuantityName; settled: Settled }[] = [];
      later([
        ...names.map((name, i) => () => {
          const settled = settle(next, name);
          known.push({ name, settled });
          rows[i]?.settle(settled);
        }),
        () => {
          table.classList.remove("is-moving");
          setText(words, whatIf ? summary(known) : en.alone);
        },
      ]);
    };
  },
};

/** One figure: both numbers, both bars on a scale of their own, and what the difference comes to. */
function rowFor(doc: Document, name: QuantityName): { element: HTMLElement; row: Row } {
  const { unit, title } = catalogue[name];
  const cell = (which: "now" | "what-if") => {
    const output = el(doc, "output", { class: which === "now" ? "ink" : "ink of-what-if" });
    const range = el(doc, "span", { class: "side-range" });
    return { output, range, element: el(doc, "td", { class: `side-${which}` }, output, " ", range) };
  };
  const [now, whatIf] = [cell("now"), cell("what-if")];
  const strip = svgEl(doc, "svg", { class: "side-strip", "aria-hidden": "true" });
  const marks = [mark(doc, strip, "now", "33%"), mark(doc, strip, "what-if", "70%")];
  const verdict = el(doc, "td", { class: "side-verdict of-what-if" });
  const element = el(
    doc,
    "tr",
    { "data-row": name },
    el(doc, "th", { scope: "row" }, title),
    now.element,
    whatIf.element,
    el(doc, "td", { class: "side-bars" }, strip),
    verdict,
  );
  let span: readonly [number, number] | null = null;
  let values: readonly (number | null)[] = [];
  const places = (ends: readonly (Ranking | null)[]) => {
    for (const [i, each] of marks.entries()) each(values[i] ?? null, ends[i] ?? null, span);
  };
  const row: Row = {
    put(state) {
      const { mode } = state;
      const perMode = catalogue[name].perMode ? mode : null;
      fillOutput(now.output, { figures: state.now, name, mode: perMode, machine: "now" });
      if (state.whatIf) fillOutput(whatIf.output, { figures: state.whatIf, name, mode: perMode, machine: "what-if" });
      values = [state.now.number(name, mode), state.whatIf?.number(name, mode) ?? null];
      // A scale that still holds both points stays; bars come back when they are true again.
      if (span && values.some((value) => value !== null && (value < span![0] || value > span![1]))) span = null;
      places([]);
    },
    settle(settled) {
      const rankings = [settled.now, settled.whatIf];
      const all = rankings.flatMap((ranking) => (ranking ? [ranking.low, ranking.high] : []));
      const [low, high] = [Math.min(...all), Math.max(...all)];
      const room = 0.06 * (high - low) || 1;
      span = all.length > 0 ? [low - room, high + room] : null;
      places(rankings);
      setText(now.range, settled.now ? rangeWords(settled.now, unit) : "");
      setText(whatIf.range, settled.whatIf ? rangeWords(settled.whatIf, unit) : "");
      setText(verdict, verdictWords(settled, unit));
      element.dataset.verdict = settled.verdict?.replace(" ", "-") ?? "";
    },
  };
  return { element, row };
}

type Mark = (value: number | null, ends: Ranking | null, span: readonly [number, number] | null) => void;

/** A point with its bar, placed in per cent of whatever width the page gives. */
function mark(doc: Document, strip: SVGElement, which: string, y: string): Mark {
  const bar = new Pen(svgEl(doc, "line", { class: `bar ${which}`, y1: y, y2: y }));
  const point = new Pen(svgEl(doc, "circle", { class: `point ${which}`, cy: y, r: 4 }));
  strip.append(bar.element, point.element);
  return (value, ends, span) => {
    const at = (x: number) => (span ? `${((100 * (x - span[0])) / (span[1] - span[0])).toFixed(2)}%` : "0%");
    point.show(value !== null && span !== null);
    bar.show(ends !== null && span !== null);
    if (value === null || !span) return;
    point.set("cx", at(value));
    if (!ends) return;
    bar.set("x1", at(ends.low));
    bar.set("x2", at(ends.high));
  };
}
