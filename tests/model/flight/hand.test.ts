import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import type { Collective } from "#model/flight/orders";
import { CLIMB, COLLECTIVE, createPilot, HEIGHT, hoverCollective, NOW, RATE, TICK } from "#model/flight/pilot";
import { fly } from "#model/flight/run";
import { hover } from "#model/flight/scenarios";
import { sample } from "./sample.ts";

const speed = 220;
const trim = hoverCollective(sample, speed)!;

/** A pilot at work: each tick is told the height and the vertical speed there. */
function pilot(orders: readonly Collective[], start = trim) {
  const hand = createPilot(sample, orders, start, speed);
  hand.port[TICK] = 0.01;
  let k = 0;
  return (height: number, climb = 0) => {
    hand.port[NOW] = k++ * 0.01;
    hand.port[HEIGHT] = height;
    hand.port[CLIMB] = climb;
    hand.move();
    return { rate: hand.port[RATE]!, collective: hand.port[COLLECTIVE]! };
  };
}
const at10: Collective[] = [{ from: 0, kind: "height", height: 10 }];
/** Vertical acceleration of the machine once a move of the hand (rad/s) has gone on until the next look, by the steady rotor. */
const answer = (rate: number) => sample.rotor.map.thrust(speed, trim + 0.05 * rate, 0) / sample.mass - gravity;

describe("the pilot's hand", () => {
  // By definition of the pilot: 1.4 m/s2 for a metre, 1.6 m/s2 for a metre a second, a habit of 0.3 m/s3 for a metre.
  it("gives the acceleration that the height error and the vertical speed ask for", () => {
    expect(answer(pilot(at10)(9.9).rate)).toBeCloseTo(0.1 * (1.4 + 0.3 * 0.05), 2);
    expect(answer(pilot(at10)(10, 0.1).rate)).toBeCloseTo(-0.16, 2);
    expect(answer(pilot(at10)(10.1, 0.1).rate)).toBeCloseTo(-0.1 * (1.4 + 0.3 * 0.05) - 0.16, 2);
  });

  it("heeds an error of 30 m no more than one of 3 m", () => {
    expect(pilot(at10)(7).rate).toBeGreaterThan(1.5 * pilot(at10)(8.5).rate);
    expect(pilot(at10)(-20).rate).toBe(pilot(at10)(7).rate);
    expect(pilot(at10)(40).rate).toBe(pilot(at10)(13).rate);
  });

  it("looks twenty times a second, from the moment of the order on, and moves evenly in between", () => {
    const move = pilot([{ from: 0.5, kind: "height", height: 10 }]);
    for (let k = 0; k < 50; k++) expect(move(9).rate).toBe(0);
    const rates = Array.from({ length: 15 }, (_, k) => move(9 - k * 0.01).rate);
    for (const [k, rate] of rates.entries()) {
      if (k % 5 !== 0) expect(rate).toBe(rates[k - 1]);
      else if (k > 0) expect(rate).not.toBe(rates[k - 1]);
    }
    expect(rates[0]).toBeGreaterThan(0);
  });

  it("begins each order with no habit of the one before", () => {
    const used = pilot([...at10, { from: 1, kind: "height", height: 12 }]);
    let collective = 0;
    for (let k = 0; k < 100; k++) collective = used(9).collective;
    const next = used(12);
    // Nothing is asked at 12 m: the hand goes to the trim within the look.
    expect(collective).toBeGreaterThan(trim + 0.001);
    expect(next.collective + 0.05 * next.rate).toBeCloseTo(trim, 12);
  });

  it("finds by habit the collective of a head speed it didn't expect", () => {
    const flight = fly({
      ...hover({ machine: sample, setSpeed: speed }, 40),
      // Two orders: the pilot's trim is that of the first.
      throttle: [
        { from: 0, kind: "speed", speed: speed * sample.gearRatio, ramp: "none" },
        { from: 0.1, kind: "speed", speed: 1.2 * speed * sample.gearRatio, ramp: "none" },
      ],
    });
    expect(flight.end.why).toBe("flown");
    const { height, collective } = flight.trace;
    expect(collective.at(-1)!).toBeLessThan(trim - 0.01);
    expect(Math.abs(height.at(-1)! - 15)).toBeLessThan(0.02);
  });

  it("is where its first order says from the first moment", () => {
    const still = pilot([{ from: 0, kind: "hold", collective: 0.12, over: 0 }], 0.05)(9);
    expect(still).toEqual({ collective: 0.12, rate: 0 });
    const curve = pilot([{ from: 0, kind: "curve", times: [-1, 1], collectives: [0, 0.1] }], 0.01)(9);
    expect(curve.collective).toBeCloseTo(0.05, 12);
    expect(curve.rate).toBeCloseTo(0.05, 9);
    // A move that takes its time begins where the flight does.
    const moving = pilot([{ from: 0, kind: "hold", collective: 0.12, over: 0.7 }], 0.05)(9);
    expect(moving.collective).toBe(0.05);
    expect(moving.rate).toBeCloseTo(0.1, 9);
  });
});
