/** Long flights, off the page's own thread: the latest order counts, an earlier one still under way is dropped. */
import { type Remote, releaseProxy, wrap } from "comlink";
import { type FlightRequest, type FlightResult, flightOf, keepFlight, knownFlight, sizeOf } from "#flights/flight";
import type { Flying } from "./fly.ts";

/** What one line of a worker needs to have: so that a test can give its own. */
export interface Hand {
  fly(request: FlightRequest): FlightResult | Promise<FlightResult>;
  /** Ends it, also in the middle of a flight. */
  end(): void;
}

export interface FlightOrders {
  readonly requests: readonly FlightRequest[];
  /** Called once, with a result for each request, unless it was dropped before. */
  readonly done: (results: readonly FlightResult[]) => void;
  /** Share of the work that is done, about: 0 to 1. Called now and then once it has taken 300 ms. */
  readonly progress: (share: number) => void;
}

export interface Flyer {
  fly(order: FlightOrders): void;
  /** Drops what is under way. */
  drop(): void;
}

/** Progress is worth a word after so long, and then so often, ms. */
const patience = 300;
const beat = 150;
/** Steps of the simulator in a ms: measured anew with each long flight. */
let pace = 250;

/** A worker of its own; where there are none (old browsers, tests), the flight is flown here, when the page has a moment. */
function hire(): Hand {
  if (typeof Worker === "undefined") {
    return {
      fly: (request) => new Promise((resolve) => setTimeout(() => resolve(flightOf(request)))),
      end: () => {},
    };
  }
  const worker = new Worker(new URL("./fly.ts", import.meta.url), { type: "module" });
  const remote: Remote<Flying> = wrap<Flying>(worker);
  const failed = new Promise<FlightResult>((resolve) => {
    worker.addEventListener("error", () => resolve({ ok: false, why: "The flight could not be computed here." }));
  });
  return {
    fly: (request) => Promise.race([remote.fly(request), failed]),
    end() {
      remote[releaseProxy]();
      worker.terminate();
    },
  };
}

/** A line of flights of which only the latest counts. Times in ms. Errors come as results with words. */
export function createFlyer(make: () => Hand = hire): Flyer {
  let hand: Hand | null = null;
  let busy = false;
  let turn = 0;
  let clock: ReturnType<typeof setInterval> | undefined;

  const drop = () => {
    turn++;
    clearInterval(clock);
    if (busy) {
      hand?.end();
      hand = null;
    }
    busy = false;
  };

  const fly = ({ requests, done, progress }: FlightOrders) => {
    drop();
    const mine = turn;
    busy = true;
    hand ??= make();
    const by = hand;
    const sizes = requests.map((request) => (knownFlight(request) ? 0 : (sizeOf(request)?.ticks ?? 0)));
    const all = Math.max(
      1,
      sizes.reduce((sum, size) => sum + size, 0),
    );
    let finished = 0;
    const began = performance.now();
    let since = began;
    clock = setInterval(() => {
      const now = performance.now();
      if (now - began < patience) return;
      // A flight gives no sign before it is over: within one, time tells.
      progress(Math.min(0.97, (finished + (now - since) * pace) / all));
    }, beat);
    void (async () => {
      const results: FlightResult[] = [];
      for (const [i, request] of requests.entries()) {
        const result = knownFlight(request) ?? (await by.fly(request));
        if (mine !== turn) return;
        keepFlight(request, result);
        results.push(result);
        const size = sizes[i] ?? 0;
        const took = performance.now() - since;
        if (size > 20_000 && took > 0) pace = size / took;
        finished += size;
        since = performance.now();
      }
      clearInterval(clock);
      busy = false;
      done(results);
    })();
  };
  return { fly, drop };
}
