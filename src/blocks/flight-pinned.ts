/** A flight with that of the pinned machine to fly beside it. */
import { enFlights as en } from "#view/words/en-flights";
import { plotWords } from "#view/words/en-plots";
import type { FlightState } from "./flight-state.ts";
import type { WholePackState } from "./whole-pack-state.ts";

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

/** The packs of all modes with those of the pinned machine's modes, each below the one of the same place. */
export function packsPinned(state: WholePackState, pinned: WholePackState | undefined, as: string): WholePackState {
  if (!pinned || as === "") return state;
  const rows = [...state.rows, ...pinned.rows.map((row) => ({ ...row, which: "pinned" as const }))];
  return { ...state, rows: rows.sort((a, b) => a.mode - b.mode) };
}
