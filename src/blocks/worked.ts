/**
 * The opened number: what a figure is, its formula, the same with the reader's numbers, the inputs it comes from, what it
 * assumes and its source. It stands after the paragraph, so that nothing covers anything. The formula is set on demand.
 */
import { catalogue } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import type { Worked } from "#figures/notation";
import { fieldName, workedOf } from "#figures/worked";
import type { UnitSystem } from "#machine/units";
import { inSentence } from "#machine/words";
import { el, setText } from "#view/dom";
import { formatBand, formatValue, inReadersUnits } from "#view/format";
import { setFormula } from "#view/formula";
import { capital } from "#view/text";
import { unitsNow } from "#view/units";
import { enBlocks as en } from "#view/words/en-blocks";
import { enPins } from "#view/words/en-pins";
import { goToInput } from "./parts-panel.ts";
import type { QuantityState } from "./quantity.ts";

interface Panel {
  readonly element: HTMLElement;
  update(state: QuantityState): void;
}

const open = new WeakMap<HTMLElement, Panel>();

/** Opens the number at `button`; the panel goes behind the block that the button stands in. */
export function openWorked(button: HTMLElement, state: QuantityState): void {
  const panel = buildPanel(button);
  open.set(button, panel);
  button.setAttribute("aria-expanded", "true");
  blockAround(button).after(panel.element);
  panel.update(state);
}

export function closeWorked(button: HTMLElement): void {
  open.get(button)?.element.remove();
  open.delete(button);
  button.setAttribute("aria-expanded", "false");
  button.focus();
}

export function refreshWorked(button: HTMLElement, state: QuantityState): void {
  open.get(button)?.update(state);
}

const blockAround = (button: HTMLElement): Element => button.closest("p, table, ul, ol, figure, .card") ?? button;

function buildPanel(button: HTMLElement): Panel {
  const doc = button.ownerDocument;
  const title = el(doc, "b");
  const close = el(doc, "button", { type: "button", class: "quiet" }, en.worked.close);
  const general = el(doc, "div", { class: "formula", tabindex: "0", role: "group", "aria-label": en.worked.formula });
  const numbers = el(doc, "div", { class: "formula", tabindex: "0", role: "group", "aria-label": en.worked.formula });
  const band = el(doc, "dd");
  const from = el(doc, "dd");
  const assumes = el(doc, "dd");
  const source = el(doc, "dd");
  const row = (name: string, value: HTMLElement) => [el(doc, "dt", {}, name), value] as const;
  const formulas = [
    ...row(en.worked.formula, el(doc, "dd", {}, general)),
    ...row(en.worked.numbers, el(doc, "dd", {}, numbers)),
  ];
  const rest = [...row(en.worked.from, from), ...row(en.worked.assumes, assumes), ...row(en.worked.source, source)];
  const then = el(doc, "dd", { class: "pinned-value" });
  const pinned = row(enPins.term, then);
  const list = el(doc, "dl", {}, ...pinned, ...formulas, ...row(en.worked.band, band), ...rest);
  const element = el(doc, "aside", { class: "worked" }, el(doc, "p", {}, title, " ", close), list);
  close.addEventListener("click", () => closeWorked(button));
  element.addEventListener("keydown", (event) => {
    if (event.key === "Escape") closeWorked(button);
  });
  const putTerms = termList(from);
  let latest: QuantityState | null = null;
  return {
    element,
    update(state) {
      const { figures, name, mode } = state;
      const gap = state.pinned ? pinnedGap(state, state.pinned) : "";
      for (const part of pinned) part.hidden = gap === "";
      setText(then, gap);
      const { title: words, unit } = catalogue[name];
      const value = figures.value(name, mode ?? 0);
      const work = workedOf(figures, name, mode ?? 0);
      setText(title, capital(words));
      for (const part of [...formulas, ...rest]) part.hidden = work === null;
      if (work) {
        void setFormula(general, work.general);
        void setFormula(numbers, numbersOf(work, typeof value === "number" ? value : null, unit));
        putTerms(work);
        setText(assumes, work.assumes);
        setText(source, work.source);
      }
      // The band takes fifty machines to work out: it follows the figure when the hand rests.
      latest = state;
      setTimeout(() => latest === state && void putBand(band, state, () => latest === state), 120);
    },
  };
}

