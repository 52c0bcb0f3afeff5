/**
 * A question put to a whole room: what people say is typed, stands as pencil dots before the answer, and then the answer
 * is drawn on it in ink. Fetched when somebody asks for it; a lone reader never meets it.
 */

import { createBench } from "#machine/bench";
import { plotView } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { enRoom as en } from "#view/words/en-room-guesses";
import { type Asked, askedOn } from "./asked.ts";
import { type ChooseState, type EstimateState, SHOWN } from "./guess.ts";
import { readCount, readGuesses } from "./room-guesses-read.ts";
import { choiceWords, countsOf, roomPlot } from "./room-guesses-words.ts";
import "./room-guesses.css";

const KEY = "workbook.room.1";

/** What a room said, by question: for numbers the line that was typed, for choices the counts as typed. Kept for the visit. */
type Said = Record<string, string | Record<string, string>>;

function recall(): Said {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "{}");
    return typeof kept === "object" && kept !== null && !Array.isArray(kept) ? (kept as Said) : {};
  } catch {
    return {};
  }
}

const said: Said = recall();

function keep(id: string, what: Said[string]): void {
  said[id] = what;
  try {
    sessionStorage.setItem(KEY, JSON.stringify(said));
  } catch {
    // Storage may be forbidden: what the room said then lasts as long as the page.
  }
}

const panels = new WeakMap<HTMLElement, HTMLElement>();

/** Puts one question to the room, or takes it back. */
export function askRoomAt(asked: Asked, on = true): void {
  const { element } = asked;
  const open = panels.get(element);
  if (on === (open !== undefined)) return;
  element.classList.toggle("is-room", on);
  if (open) {
    open.remove();
    panels.delete(element);
    asked.follow = null;
    return;
  }
  const panel = panelFor(asked);
  panels.set(element, panel);
  element.querySelector("legend")?.after(panel);
  asked.follow?.();
}

/** Puts all questions of a page to the room, or takes them back; gives the first. */
export function askRoom(doc: Document, on = true): HTMLElement | null {
  const all = askedOn(doc);
  for (const asked of all) askRoomAt(asked, on);
  return all[0]?.element ?? null;
}

function panelFor(asked: Asked): HTMLElement {
  const { element } = asked;
  const doc = element.ownerDocument;
  const state = () => asked.state as ChooseState | EstimateState;
  const panel = el(doc, "div", { class: "room" });
  const reveal = el(doc, "button", { type: "button" });
  const stop = el(doc, "button", { type: "button", class: "quiet" }, en.stop);
  reveal.addEventListener("click", () => answer(state().id, isShown(state()) ? null : SHOWN));
  stop.addEventListener("click", () => {
    askRoomAt(asked, false);
    element.querySelector<HTMLElement>("input:enabled, button:not([hidden])")?.focus();
  });
  const show = "options" in state() ? choices(panel, asked) : numbers(panel, asked);
  panel.append(el(doc, "div", { class: "room-does" }, reveal, stop));
  panel.dataset.room = state().id;
  asked.follow = () => {
    setText(reveal, isShown(state()) ? en.hide : en.show);
    show();
  };
  return panel;
}

const isShown = (state: ChooseState | EstimateState): boolean =>
  state.given !== null || ("skipped" in state && state.skipped);

/** Whether the page has answered a question. */
export const isAnswered = ({ state }: Asked): boolean => isShown(state as ChooseState | EstimateState);

/** Lets the page answer. */
export const revealed = ({ state }: Asked): void => answer((state as ChooseState | EstimateState).id, SHOWN);

/** A line to type guesses into, and their dots. Gives the function that brings it to the question's state. */
function numbers(panel: HTMLElement, asked: Asked): () => void {
  const doc = panel.ownerDocument;
  const state = () => asked.state as EstimateState;
  const line = el(doc, "textarea", { rows: 1, class: "room-line", autocomplete: "off", spellcheck: "false" });
  const left = el(doc, "p", { class: "room-left", role: "status" });
  const place = el(doc, "div", { class: "room-plot" });
  panel.append(el(doc, "label", { class: "room-label" }, el(doc, "span", {}, en.label), line), left, place);
  const before = said[state().id];
  if (typeof before === "string") line.value = before;
  // The plot changes nothing of the machine: a bench of its own is enough for it.
  const draw: (state: PlotState) => void = plotView.mount(place, createBench());
  const show = () => {
    const guesses = readGuesses(line.value, state());
    setText(left, guesses.left.length > 0 ? en.left(guesses.left.slice(0, 6).join(", ")) : "");
    left.hidden = guesses.left.length === 0;
    draw(roomPlot(state(), guesses.values, isShown(state())));
  };
  line.addEventListener("input", () => {
    keep(state().id, line.value);
    show();
  });
  return show;
}

/** A count of hands for each choice, with as many pencil dots. */
function choices(panel: HTMLElement, asked: Asked): () => void {
  const doc = panel.ownerDocument;
  const state = () => asked.state as ChooseState;
  const { id, options } = state();
  const before = said[id];
  const typed: Record<string, string> = typeof before === "object" ? { ...before } : {};
  const words = el(doc, "p", { class: "room-words", role: "status" });
  const rows = options.map(({ key, says }) => {
    const input = el(doc, "input", { type: "text", inputmode: "numeric", class: "exact", autocomplete: "off" });
    input.setAttribute("aria-label", en.count(says));
    input.value = typeof typed[key] === "string" ? typed[key] : "";
    const plus = el(doc, "button", { type: "button", class: "room-plus", "aria-label": en.plus(says) }, "+");
    const dots = el(doc, "span", { class: "room-dots", "aria-hidden": "true" });
    const tick = el(doc, "span", { class: "room-right", hidden: true }, en.right);
    const text = el(doc, "span", { class: "room-says" }, el(doc, "span", {}, says), " ", tick);
    const row = el(doc, "li", {}, text, el(doc, "span", { class: "room-count" }, input, plus), dots);
    const take = () => {
      const count = readCount(input.value);
      if (count === null) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
      typed[key] = input.value;
      keep(id, { ...typed });
      show();
    };
    input.addEventListener("input", take);
    plus.addEventListener("click", () => {
      input.value = String((readCount(input.value) ?? 0) + 1);
      take();
    });
    return { key, input, dots, row, tick };
  });
  panel.append(el(doc, "ul", { class: "room-choices" }, ...rows.map(({ row }) => row)), words);
  const show = () => {
    const shown = isShown(state());
    const counts = countsOf(state(), typed);
    for (const { key, input, dots, row, tick } of rows) {
      const count = readCount(input.value) ?? 0;
      while (dots.childElementCount > count) dots.lastElementChild?.remove();
      while (dots.childElementCount < count) dots.append(el(doc, "i"));
      row.classList.toggle("is-right", shown && key === state().right);
      tick.hidden = !(shown && key === state().right);
    }
    const odd = rows.find(({ input }) => readCount(input.value) === null);
    setText(words, odd ? en.badCount(odd.input.value) : choiceWords(state(), counts, shown));
  };
  return show;
}
