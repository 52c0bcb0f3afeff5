/** Flights for the pages: which machine flies what, drawn in which lanes, and whether the reader predicts it first. */
import { figuresOf } from "#figures/figures";
import { sizeOf } from "#flights/flight";
import type { LaneName } from "#flights/lanes";
import { departures, type FlightOptions } from "#flights/machine";
import type { Scenario } from "#flights/scenarios";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { type Shown, show } from "#view/shown";
import { enFlights as en } from "#view/words/en-flights";
import { POINTS, read } from "./flight-curve.ts";
import { type Drawing, type FlightRun, type FlightState, takesLong } from "./flight-state.ts";
import { flightView } from "./flight-view.ts";

interface Bench {
  readonly machine: Machine;
  readonly whatIf: Machine | null;
  readonly answers: Answers;
  /** Place of the flight mode in the machine's list. */
  readonly mode: number;
}

export interface FlightPlotOptions extends Bench, FlightOptions {
  /** Its stable name, in kebab-case. */
  readonly id: string;
  readonly scenario: Scenario;
  readonly title?: string;
  readonly lanes?: readonly LaneName[];
  /** The reader draws the head speed that is expected before it is flown. */
  readonly predict?: boolean;
  /** The same machine flown otherwise, beside it: dashed. */
  readonly compare?: readonly ({ readonly key: string; readonly label: string } & FlightOptions)[];
  /** What the first run is called where others stand beside it. */
  readonly label?: string;
}

const usualLanes: readonly LaneName[] = ["head-speed", "duty", "collective", "voltage"];
const packLanes: readonly LaneName[] = ["head-speed", "duty", "voltage", "charge"];

/** Share of the set speed that a guess may go below and above it. */
const GUESS = [0.84, 1.12] as const;
const GUESS_STEP = 10;
const HAND_STEP = 0.1;
/** Length of a flight that the reader draws, s. */
const DRAWN_SECONDS = 6;
/** Shortest and longest time axis of a whole pack, s. */
const PACK = [180, 1200] as const;

/** The time axis: as long as the flight is meant to last; for a pack, as long as a hover takes. */
function secondsOf(runs: readonly FlightRun[]): number {
  return Math.max(
    ...runs.map(({ request }) => {
      if (request.scenario.kind !== "whole-pack") return sizeOf(request)?.seconds ?? DRAWN_SECONDS;
      const hover = figuresOf(request.machine).number("hover-duration", request.mode) ?? 0;
      const whole = Math.min(PACK[1], Math.max(PACK[0], hover * 60 * 1.25));
      return 60 * Math.ceil(whole / 60);
    }),
  );
}

function runsOf({ machine, whatIf, mode, scenario, compare = [], label, ...rest }: FlightPlotOptions): FlightRun[] {
  const options = departures(rest);
  const runs: FlightRun[] = [
    { key: "now", label: label ?? en.runs.now, ink: "now", request: { machine, mode, scenario, ...options } },
    ...compare.map(({ key, label: name, ...other }) => ({
      key,
      label: name,
      ink: "pinned-now" as const,
      request: { machine, mode, scenario, ...options, ...other },
    })),
  ];
  if (whatIf) {
    const place = Math.min(mode, whatIf.modes.length - 1);
    const request = { machine: whatIf, mode: place, scenario, ...options };
    runs.splice(1, 0, { key: "what-if", label: en.runs.whatIf, ink: "what-if", request });
  }
  return runs;
}

function stateOf(options: FlightPlotOptions, drawing: Drawing | null): FlightState {
  const { id, scenario, answers, title, lanes } = options;
  const runs = runsOf(options);
  const asks = drawing !== null;
  return {
    id,
    title: title ?? en.titles[scenario.kind],
    lanes: lanes ?? (scenario.kind === "whole-pack" ? packLanes : usualLanes),
    seconds: secondsOf(runs),
    runs,
    drawing,
    asks,
    go: !asks || typeof answers[id] === "string",
    long: takesLong(runs.map((run) => run.request)),
    options: asks ? [{ key: "run" }, { key: "show me" }] : [],
  };
}

/**
 * A flight of a machine, and of the what-if beside it, against time. With `predict` the reader draws the head speed first;
 * without, it flies at once and follows every slider.
 */
export function flightPlot(options: FlightPlotOptions): Shown<FlightState> {
  const { id, machine, mode, answers, predict = false } = options;
  if (!predict) return show(flightView, stateOf(options, null));
  const set = machine.modes[mode]?.headRpm ?? 0;
  const low = GUESS_STEP * Math.floor((GUESS[0] * set) / GUESS_STEP);
  const high = GUESS_STEP * Math.ceil((GUESS[1] * set) / GUESS_STEP);
  const kept = read(answers[`${id}-curve`], GUESS_STEP, low, high);
  return show(
    flightView,
    stateOf(options, {
      what: "head-speed",
      low,
      high,
      step: GUESS_STEP,
      unit: "rpm",
      values: kept ?? new Array<number>(POINTS).fill(set),
      drawn: kept !== null,
    }),
  );
}

export interface PadOptions extends Bench, FlightOptions {
  readonly id: string;
  readonly title?: string;
  readonly lanes?: readonly LaneName[];
}

/** The reader draws the collective over six seconds and flies it; once flown, every stroke is flown as it is drawn. */
export function collectivePad(options: PadOptions): Shown<FlightState> {
  const { id, machine, mode, answers, lanes = ["collective", "head-speed", "duty", "voltage"] } = options;
  const { collectiveMinDeg = 0, collectiveMaxDeg = 10 } = machine.modes[mode] ?? {};
  const low = Math.min(collectiveMinDeg, collectiveMaxDeg - 1);
  const kept = read(answers[`${id}-curve`], HAND_STEP, low, collectiveMaxDeg);
  const hover = figuresOf(machine).number("hover-collective", mode) ?? collectiveMaxDeg / 2;
  const rest = Math.min(collectiveMaxDeg, Math.max(low, Math.round(hover / HAND_STEP) * HAND_STEP));
  const values = kept ?? new Array<number>(POINTS).fill(rest);
  const drawing: Drawing = {
    what: "collective",
    low,
    high: collectiveMaxDeg,
    step: HAND_STEP,
    unit: "deg",
    values,
    drawn: kept !== null,
  };
  const scenario: Scenario = { kind: "drawn", seconds: DRAWN_SECONDS, collectivesDeg: values };
  return show(flightView, stateOf({ ...options, lanes, scenario }, drawing));
}
