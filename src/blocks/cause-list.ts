/** What would explain a reading, the likeliest first, each with the check that tells it from the others. */
import type { Explained } from "#figures/misread";
import { el, setText, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enMisread } from "#view/words/en-misread";
import "./misread.css";

const en = enMisread.list;

/** So many causes stand with their check; the rest by name. */
const MOST = 3;
/** Causes of less weight are left out of the list. */
const LEAST = 0.02;

interface CauseLine {
  readonly key: string;
  readonly found: string;
  readonly fit: string;
  readonly weight: string;
  /** 0 to 1. */
  readonly share: number;
  readonly check: string;
}

interface CausesState {
  readonly lines: readonly CauseLine[];
  /** What stands in place of the list, or after it. */
  readonly words: string;
}

const percent = (share: number, decimals: number) => formatValue(100 * share, "percent", { decimals });

function lineOf(cause: Explained): CauseLine {
  const words = enMisread.causes[cause.key];
  const gap = percent(cause.gap, 1);
  return {
    key: cause.key,
    found: words.found(cause.sizes, formatValue(100 * cause.open, "percent", { decimals: 1, signed: true })),
    fit: cause.fits ? en.fits(gap) : en.misses(gap),
    weight: en.likely(percent(cause.weight, 0)),
    share: cause.weight,
    check: words.check,
  };
}

/** The ranked causes of a reading; null while they aren't to be told yet. */
export function causeList(causes: readonly Explained[] | null): Shown<CausesState> {
  if (causes === null) return show<CausesState>(causesView, { lines: [], words: en.wait });
  if (causes.length === 0) return show<CausesState>(causesView, { lines: [], words: en.empty });
  const fitting = causes.filter(({ fits, weight }) => fits && weight >= LEAST);
  const lines = fitting.slice(0, MOST);
  if (lines.length === 0) return show<CausesState>(causesView, { lines: [], words: en.none });
  const rest = fitting.slice(MOST).map(({ key }) => enMisread.causes[key].name);
  const words = [rest.length > 0 ? en.rest(rest.join("; ")) : "", en.one].filter(Boolean).join(" ");
  return show<CausesState>(causesView, { lines: lines.map(lineOf), words });
}

const causesView: View<CausesState> = {
  name: "cause-list",
  words: ({ lines, words }) =>
    [
      `${en.name}.`,
      ...lines.map(({ found, fit, weight, check }) => `${found} It ${fit}, ${weight}. ${en.check} ${check}`),
      words,
    ].join(" "),
  mount(host) {
    const doc = host.ownerDocument;
    const list = el(doc, "ol", { class: "causes" });
    const words = el(doc, "p", { class: "causes-words" });
    host.append(el(doc, "p", { class: "causes-name" }, en.name), list, words);
    let drawn = "";
    return (state) => {
      setText(words, state.words);
      const next = JSON.stringify(state.lines);
      if (next === drawn) return;
      drawn = next;
      list.replaceChildren(
        ...state.lines.map(({ key, found, fit, weight, share, check }) => {
          const filled = svgEl(doc, "rect", { width: `${(100 * share).toFixed(1)}%`, height: "100%" });
          const bar = svgEl(doc, "svg", { class: "cause-bar", "aria-hidden": "true" }, filled);
          return el(
            doc,
            "li",
            { "data-cause": key },
            el(doc, "p", { class: "cause-found" }, found),
            el(doc, "p", { class: "cause-fit" }, bar, ` ${weight} · ${fit}`),
            el(doc, "p", { class: "cause-check" }, el(doc, "b", {}, en.check), " ", check),
          );
        }),
      );
      list.hidden = state.lines.length === 0;
    };
  },
};
