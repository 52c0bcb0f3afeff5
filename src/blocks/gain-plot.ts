/** Dip and unrest against the governor's gain: where more gain holds better, and where it no longer does. */
import { type FlightRequest, type FlightResult, flightOf, knownFlight } from "#flights/flight";
import { type Grip, gainRow, gainsFlown, gripOf } from "#flights/gain-row";
import type { Machine } from "#machine/machine";
import { plotView } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enFlights } from "#view/words/en-flights";
import { createFlyer, type Flyer } from "#worker/flyer";
import { whenSeen } from "./when-seen.ts";
import "./flight.css";

interface GainState {
  readonly loopHz: number;
  /** The gain that is looked at. */
  readonly gain: number;
  readonly headRpm: number;
  readonly requests: readonly FlightRequest[];
}

/** A hover that swings by more than this share of the set speed is not quiet. Our choice. */
const RESTLESS = 0.005;
/** Inputs rest so long before the row is flown, ms. */
const REST = 150;

const en = enFlights.gains;

/** How deep a punch pulls the head and how restless the hover is, for a row of gains, at a rate of the loop (Hz). */
export function gainPlot(machine: Machine, mode: number, options: { gain: number; loopHz: number }): Shown<GainState> {
  const requests = gainRow(machine, mode, options.loopHz);
  return show<GainState>(gainView, { ...options, headRpm: machine.modes[mode]?.headRpm ?? 0, requests });
}

const knownOf = ({ requests }: GainState): readonly FlightResult[] | null => {
  const results = requests.map(knownFlight);
  return results.every((result) => result !== null) ? results : null;
};

function wordsFor({ loopHz, headRpm }: GainState, grips: readonly (Grip | null)[]): string {
  const flown = grips.flatMap((grip, i) => (grip ? [{ ...grip, gain: gainsFlown[i]! }] : []));
  const [first] = flown;
  if (!first) return en.none;
  const looks = formatNumber(loopHz, 0);
  const best = flown.reduce((a, b) => (b.lowRpm < a.lowRpm ? b : a));
  const restless = flown.find(({ swingRpm }) => swingRpm > RESTLESS * headRpm);
  return [
    en.best(looks, formatNumber(best.gain, best.gain % 1 ? 1 : 0), formatValue(best.lowRpm, "rpm")),
    best === flown.at(-1) && flown.length === grips.length ? en.still : "",
    restless
      ? en.restless(formatNumber(restless.gain, restless.gain % 1 ? 1 : 0), formatValue(restless.swingRpm, "rpm"))
      : en.quiet,
  ]
    .filter(Boolean)
    .join(" ");
}

function plotOf(state: GainState, results: readonly FlightResult[] | null, fresh: boolean): PlotState {
  const grips = (results ?? []).map(gripOf);
  const xs = gainsFlown.slice(0, grips.length);
  const restless = grips.findIndex((grip) => (grip?.swingRpm ?? 0) > RESTLESS * state.headRpm);
  const last = gainsFlown.at(-1)!;
  return {
    name: "gain-row",
    title: en.title,
    unit: "rpm",
    x: { label: en.gain, unit: "", low: 0, high: last, exact: true, ticks: [0, 5, 10, 15, 20, 25] },
    y: { label: en.rpm, unit: "rpm", low: 0, high: 0.03 * state.headRpm },
    curves: [
      { key: "low", label: en.low, ink: "now", xs, ys: grips.map((grip) => grip?.lowRpm ?? null) },
      { key: "swing", label: en.swing, ink: "pinned-now", xs, ys: grips.map((grip) => grip?.swingRpm ?? null) },
    ],
    levels: state.gain <= last ? [{ key: "own", axis: "x", at: state.gain, label: en.here, ink: "plain" }] : [],
    zones: restless < 0 ? [] : [{ key: "restless", words: en.zone, x: [gainsFlown[restless]!, null] }],
    words: results && fresh ? wordsFor(state, grips) : enFlights.soon,
  };
}

const gainView: View<GainState> = {
  name: "gain-plot",
  words: (state) => plotView.words(plotOf(state, knownOf(state), true)),
  mount(host, bench) {
    const put = plotView.mount(host, bench);
    let state: GainState | null = null;
    let last: readonly FlightResult[] | null = null;
    let flyer: Flyer | null = null;
    let rests: ReturnType<typeof setTimeout> | undefined;

    const draw = (results: readonly FlightResult[]) => {
      last = results;
      host.classList.remove("is-stale");
      if (state) put(plotOf(state, results, true));
    };
    const fly = () => {
      clearTimeout(rests);
      flyer?.drop();
      if (!state) return;
      const { requests } = state;
      // A page that is drawn ahead of its readers has the time.
      if (typeof window === "undefined") return draw(requests.map(flightOf));
      rests = setTimeout(() => {
        flyer ??= createFlyer();
        flyer.fly({ requests, done: draw, progress: () => {} });
      }, REST);
    };
    const seen = whenSeen(host, fly);
    return (next) => {
      if (next === state) return;
      state = next;
      const known = knownOf(next);
      if (known) {
        clearTimeout(rests);
        flyer?.drop();
        return draw(known);
      }
      // The last good picture stays, dimmed, until the new one is there.
      if (last) host.classList.add("is-stale");
      put(plotOf(next, last, false));
      seen.wake();
    };
  },
};
