/** What stands against a machine or one of its modes, in words, each with its stable name. */
import type { Figures } from "#figures/figures";
import type { Warning } from "#figures/warnings";
import { el } from "#view/dom";
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

/** An element for one warning. */
export function warningItem(doc: Document, warning: Warning): HTMLElement {
  const item = el(doc, "li", { "data-warning": warning.name, "data-mode": warning.mode ?? undefined });
  item.textContent = warning.words;
  return item;
}

const warningsView: View<WarningsState> = {
  name: "warnings",
  words: ({ warnings: all }) => (all.length > 0 ? all.map((warning) => warning.words).join(" ") : en.warnings.none),
  mount(host) {
    const doc = host.ownerDocument;
    const list = el(doc, "ul");
    const none = el(doc, "p", { class: "all-well" }, en.warnings.none);
    const box = el(doc, "div", { class: "warnings" }, list, none);
    host.append(box);
    const items: HTMLElement[] = [];
    return ({ warnings: all }) => {
      none.hidden = all.length > 0;
      list.hidden = all.length === 0;
      all.forEach((warning, i) => {
        const item = items[i];
        if (!item) {
          const made = warningItem(doc, warning);
          items.push(made);
          list.append(made);
          return;
        }
        if (item.textContent !== warning.words) item.textContent = warning.words;
        item.dataset["warning"] = warning.name;
        item.hidden = false;
      });
      while (items.length > all.length) items.pop()?.remove();
    };
  },
};
