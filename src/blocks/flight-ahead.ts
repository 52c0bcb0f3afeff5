/** What the next flights of a plot may ask of the rotors, worked out while nothing moves. */
import { aheadOfFlight } from "#flights/ahead";
import { atRest } from "./at-rest.ts";
import type { FlightState } from "./flight-state.ts";

/** Gives the call to make when a state was flown; what is long is flown elsewhere, and nothing is done for it here. */
export function workAhead(host: Element): (state: FlightState) => void {
  const later = atRest(host);
  return ({ runs: [first], long }) => {
    if (first && !long) later(aheadOfFlight(first.request));
  };
}
