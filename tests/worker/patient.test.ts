import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { FlightRequest, FlightResult } from "#flights/flight";
import { clubTrainer } from "#machine/demos";
import type { FlightOrders } from "#worker/flyer";
import { patientFlyer } from "#worker/patient";

const request = (hold: number, machine = clubTrainer): FlightRequest => ({
  machine,
  mode: 0,
  scenario: { kind: "punch", hold },
});
const nothing: FlightResult = { ok: false, why: "not flown" };

/** A flyer that only notes what it is told. */
function noted() {
  const flown: FlightOrders[] = [];
  const drop = vi.fn();
  const flyer = patientFlyer(() => ({ fly: (order) => flown.push(order), drop }));
  const order = (...requests: FlightRequest[]) => {
    const done = vi.fn();
    return { begun: flyer.fly({ requests, done, progress: () => {} }), done };
  };
  return { flown, drop, flyer, order };
}

describe("flights for a figure", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("wait until the inputs rest, and only the last order is flown", () => {
    const { flown, order } = noted();
    for (let hold = 1; hold <= 5; hold++) {
      order(request(hold));
      vi.advanceTimersByTime(60);
    }
    expect(flown).toHaveLength(0);
    vi.advanceTimersByTime(100);
    expect(flown.map(({ requests }) => requests[0]!.scenario)).toEqual([{ kind: "punch", hold: 5 }]);
  });

  it("are not begun anew when the very same ones are asked for, neither while they wait nor under way", () => {
    const { flown, drop, order } = noted();
    const first = order(request(1));
    expect(first.begun).toBe(true);
    vi.advanceTimersByTime(60);
    expect(order(request(1)).begun).toBe(false);
    vi.advanceTimersByTime(100);
    expect(order(request(1)).begun).toBe(false);
    expect(flown).toHaveLength(1);
    expect(drop).not.toHaveBeenCalled();
    flown[0]!.done([nothing]);
    expect(first.done).toHaveBeenCalledWith([nothing]);
    // Once they are over, they may be asked for again.
    expect(order(request(1)).begun).toBe(true);
  });

  it("are dropped for others: another scenario, another machine of the same make, one more", () => {
    for (const other of [[request(2)], [request(1, { ...clubTrainer })], [request(1), request(2)]]) {
      const { flown, drop, order } = noted();
      order(request(1));
      vi.advanceTimersByTime(200);
      expect(order(...other).begun).toBe(true);
      expect(drop).toHaveBeenCalledTimes(1);
      vi.advanceTimersByTime(200);
      expect(flown).toHaveLength(2);
    }
  });

  it("can be dropped while they wait", () => {
    const { flown, flyer, order } = noted();
    order(request(1));
    flyer.drop();
    vi.advanceTimersByTime(500);
    expect(flown).toHaveLength(0);
    expect(order(request(1)).begun).toBe(true);
  });
});
