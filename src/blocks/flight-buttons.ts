/** What the reader can do with a flight: run it, guess again, pin it, take it away. */
import type { FlightResult } from "#flights/flight";
import { flightCsv } from "#model/flight/csv";
import { el, setText } from "#view/dom";
import { enFlights as en } from "#view/words/en-flights";
import type { FlightState } from "./flight-state.ts";

export interface Buttons {
  readonly element: HTMLElement;
  put(state: FlightState, results: readonly FlightResult[], pinned: boolean, drawing: boolean): void;
}

interface Deeds {
  readonly go: () => void;
  readonly showMe: () => void;
  readonly again: () => void;
  readonly pin: () => void;
}

/** Hands a flight's trace over as a file. */
function take(doc: Document, id: string, result: FlightResult): void {
  if (!result.ok) return;
  const url = URL.createObjectURL(new Blob([flightCsv(result.trace)], { type: "text/csv" }));
  el(doc, "a", { href: url, download: `${id}.csv` }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The row of buttons below a flight. */
export function buttonsFor(doc: Document, deeds: Deeds): Buttons {
  const button = (words: string, quiet: boolean) =>
    el(doc, "button", { type: "button", ...(quiet ? { class: "quiet" } : {}) }, words);
  const go = button(en.run, false);
  const showMe = button(en.showMe, true);
  const again = button(en.again, true);
  const pin = button(en.pin, true);
  const takes: HTMLButtonElement[] = [];
  const taking = el(doc, "span");
  const element = el(doc, "div", { class: "flight-buttons screen-only" }, go, showMe, pin, taking, again);
  go.addEventListener("click", deeds.go);
  showMe.addEventListener("click", deeds.showMe);
  again.addEventListener("click", deeds.again);
  pin.addEventListener("click", deeds.pin);
  let state: FlightState | null = null;
  let results: readonly FlightResult[] = [];

  return {
    element,
    put(next, flown, pinned, drawing) {
      state = next;
      results = flown;
      const hand = next.drawing?.what === "collective";
      const any = flown.some((result) => result.ok);
      go.hidden = !next.asks || next.go;
      setText(go, hand ? en.fly : en.run);
      showMe.hidden = go.hidden || next.drawing?.what !== "head-speed";
      again.hidden = !next.asks || !(next.go || drawing || next.drawing?.drawn);
      setText(again, next.drawing?.what === "head-speed" ? en.again : en.fresh);
      pin.hidden = !any;
      setText(pin, pinned ? en.unpin : en.pin);
      for (const [i, run] of next.runs.entries()) {
        if (!takes[i]) {
          const made = button("", true);
          made.addEventListener("click", () => {
            const result = results[i];
            if (state && result) take(doc, `${state.id}-${state.runs[i]?.key ?? i}`, result);
          });
          takes.push(made);
          taking.append(made);
        }
        setText(
          takes[i]!,
          next.runs.filter(({ ink }) => !ink.startsWith("pinned")).length > 1 ? `${en.take}: ${run.label}` : en.take,
        );
      }
      takes.forEach((made, i) => {
        const run = next.runs[i];
        // What only stands beside the reader's machines is seen, not taken.
        made.hidden = !flown[i]?.ok || !run || run.ink.startsWith("pinned");
      });
    },
  };
}
