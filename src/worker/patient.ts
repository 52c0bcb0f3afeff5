/** Flights for a figure of a page: they wait until their inputs rest, and the very same ones are never begun anew. */
import { type FlightRequest, sameFlights } from "#flights/flight";
import { createFlyer, type FlightOrders, type Flyer } from "./flyer.ts";

/** Inputs have come to rest when nothing changed for so long, ms. */
const REST = 120;

export interface PatientFlyer {
  /** Drops what is under way and flies this; false, and nothing happens, when it is these very flights. */
  fly(order: FlightOrders): boolean;
  /** Drops what waits or is under way. */
  drop(): void;
}

/** A flyer that is hired with its first flight and waits 120 ms before each. Errors come as results with words. */
export function patientFlyer(hire: () => Flyer = createFlyer): PatientFlyer {
  let flyer: Flyer | null = null;
  let under: readonly FlightRequest[] = [];
  let rests: ReturnType<typeof setTimeout> | undefined;
  const drop = () => {
    clearTimeout(rests);
    flyer?.drop();
    under = [];
  };
  return {
    fly({ requests, done, progress }) {
      if (under.length > 0 && sameFlights(requests, under)) return false;
      drop();
      under = requests;
      rests = setTimeout(() => {
        flyer ??= hire();
        flyer.fly({
          requests,
          progress,
          done(results) {
            under = [];
            done(results);
          },
        });
      }, REST);
      return true;
    },
    drop,
  };
}
