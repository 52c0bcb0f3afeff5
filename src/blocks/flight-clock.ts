/** Time of a flight under the reader's hand: a slider for it, play and stop, and how slowly it passes. */
import { el, setAttribute, setText } from "#view/dom";
import { enFlights as en } from "#view/words/en-flights";
import { timeText } from "./flight-lanes.ts";

export interface Clock {
  readonly element: HTMLElement;
  /** The moment looked at, s. */
  readonly time: number;
  readonly playing: boolean;
  /** Sets the length of the time axis and where the flight itself ends, s. */
  set(seconds: number, end: number): void;
  show(time: number): void;
  /** Runs from the beginning, unless the reader wants no motion: then it shows the end. */
  start(): void;
  enable(on: boolean): void;
}

/** Longest a playing takes on the page at its usual pace, s: whole packs pass by in a few breaths. */
const LONG_FLIGHT = 150;

/** `moved` hears each new moment, `words` says what is seen there. */
export function clockFor(doc: Document, moved: (time: number) => void, words: (time: number) => string): Clock {
  const view = doc.defaultView;
  const range = el(doc, "input", { type: "range", min: 0, "aria-label": en.time, class: "flight-time" });
  const play = el(doc, "button", { type: "button" }, en.play);
  const shown = el(doc, "span", { class: "flight-moment" });
  const pace = el(doc, "select", { "aria-label": en.speed });
  const element = el(doc, "div", { class: "flight-clock screen-only" }, play, range, shown, pace);
  let seconds = 0;
  let end = 0;
  let time = 0;
  let frame = 0;
  let before = 0;
  let playing = false;
  let paces = "";

  const write = () => {
    range.value = String(time);
    range.setAttribute("aria-valuetext", words(time));
    setText(shown, timeText(time, seconds));
  };
  const show = (next: number) => {
    time = Math.min(end, Math.max(0, next));
    write();
    moved(time);
  };
  const stop = () => {
    playing = false;
    view?.cancelAnimationFrame(frame);
    setText(play, en.play);
  };
  const tick = (now: number) => {
    if (!playing) return;
    const passed = Math.min(0.1, (now - before) / 1000) * Number(pace.value || 1);
    before = now;
    show(time + passed);
    if (time >= end || !element.isConnected) stop();
    else frame = view!.requestAnimationFrame(tick);
  };
  const begin = () => {
    if (!view) return;
    if (time >= end - 1e-6) show(0);
    playing = true;
    setText(play, en.pause);
    before = view.performance.now();
    frame = view.requestAnimationFrame(tick);
  };
  play.addEventListener("click", () => (playing ? stop() : begin()));
  range.addEventListener("input", () => {
    stop();
    show(Number(range.value));
  });

  return {
    element,
    get time() {
      return time;
    },
    get playing() {
      return playing;
    },
    set(length, last) {
      const atEnd = time >= end;
      seconds = length;
      end = last;
      setAttribute(range, "max", String(last));
      setAttribute(range, "step", String(Number((last / 500).toPrecision(2)) || 0.01));
      const list = length > LONG_FLIGHT ? en.packPaces : en.paces;
      const key = list.map((one) => one.key).join();
      if (key !== paces) {
        paces = key;
        pace.replaceChildren(...list.map((one) => el(doc, "option", { value: one.key }, one.says)));
      }
      if (!playing) time = atEnd ? end : Math.min(time, end);
      write();
    },
    show,
    start() {
      stop();
      if (view?.matchMedia?.("(prefers-reduced-motion: reduce)").matches || !view?.requestAnimationFrame)
        return show(end);
      show(0);
      begin();
    },
    enable(on) {
      range.disabled = play.disabled = pace.disabled = !on;
    },
  };
}
