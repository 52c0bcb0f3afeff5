/** The worker: flies what it is asked for, and hands the traces over without a copy. */
import { expose, transfer } from "comlink";
import { type FlightRequest, type FlightResult, flightOf } from "#flights/flight";

const flying = {
  fly(request: FlightRequest): FlightResult {
    const result = flightOf(request);
    return result.ok ? transfer(result, [result.trace.time.buffer as ArrayBuffer]) : result;
  },
};

export type Flying = typeof flying;

expose(flying);
