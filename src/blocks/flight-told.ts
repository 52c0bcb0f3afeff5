/** Behind a flight: what happened moment by moment, and the numbers as a table. */
import type { FlightResult } from "#flights/flight";
import { type LaneName, laneAt, lanes } from "#flights/lanes";
import { shownValue } from "#machine/units";
import type { Trace } from "#model/flight/trace";
import type { PlotState, Table } from "#plots/state";
import { el, setText } from "#view/dom";
import { unitText } from "#view/format";
import { firstAndRest } from "#view/text";
import { unitsNow } from "#view/units";
import { enFlights as en } from "#view/words/en-flights";
import { timeUnit } from "./flight-lanes.ts";
import type { FlightState, Said } from "./flight-state.ts";

/** Rows of the table. */
const ROWS = 21;

/** What is said below a flight, a line for each run: its label in a stronger hand, or its first sentence where it is alone. */
export function saidLines(doc: Document): { element: HTMLElement; put(said: readonly Said[]): void } {
  const element = el(doc, "span", { role: "status" });
  const lines: { line: HTMLElement; strong: HTMLElement; rest: Text }[] = [];
  return {
    element,
    put(said) {
      for (const [i, { label, words }] of said.entries()) {
        if (!lines[i]) {
          const strong = el(doc, "b");
          const rest = doc.createTextNode("");
          const line = el(doc, "span", { class: "flight-said" }, strong, rest);
          element.append(line, " ");
          lines[i] = { line, strong, rest };
        }
        const { line, strong, rest } = lines[i];
        const [head, more] = label === "" ? firstAndRest(words) : [label, ` ${words}`];
        setText(strong, head);
        if (rest.data !== more) rest.data = more;
        line.hidden = false;
      }
      for (const { line } of lines.slice(said.length)) line.hidden = true;
    },
  };
}

/** The closed list of what happened; each entry leads the clock to its moment. */
export function toldList(
  doc: Document,
  go: (time: number) => void,
): { element: HTMLElement; put(result: FlightResult | null): void } {
  const list = el(doc, "ol");
  const details = el(doc, "details", { class: "flight-told", hidden: true }, el(doc, "summary", {}, en.told), list);
  let result: FlightResult | null = null;
  let filled: FlightResult | null = null;
  const fill = () => {
    if (!details.open || !result?.ok || result === filled) return;
    filled = result;
    const events = result.events.map((event) => {
      const button = el(doc, "button", { type: "button", class: "link" }, event.words);
      button.addEventListener("click", () => go(event.from));
      return el(doc, "li", {}, button);
    });
    list.replaceChildren(...(events.length > 0 ? events : [el(doc, "li", {}, en.nothing)]));
  };
  details.addEventListener("toggle", fill);
  return {
    element: details,
    put(next) {
      result = next;
      details.hidden = !next?.ok;
      fill();
    },
  };
}

/** A lane's value as it is shown, in the reader's units; null past the end. */
function shownAt(trace: Trace, name: LaneName, time: number): number | null {
  const value = laneAt(trace, name, time);
  return value === null ? null : shownValue(value, lanes[name].unit, unitsNow());
}

/** The numbers behind a flight: its lanes at even times, for each run; the guess too while that is all there is. */
export function tableOf(state: FlightState, results: readonly FlightResult[], plot: PlotState): PlotState {
  const unit = timeUnit(state.seconds);
  const tag = (i: number): string => (state.runs.length > 1 ? ` (${state.runs[i]?.label ?? ""})` : "");
  const named = (name: (typeof state.lanes)[number]): string => {
    const sign = unitText(lanes[name].unit);
    return sign === "" ? en.lanes[name] : `${en.lanes[name]}, ${sign}`;
  };
  const flown = results.flatMap((result, i) => (result.ok ? [{ result, i }] : []));
  const columns = [
    `${en.time}, ${unit === 60 ? en.minutes : en.seconds}`,
    ...(flown.length === 0 && state.drawing ? [named(state.drawing.what)] : []),
    ...flown.flatMap(({ i }) => state.lanes.map((name) => named(name) + tag(i))),
  ];
  const rows = Array.from({ length: ROWS }, (_, k) => {
    const time = (k * state.seconds) / (ROWS - 1);
    const drawn = state.drawing?.values ?? [];
    return [
      time / unit,
      ...(flown.length === 0 && state.drawing
        ? [drawn[Math.round((k * (drawn.length - 1)) / (ROWS - 1))] ?? null]
        : []),
      ...flown.flatMap(({ result }) => state.lanes.map((name) => shownAt(result.trace, name, time))),
    ];
  });
  const table: Table = { columns, rows };
  return { ...plot, name: state.id, table };
}
