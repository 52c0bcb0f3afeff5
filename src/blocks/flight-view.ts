/** A flight on a page: lanes against time, the reader's hand before it, the clock, and the words after. */
import type { FlightResult } from "#flights/flight";
import { laneAt } from "#flights/lanes";
import type { Bench } from "#machine/bench";
import type { Layout } from "#plots/layout";
import type { PlotState } from "#plots/state";
import { tableBehind } from "#plots/table";
import { answer } from "#view/answers";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import type { View } from "#view/shown";
import { enFlights as en } from "#view/words/en-flights";
import { patientFlyer } from "#worker/patient";
import { workAhead } from "./flight-ahead.ts";
import { buttonsFor } from "./flight-buttons.ts";
import { clockFor } from "./flight-clock.ts";
import { cursorOn, valueText } from "./flight-cursor.ts";
import { written } from "./flight-curve.ts";
import { lanesIn } from "./flight-drawn.ts";
import { laneStates, timeText } from "./flight-lanes.ts";
import { FIRST_WIDTH, heightOf, type LaneMemory, laneLayouts } from "./flight-layout.ts";
import { handOn } from "./flight-pencil.ts";
import {
  drawnBy,
  endOf,
  type FlightState,
  type Flights,
  hasDashed,
  inOne,
  pinnedResult,
  resultsOf,
  type Said,
  saidOf,
  withPinned,
  wordsOf,
} from "./flight-state.ts";
import { saidLines, tableOf, toldList } from "./flight-told.ts";
import { whenSeen } from "./when-seen.ts";
import "./flight.css";

let flights = 0;

