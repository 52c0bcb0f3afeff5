/** Where the reader types the head speeds that were read, mode by mode. They belong to the page and to no machine. */
import type { Figures } from "#figures/figures";
import type { Reading } from "#figures/misread";
import { modeName } from "#figures/mode-name";
import { noticeAt } from "#inputs/notice";
import { readFigure } from "#inputs/typed";
import { type Answers, answer } from "#view/answers";
import { el, setAttribute, setText } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enMisread } from "#view/words/en-misread";
import "./misread.css";

const en = enMisread.inputs;
const MOST = 20_000;

interface InputsState {
  readonly rows: readonly {
    readonly mode: number;
    readonly name: string;
    readonly asked: string;
    readonly read: number | null;
  }[];
}

const idOf = (mode: number): string => `reading-${mode}`;

function readIn(answers: Answers, mode: number): number | null {
  const read = answers[idOf(mode)];
  return typeof read === "number" && read > 0 && read <= MOST ? read : null;
}

/** What the reader has typed so far, with how it was read. */
export function readingTyped(
  figures: Figures,
  answers: Answers,
  how: Pick<Reading, "instrument" | "load" | "sure">,
): Reading {
  const rows = figures.machine.modes.flatMap((_, mode) => {
    const measured = readIn(answers, mode);
    return measured === null ? [] : [{ mode, measured }];
  });
  return { ...how, rows };
}

/** The table to type into. */
export function readingsInput(figures: Figures, answers: Answers): Shown<InputsState> {
  const rows = figures.machine.modes.map(({ headRpm }, mode) => ({
    mode,
    name: modeName(figures.machine, mode),
    asked: formatValue(headRpm, "rpm"),
    read: readIn(answers, mode),
  }));
  return show<InputsState>(inputsView, { rows });
}

const inputsView: View<InputsState> = {
  name: "readings-input",
  words: () => en.words,
  mount(host) {
    const doc = host.ownerDocument;
    const heading = (words: string) => el(doc, "th", { scope: "col" }, words);
    const head = el(doc, "tr", {}, heading(en.mode), heading(en.asked), heading(en.read));
    const body = el(doc, "tbody");
    const clear = el(doc, "button", { type: "button", class: "quiet" }, en.clear);
    const table = el(
      doc,
      "table",
      { class: "readings" },
      el(doc, "caption", {}, en.title),
      el(doc, "thead", {}, head),
      body,
    );
    host.append(table, clear);
    let lines: ReturnType<typeof lineFor>[] = [];
    let count = 0;
    clear.addEventListener("click", () => {
      for (let mode = 0; mode < count; mode++) answer(idOf(mode), null);
    });
    return ({ rows }) => {
      if (rows.length !== count) {
        count = rows.length;
        lines = rows.map(({ mode }) => lineFor(doc, mode));
        body.replaceChildren(...lines.map(({ element }) => element));
      }
      clear.hidden = rows.every(({ read }) => read === null);
      rows.forEach((row, i) => void lines[i]?.put(row));
    };
  },
};

function lineFor(doc: Document, mode: number) {
  const name = el(doc, "th", { scope: "row" });
  const asked = el(doc, "td");
  const box = el(doc, "input", { type: "text", inputmode: "numeric", class: "exact", autocomplete: "off" });
  const cell = el(doc, "td", { class: "input" }, box);
  const notice = noticeAt(cell, box);
  let last: number | null = null;
  box.addEventListener("change", () => {
    const text = box.value.trim();
    if (text === "") {
      notice.say(null);
      answer(idOf(mode), null);
      return;
    }
    const typed = readFigure(text);
    if (typed === null || typed < 1 || typed > MOST) return notice.say(en.bad(text));
    notice.say(null);
    answer(idOf(mode), typed);
  });
  return {
    element: el(doc, "tr", {}, name, asked, cell),
    put(row: InputsState["rows"][number]) {
      setText(name, row.name);
      setText(asked, row.asked);
      setAttribute(box, "aria-label", en.label(row.name));
      // What is being typed stays; what was kept comes back when it changes from elsewhere.
      if (row.read !== last || box.value === "") box.value = row.read === null ? "" : String(row.read);
      last = row.read;
    },
  };
}
