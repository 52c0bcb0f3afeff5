import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type FlightRequest, type FlightResult, flightOf, knownFlight } from "#flights/flight";
import { defaultMachine } from "#machine/machine";
import { createFlyer, type Hand } from "#worker/flyer";

/** A machine of its own for each test: flights are kept by machine. */
const request = (seconds = 0.3): FlightRequest => ({
  machine: { ...defaultMachine },
  mode: 0,
  scenario: { kind: "drawn", seconds, collectivesDeg: [4, 6] },
});
const nothing: FlightResult = { ok: false, why: "not flown" };

/** A line whose flights end when the test says so. */
function slowHands() {
  const hands: { asked: FlightRequest[]; ended: number; finish: (result?: FlightResult) => void }[] = [];
  const make = (): Hand => {
    let resolve: (result: FlightResult) => void = () => {};
    const hand = {
      asked: [] as FlightRequest[],
      ended: 0,
      finish: (result: FlightResult = nothing) => resolve(result),
    };
    hands.push(hand);
    return {
      fly: (one) => {
        hand.asked.push(one);
        return new Promise((done) => {
          resolve = done;
        });
      },
      end: () => {
        hand.ended++;
      },
    };
  };
  return { hands, make };
}

const silent = { done: () => {}, progress: () => {} };
/** Lets promises that are settled run on. */
const settle = async () => {
  for (let i = 0; i < 10; i++) await Promise.resolve();
};

describe("flyer", () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "setTimeout", "clearTimeout", "performance"] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("flies all requests one after the other, in order, and keeps what was flown", async () => {
    const { hands, make } = slowHands();
    const requests = [request(0.2), request(0.3)];
    const results: FlightResult[][] = [];
    createFlyer(make).fly({ requests, done: (all) => results.push([...all]), progress: () => {} });
    expect(hands).toHaveLength(1);
    expect(hands[0]!.asked).toEqual([requests[0]]);
    const first: FlightResult = { ok: false, why: "first" };
    const second: FlightResult = { ok: false, why: "second" };
    hands[0]!.finish(first);
    await settle();
    expect(hands[0]!.asked).toEqual(requests);
    expect(results).toEqual([]);
    hands[0]!.finish(second);
    await settle();
    expect(results).toEqual([[first, second]]);
    expect(knownFlight(requests[0]!)).toBe(first);
    expect(knownFlight(requests[1]!)).toBe(second);
    expect(hands[0]!.ended).toBe(0);
  });

  it("asks nobody for what was flown before", async () => {
    const { hands, make } = slowHands();
    const known = request();
    const flown = flightOf(known);
    expect(flown.ok).toBe(true);
    const results: FlightResult[][] = [];
    createFlyer(make).fly({ requests: [known], done: (all) => results.push([...all]), progress: () => {} });
    await settle();
    expect(results).toEqual([[flown]]);
    expect(hands.flatMap((hand) => hand.asked)).toEqual([]);
  });

  it("ends a flight under way when another is ordered, and never tells of the first", async () => {
    const { hands, make } = slowHands();
    const flyer = createFlyer(make);
    const told: string[] = [];
    const old = request();
    flyer.fly({ requests: [old], done: () => told.push("old"), progress: () => told.push("old progress") });
    flyer.fly({ requests: [request()], done: () => told.push("new"), progress: () => {} });
    expect(hands.map((hand) => hand.ended)).toEqual([1, 0]);
    // Even when the ended one still answers.
    hands[0]!.finish();
    await settle();
    vi.advanceTimersByTime(2000);
    expect(told).toEqual([]);
    expect(knownFlight(old)).toBeNull();
    hands[1]!.finish();
    await settle();
    expect(told).toEqual(["new"]);
  });

  it("uses the same worker again when nothing was under way", async () => {
    const { hands, make } = slowHands();
    const flyer = createFlyer(make);
    flyer.fly({ requests: [request()], ...silent });
    hands[0]!.finish();
    await settle();
    flyer.fly({ requests: [request()], ...silent });
    expect(hands).toHaveLength(1);
    expect(hands[0]!.asked).toHaveLength(2);
    flyer.drop();
    expect(hands[0]!.ended).toBe(1);
    // Dropped once is dropped: nothing to end a second time.
    flyer.drop();
    expect(hands[0]!.ended).toBe(1);
  });

  it("says nothing of a short flight, and how far a long one is: never all of it, never back", async () => {
    const { hands, make } = slowHands();
    const flyer = createFlyer(make);
    const shares: number[] = [];
    const long = { ...request(), scenario: { kind: "whole-pack", mix: "mixed" } } as FlightRequest;
    flyer.fly({ requests: [long, request(0.2)], done: () => {}, progress: (share) => shares.push(share) });
    vi.advanceTimersByTime(290);
    expect(shares).toEqual([]);
    vi.advanceTimersByTime(600);
    expect(shares.length).toBeGreaterThan(2);
    vi.advanceTimersByTime(60_000);
    expect(shares.at(-1)).toBe(0.97);
    expect(shares.every((share, i) => share >= 0 && share <= 0.97 && share >= (shares[i - 1] ?? 0))).toBe(true);
    const before = shares.length;
    hands[0]!.finish();
    await settle();
    hands[0]!.finish();
    await settle();
    vi.advanceTimersByTime(2000);
    expect(shares).toHaveLength(before);
  });

  it("flies here where there are no workers", async () => {
    vi.useRealTimers();
    expect(typeof Worker).toBe("undefined");
    const one = request();
    const results = await new Promise<readonly FlightResult[]>((done) => {
      createFlyer().fly({ requests: [one], done, progress: () => {} });
    });
    expect(results).toEqual([flightOf(one)]);
    expect(results[0]!.ok).toBe(true);
  });
});
