/** How ranked doubts are drawn: as a question with the inputs in the order of the alphabet, then as bars. */
import { catalogue, type QuantityName } from "#figures/catalogue";
import { bandWithout, type Doubt, type Ranking } from "#figures/doubts";
import type { Figures } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import { answer } from "#view/answers";
import { el, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { en as enView } from "#view/words/en";
import { enTwoMachines } from "#view/words/en-two-machines";
import { goToInput } from "./parts-panel.ts";

const en = enTwoMachines.doubts;

/** So many inputs have a bar of their own. */
const MOST = 6;
const SHOW_ME = "show me";

export type DoubtsOf = "now" | "what-if" | "difference";

export interface DoubtsState {
  readonly now: Figures;
  readonly whatIf: Figures | null;
  readonly name: QuantityName;
  readonly mode: number;
  readonly of: DoubtsOf;
  /** What the reader said: an input's key, 'show me', or nothing yet. */
  readonly given: string | null;
  /** Keys of the inputs that count as known exactly. */
  readonly known: readonly string[];
}

export const guessId = (name: QuantityName, of: DoubtsOf): string => `doubt-${name}-${of}`;
const knownId = (key: string): string => `known-${key}`;

export const keyOf = ({ path, side }: Doubt): string => `${path} ${side}`;
export const nameOf = ({ name, side }: Doubt): string => `${name}${en.side[side]}`;

export const widthOf = ({ low, high }: { low: number; high: number }): number => high - low;
export const buys = (doubt: Doubt, ranking: Ranking): string =>
  formatValue(100 * (1 - doubt.leaves / widthOf(ranking)), "percent", { decimals: 0 });

/** The guess: the inputs that have a bar, in the order of the alphabet, so that the order gives nothing away. */
export function question(doc: Document, { name, of }: DoubtsState, ranking: Ranking): HTMLElement {
  const id = guessId(name, of);
  const options = ranking.doubts.slice(0, MOST).sort((a, b) => nameOf(a).localeCompare(nameOf(b)));
  const choices = options.map((doubt) => {
    const radio = el(doc, "input", { type: "radio", name: `guess-${id}`, value: keyOf(doubt) });
    radio.addEventListener("change", () => answer(id, keyOf(doubt)));
    return el(doc, "label", {}, radio, el(doc, "span", {}, nameOf(doubt)));
  });
  const showMe = el(doc, "button", { type: "button", class: "quiet" }, enView.guess.showMe);
  showMe.addEventListener("click", () => answer(id, SHOW_ME));
  return el(
    doc,
    "fieldset",
    { class: "guess", "data-guess": id },
    el(doc, "legend", {}, en.ask),
    el(doc, "div", { class: "guess-options" }, ...choices),
    showMe,
  );
}

export function bars(doc: Document, state: DoubtsState, ranking: Ranking): HTMLElement {
  const { doubts } = ranking;
  const shown = doubts.slice(0, MOST);
  const rest = doubts.slice(MOST);
  const reach = Math.max(...shown.map(({ low, high }) => Math.max(-low, high)));
  const { unit } = catalogue[state.name];
  const say = (value: number) => formatValue(value, unit, { uncertainty: reach / 10, signed: true });
  const head = el(
    doc,
    "tr",
    {},
    ...[en.head.input, en.head.band, en.head.buys, en.head.tick].map((words) => el(doc, "th", { scope: "col" }, words)),
  );
  const rows = shown.map((doubt) => {
    const known = state.known.includes(keyOf(doubt));
    const tick = el(doc, "input", {
      type: "checkbox",
      "aria-label": en.tick(nameOf(doubt)),
      "data-doubt": keyOf(doubt),
      checked: known,
    });
    tick.addEventListener("change", () => answer(knownId(keyOf(doubt)), tick.checked ? 1 : null));
    return el(
      doc,
      "tr",
      { class: known ? "is-known" : keyOf(doubt) === state.given ? "is-guess" : undefined },
      el(doc, "th", { scope: "row" }, inputName(doc, doubt)),
      el(
        doc,
        "td",
        { class: "doubt-bar" },
        strip(doc, doubt, reach),
        el(doc, "span", {}, `${say(doubt.low)} / ${say(doubt.high)}`),
      ),
      el(doc, "td", {}, en.narrower(buys(doubt, ranking))),
      el(doc, "td", {}, tick),
    );
  });
  if (rest.length > 0) {
    const left = bandWithout(ranking, (doubt) => rest.includes(doubt));
    const percent = formatValue(100 * (1 - widthOf(left) / widthOf(ranking)), "percent", { decimals: 0 });
    const cells = [
      el(doc, "th", { scope: "row" }, en.rest(rest.length)),
      el(doc, "td"),
      el(doc, "td", {}, en.narrower(percent)),
    ];
    rows.push(el(doc, "tr", { class: "doubts-rest" }, ...cells, el(doc, "td")));
  }
  return el(doc, "table", {}, el(doc, "thead", {}, head), el(doc, "tbody", {}, ...rows));
}

function inputName(doc: Document, doubt: Doubt): HTMLElement {
  if (doubt.path.startsWith("model.")) return el(doc, "span", { title: en.model }, nameOf(doubt));
  const link = el(doc, "button", { type: "button", class: "link", title: fieldAt(doubt.path).read }, nameOf(doubt));
  link.addEventListener("click", () => goToInput(doc, doubt.path));
  return link;
}

/** Both sides of a doubt from the middle, in per cent of the width; the longest fills its half. */
function strip(doc: Document, { low, high }: Doubt, reach: number): SVGElement {
  const at = (x: number) => `${(50 + (48 * x) / reach).toFixed(2)}%`;
  const svg = svgEl(doc, "svg", { class: "doubt-strip", "aria-hidden": "true" });
  const side = (from: number, to: number) =>
    svgEl(doc, "rect", { x: at(from), width: `${((48 * (to - from)) / reach).toFixed(2)}%`, y: "20%", height: "60%" });
  const zero = svgEl(doc, "line", { x1: "50%", x2: "50%", y1: "0", y2: "100%" });
  svg.append(side(low, 0), side(0, high), zero);
  return svg;
}
