/** The state of the learned reference, in a paragraph with its figures. */
import type { Figures } from "#figures/figures";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { fillOutput, quantityText } from "./quantity.ts";

interface ReferenceWordsState {
  readonly figures: Figures;
}

/** Says whether the reference is fresh, stale or only expected, and what that means now. */
export function referenceState(figures: Figures): Shown<ReferenceWordsState> {
  return show<ReferenceWordsState>(referenceView, { figures });
}

function sentence({ figures }: ReferenceWordsState): string {
  if (figures.number("learned-motor-speed") === null) return en.modes.noReference;
  const state = figures.value("reference-state");
  const motor = quantityText({ figures, name: "learned-motor-speed" });
  const head = quantityText({ figures, name: "learned-head-speed" });
  const stale = figures.warnings.find((warning) => warning.name === "stale-reference");
  if (state === "stale" && stale) return `${stale.words} ${en.learned.means(motor, head)}`;
  return `${state === "fresh" ? en.learned.fresh : en.learned.expected} ${en.learned.means(motor, head)}`;
}

const referenceView: View<ReferenceWordsState> = {
  name: "reference-state",
  words: sentence,
  mount(host) {
    const doc = host.ownerDocument;
    const state = el(doc, "output", { class: "stamp" });
    const words = el(doc, "span");
    const box = el(doc, "p", { class: "reference-state" }, state, " ", words);
    host.append(box);
    return (next) => {
      const value = next.figures.value("reference-state");
      fillOutput(state, { figures: next.figures, name: "reference-state", mode: null, machine: null });
      box.dataset.state = String(value);
      if (value === "stale") box.dataset.warning = "stale-reference";
      else delete box.dataset.warning;
      setText(words, sentence(next));
    };
  },
};
