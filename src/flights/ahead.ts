/** Asking the rotors ahead of the reader: a flight with other gears, motor or pack then finds its tables' rows made. */
import { rowsAhead } from "#model/flight/rotor-rows";
import type { FlightRequest } from "./flight.ts";
import { readyToFly } from "./machine.ts";

/** The work in small pieces; none for a machine that can't fly. Units: none. Source: definition. */
export function* aheadOfFlight({ machine, mode, scenario: _, ...options }: FlightRequest): Generator<() => void> {
  const ready = readyToFly(machine, mode, options);
  if (!ready.ok) return;
  const { rotor, tail, controller, gearRatio } = ready.mode.machine;
  yield* rowsAhead(rotor.map, tail, rotor.radius, controller.reference / gearRatio);
}