/** How sure a figure is. What works it out is fetched when the first band is wanted; by then another may be. */
async function putBand(
  host: HTMLElement,
  { figures, name, mode }: QuantityState,
  wanted: () => boolean,
): Promise<void> {
  const { unit } = catalogue[name];
  const value = figures.value(name, mode ?? 0);
  try {
    const { bandOf } = await import("#figures/bands");
    if (!wanted()) return;
    const found = bandOf(figures, name, mode ?? 0);
    const doubts = found?.shares.slice(0, 3).map((share) => inSentence(share.name)) ?? [];
    const sure = found ? formatBand(value as number, found.uncertainty, unit) : formatValue(null, unit);
    setText(host, doubts.length > 0 ? `${sure} (${en.worked.mostly} ${doubts.join(", ")})` : sure);
  } catch {
    // Without a network it may be out of reach: better no band than an older one.
    setText(host, "");
  }
}

/** What the figure was for the pinned machine, and how far it is from there now. */
function pinnedGap({ figures, name, mode }: QuantityState, pinned: Figures): string {
  const { unit } = catalogue[name];
  const [now, then] = [figures.value(name, mode ?? 0), pinned.value(name, mode ?? 0)];
  const words = typeof then === "string" ? then : formatValue(then, unit);
  if (typeof now !== "number" || typeof then !== "number" || now === then) return words;
  return enPins.gap(words, formatValue(now - then, unit, { signed: true }));
}

/** The formula with the reader's numbers, in TeX. A unit right before an exponent would read as if it alone were raised. */
function numbersOf(work: Worked, value: number | null, unit: string): string {
  const terms = Object.entries(work.terms).map(([key, term]) => [key, texText(figuresText(term.value, term.unit))]);
  const result = figuresText(value, unit, RESULT_FIGURES);
  const shown = figuresText(value, unit, RESULT_FIGURES, unitsNow());
  const results = result === shown ? [result] : [result, shown];
  const formula = work.withNumbers(Object.fromEntries(terms), results.map(texText).join(" = "));
  return formula.replace(/(\\text\{[^{}]*\u00a0[^{}]*\})\^/g, "\\left($1\\right)^");
}

const texText = (text: string): string => `\\text{${text.replace(/([%#$&_{}\\])/g, "\\$1")}}`;

/** Figures of a term, and one less of the result, so that whoever works it out by hand finds the same. */
const TERM_FIGURES = 5;
const RESULT_FIGURES = 4;

/** A number with so many figures; what is exact stays short. In a formula metric, where alone the units fit together. */
function figuresText(value: number | null, unit: string, figures = TERM_FIGURES, units: UnitSystem = "metric"): string {
  const factor = unit === "ohm" ? 1000 : 1;
  if (value === null || value === 0) return formatValue(value, unit, { units });
  const shown = value * factor;
  const most = Math.max(0, figures - 1 - Math.floor(Math.log10(Math.abs(shown))));
  let decimals = most;
  while (decimals > 0 && Math.abs(Number(shown.toFixed(decimals - 1)) / shown - 1) < 1e-9) decimals--;
  return formatValue(value, unit, { decimals, units });
}

/** The terms in a row; each stays where it is while the same ones are shown, so that a link keeps the reader's place. */
function termList(host: HTMLElement): (work: Worked) => void {
  const doc = host.ownerDocument;
  let shown = "";
  let texts: HTMLElement[] = [];
  return ({ terms }) => {
    const all = Object.values(terms);
    const key = all.map(({ name, path }) => `${name} ${path}`).join(";");
    if (key !== shown) {
      shown = key;
      texts = all.map((term) => (term.path ? inputLink(doc, term.path) : el(doc, "span")));
      host.replaceChildren(...texts.map((text, i) => el(doc, "span", {}, i === 0 ? "" : " · ", text)));
    }
    all.forEach((term, i) => {
      const text = texts[i];
      if (text)
        setText(
          text,
          `${inReadersUnits(term.name)}: ${figuresText(term.value, term.unit, RESULT_FIGURES, unitsNow())}`,
        );
    });
  };
}

/** A term that the reader can change leads to its input. */
function inputLink(doc: Document, path: string): HTMLElement {
  const link = el(doc, "button", { type: "button", class: "link", title: fieldName(path) });
  link.addEventListener("click", () => goToInput(doc, path));
  return link;
}
