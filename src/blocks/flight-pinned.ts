/** A flight with that of the pinned machine to fly beside it. */
import { enFlights as en } from "#view/words/en-flights";
import { plotWords } from "#view/words/en-plots";
import type { FlightState } from "./flight-state.ts";

/** The state with what the pinned machine flies; `as` is what that machine has other, and empty where it has nothing. */
export function flightPinned(state: FlightState, pinned: FlightState | undefined, as: string): FlightState {
  const [first] = state.runs;
  const [then] = pinned?.id === state.id ? pinned.runs : [];
  if (!first || !then || !pinned || as === "") return state;
  const { scenario } = first.request;
  // What the reader draws is one hand for all machines.
  const request = scenario.kind === "drawn" ? { ...then.request, scenario } : then.request;
  return {
    ...state,
    // Along the reader's own curve the axis of time stays.
    seconds: state.drawing ? state.seconds : Math.max(state.seconds, pinned.seconds),
    pinned: { key: "pinned", label: en.runs.pinned, named: plotWords.pinnedLong(as), ink: "pinned-now", request },
  };
}
