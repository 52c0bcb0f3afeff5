/** What stands against a machine or one of its modes, in words, each with its stable name. */
import type { Figures } from "#figures/figures";
import type { Warning } from "#figures/warnings";
import { el, setAttribute, setHidden, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

interface WarningsState {
  readonly warnings: readonly Warning[];
}

/** The warnings of a mode and of the whole machine; without a mode, all of them. */
export function warnings(figures: Figures, mode?: number): Shown<WarningsState> {
  const mine = figures.warnings.filter(
    (warning) => mode === undefined || warning.mode === null || warning.mode === mode,
  );
  return show<WarningsState>(warningsView, { warnings: mine });
}

/** A list of warnings, hidden while there are none. Its items stay where they are when only their words change. */
export function warningList(doc: Document): { element: HTMLElement; put(all: readonly Warning[]): void } {
  const element = el(doc, "ul");
  const items: HTMLElement[] = [];
  return {
    element,
    put(all) {
      setHidden(element, all.length === 0);
      all.forEach(({ name, mode, words }, i) => {
        let item = items[i];
        if (!item) {
          item = el(doc, "li");
          items.push(item);
          element.append(item);
        }
        setAttribute(item, "data-warning", name);
        setAttribute(item, "data-mode", mode === null ? null : String(mode));
        setText(item, words);
      });
      while (items.length > all.length) items.pop()?.remove();
    },
  };
}

const warningsView: View<WarningsState> = {
  name: "warnings",
  words: ({ warnings: all }) => (all.length > 0 ? all.map((warning) => warning.words).join(" ") : en.warnings.none),
  mount(host) {
    const doc = host.ownerDocument;
    const list = warningList(doc);
    const none = el(doc, "p", { class: "all-well" }, en.warnings.none);
    host.append(el(doc, "div", { class: "warnings" }, list.element, none));
    return ({ warnings: all }) => {
      setHidden(none, all.length > 0);
      list.put(all);
    };
  },
};
