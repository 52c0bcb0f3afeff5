/** What stands against a machine or one of its modes, in words, each with its stable name. */
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import type { Warning, WarningName } from "#figures/warning";
import type { Machine } from "#machine/machine";
import { el, setAttribute, setHidden, setText } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

interface WarningsState {
  readonly figures: Figures;
  /** The mode that is looked at; null for all of them. */
  readonly mode: number | null;
}

/** The warnings of a mode and of the whole machine; without a mode, all of them. */
export const warnings = (figures: Figures, mode: number | null = null): Shown<WarningsState> =>
  show(warningsView, { figures, mode });

/** They are worked out when they are drawn: on a slow machine not in every frame. */
const mine = ({ figures, mode: wanted }: WarningsState): readonly Warning[] =>
  figures.warnings.filter(({ mode }) => wanted === null || mode === null || mode === wanted);

/** Warnings that say the same at length for each mode; others tell each mode what would help it. */
const briefly: ReadonlySet<WarningName> = new Set(["tail-thrust-short", "tail-speed-high", "tip-mach-high"]);

/** A warning in a list: what has been explained for one mode is only counted up for the next. */
function wordsIn(all: readonly Warning[], place: number, machine: Machine): string {
  const { name, mode, value, limit, unit, words } = all[place]!;
  const known = all.findIndex((each) => each.name === name) < place;
  if (!known || mode === null || value === null || !briefly.has(name)) return words;
  return en.warnings.also(modeName(machine, mode), formatValue(value, unit), formatValue(limit, unit));
}

/** A list of warnings, hidden while there are none. Its items stay where they are when only their words change. */
export function warningList(doc: Document): {
  element: HTMLElement;
  put(all: readonly Warning[], machine: Machine): void;
} {
  const element = el(doc, "ul");
  const items: HTMLElement[] = [];
  return {
    element,
    put(all, machine) {
      setHidden(element, all.length === 0);
      all.forEach(({ name, mode }, i) => {
        let item = items[i];
        if (!item) {
          item = el(doc, "li");
          items.push(item);
          element.append(item);
        }
        setAttribute(item, "data-warning", name);
        setAttribute(item, "data-mode", mode === null ? null : String(mode));
        setText(item, wordsIn(all, i, machine));
      });
      while (items.length > all.length) items.pop()?.remove();
    },
  };
}

const warningsView: View<WarningsState> = {
  name: "warnings",
  patient: true,
  words: (state) =>
    mine(state)
      .map(({ words }) => words)
      .join(" ") || en.warnings.none,
  mount(host) {
    const doc = host.ownerDocument;
    const list = warningList(doc);
    const none = el(doc, "p", { class: "all-well" }, en.warnings.none);
    host.append(el(doc, "div", { class: "warnings" }, list.element, none));
    return (state) => {
      const all = mine(state);
      setHidden(none, all.length > 0);
      list.put(all, state.figures.machine);
    };
  },
};