export const flightView: View<FlightState> = {
  name: "flight",
  words: (state) => `${state.title}. ${wordsOf(state)}`,
  mount(host: HTMLElement, _: Bench) {
    const doc = host.ownerDocument;
    const svg = svgEl(doc, "svg", { class: "plot-drawing", role: "img" });
    const image = new Pen(svg);
    const over = svgEl(doc, "svg", { class: "plot-handles" });
    const overlay = new Pen(over);
    const layer = svgEl(doc, "g", { class: "flight-over" });
    const cursor = cursorOn(doc, layer);
    const title = el(doc, "p", { class: "plot-title" });
    const frame = el(doc, "div", { class: "plot-frame" }, svg, over);
    const said = saidLines(doc);
    const caption = el(doc, "figcaption", {}, said.element);
    const bar = el(doc, "progress", { max: 1, class: "flight-progress", hidden: true, "aria-label": en.soon });
    const told = toldList(doc, (time) => clock.show(time));
    const table = tableBehind(doc);
    const figure = el(doc, "figure", { class: "plot flight" });

    const putLanes = lanesIn(doc, svg, `flight-${++flights}`);
    const memory: LaneMemory = new Map();
    let state: FlightState | null = null;
    let results: readonly FlightResult[] = [];
    /** An earlier run that the reader keeps here, and the pinned machine's flight. */
    let pinned: FlightResult | null = null;
    let then: FlightResult | null = null;
    let draft: readonly number[] | null = null;
    let width = FIRST_WIDTH;
    let plots: readonly PlotState[] = [];
    let layouts: readonly Layout[] = [];
    let starting = false;
    /** What the lanes show at this moment. */
    let looked: Flights | null = null;
    const flyer = patientFlyer();
    const ahead = workAhead(figure);

    const hand = handOn(doc, over, (values, done) => {
      if (!state?.drawing) return;
      draft = values;
      seen.wake();
      if (done) answer(`${state.id}-curve`, written(values, state.drawing.step));
    });
    over.append(hand.element);

    const words = (time: number): string => {
      if (!state) return "";
      const here = state.lanes.map((name) => {
        const result = results[0];
        const value = result?.ok ? laneAt(result.trace, name, time) : null;
        return value === null ? "" : `${en.lanes[name]} ${valueText(name, value)}`;
      });
      return [timeText(time, state.seconds), ...here].filter(Boolean).join(", ");
    };
    const clock = clockFor(
      doc,
      (time) => looked && cursor.show(results.length > 0 ? time : null, looked.state, looked.results),
      words,
    );

    const buttons = buttonsFor(doc, {
      go: () => {
        starting = true;
        if (state) answer(state.id, "run");
      },
      showMe: () => {
        starting = true;
        draft = null;
        if (state) answer(`${state.id}-curve`, null);
        if (state) answer(state.id, "show me");
      },
      again: () => {
        draft = null;
        if (state) answer(`${state.id}-curve`, null);
        if (state) answer(state.id, null);
      },
      pin: () => {
        pinned = pinned ? null : (results[0] ?? null);
        draw();
      },
    });

    figure.append(title, frame, bar, clock.element, caption, buttons.element, told.element, table.element);
    host.append(figure);

    /** The state with the curve that is being drawn at this moment. */
    const present = (): FlightState => drawnBy(state!, draft);

    const say = (parts: string | readonly Said[]) => {
      const told = typeof parts === "string" ? [{ label: "", words: parts }] : parts;
      said.put(told);
      image.set("aria-label", `${state!.title}. ${inOne(told)}`);
    };

    function draw(): void {
      if (!state) return;
      const own = { state: present(), results };
      const all = withPinned(own, then);
      // One dashed flight in a picture: where there is another, the pinned machine's is told in words and numbers alone.
      looked = pinned || hasDashed(own.state) ? own : all;
      const now = looked.state;
      const values = draft ?? now.drawing?.values ?? null;
      const shown = draft || now.drawing?.drawn ? values : null;
      plots = laneStates(now, looked.results, { pinned, draft: shown }, width);
      layouts = laneLayouts(plots, width, memory, hand.busy);
      const box = `0 0 ${width} ${heightOf(plots.length)}`;
      image.set("viewBox", box);
      overlay.set("viewBox", box);
      putLanes(plots, layouts);
      // Above all lanes, whichever was made last.
      if (svg.lastChild !== layer) svg.append(layer);
      cursor.put(now, plots, layouts);
      const at = now.drawing ? now.lanes.indexOf(now.drawing.what) : -1;
      const open = now.drawing && (now.drawing.what === "collective" || !now.go) ? now.drawing : null;
      const layout = layouts[at];
      hand.put(open && values && layout ? { drawing: open, values, layout, seconds: now.seconds } : null);
      const end = endOf(results);
      clock.enable(end > 0);
      clock.set(now.seconds, end > 0 ? Math.min(end, now.seconds) : now.seconds);
      if (!clock.playing) cursor.show(end > 0 ? clock.time : null, now, looked.results);
      buttons.put(own.state, results, pinned !== null, draft !== null);
      told.put(results[0] ?? null);
      table.put(tableOf(all.state, all.results, plots[0]!));
    }

    const advance = (share: number) => {
      bar.hidden = false;
      bar.value = share;
    };

    const settle = (next: readonly FlightResult[] | null) => {
      bar.hidden = true;
      setAttribute(figure, "data-busy", null);
      results = next ?? [];
      const now = present();
      then = next && pinnedResult(now);
      if (next) clock.set(state!.seconds, Math.min(endOf(results), state!.seconds));
      draw();
      const all = withPinned({ state: now, results }, then);
      say(next ? saidOf(all.state, all.results) : wordsOf(now));
      flyThen(now);
      ahead(now);
      if (next && starting) {
        starting = false;
        clock.start();
      }
    };

    /** Flies for the pinned machine what is too long to be flown here; once, since what is known is kept. */
    const flyThen = (now: FlightState) => {
      if (!now.go || !now.pinned || then) flyer.drop();
      else flyer.fly({ requests: [now.pinned.request], done: render, progress: advance });
    };

    function render(): void {
      if (!state) return;
      const now = present();
      const known = resultsOf(now);
      if (!now.go || known) {
        settle(known);
        return;
      }
      const begun = flyer.fly({
        requests: now.runs.map((run) => run.request),
        done: settle,
        progress(share) {
          advance(share);
          say(en.flying(`${Math.round(share * 100)}\u00a0%`));
        },
      });
      // An answer elsewhere on the page is no reason to begin anew.
      if (!begun) return;
      // The last good picture stays, dimmed, until the new one is there.
      setAttribute(figure, "data-busy", results.length > 0 ? "again" : "first");
      if (results.length > 0) return;
      draw();
      say(en.soon);
    }

    const seen = whenSeen(figure, render);
    const Observer = doc.defaultView?.ResizeObserver;
    if (Observer) {
      new Observer((entries) => {
        const size = entries.at(-1)?.contentRect;
        if (!size || size.width < 120 || Math.round(size.width) === width) return;
        width = Math.round(size.width);
        draw();
      }).observe(frame);
    }

    return (next) => {
      if (next === state) return;
      if (next.id !== state?.id) {
        figure.dataset.plot = next.id;
        setAttribute(figure, "data-lanes", String(next.lanes.length));
      }
      setText(title, next.title);
      const begun = !state;
      state = next;
      // What was drawn stands in the state from here on.
      if (!hand.busy) draft = null;
      if (begun) {
        draw();
        say(next.go ? en.soon : wordsOf(next));
      }
      seen.wake();
    };
  },
};
