/** Narrows the glossary while somebody types: by word, by unit, by what it is about. */
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enWords as en } from "#view/words/en-words";
import type { Word } from "./word-quiz.ts";
import "./words.css";

interface WordFinderState {
  readonly words: readonly Word[];
}

/** The box in which a word of the glossary can be looked for. The entries themselves stand in the page. */
export const wordFinder = (words: readonly Word[]): Shown<WordFinderState> =>
  show<WordFinderState>(wordFinderView, { words });

const plain = (text: string): string => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();

const wordFinderView: View<WordFinderState> = {
  name: "word-finder",
  words: ({ words }) => en.list(words.map(({ name }) => name).join(", ")),
  mount(host) {
    const doc = host.ownerDocument;
    const box = el(doc, "input", { type: "search", autocomplete: "off", placeholder: en.hint });
    const count = el(doc, "span", { class: "unit", role: "status" });
    const none = el(doc, "p", { hidden: true }, en.none);
    host.append(el(doc, "label", { class: "word-finder" }, el(doc, "span", {}, en.find), box, count), none);
    let all = 0;
    const narrow = () => {
      const asked = plain(box.value).trim().split(/\s+/);
      const entries = [...doc.querySelectorAll<HTMLElement>("section.word")];
      let shown = 0;
      for (const entry of entries) {
        const text = plain(entry.textContent ?? "");
        entry.hidden = !asked.every((part) => text.includes(part));
        if (!entry.hidden) shown += 1;
      }
      setText(count, en.found(entries.length > 0 ? shown : all, entries.length || all));
      none.hidden = entries.length === 0 || shown > 0;
    };
    box.addEventListener("input", narrow);
    return ({ words }) => {
      if (all === words.length) return;
      all = words.length;
      narrow();
    };
  },
};
