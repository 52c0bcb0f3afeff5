import { describe, expect, it } from "vitest";
import { CHATTERS, createTicker, DONE } from "#model/flight/clutch";
import { createPlant } from "#model/flight/plant";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { sample } from "./sample.ts";

/** Equations in which an engaged clutch has to pull by so many N m, while a loose motor runs ahead of the rotor. */
function pulling(torque: number) {
  const plant = createPlant(sample)!;
  const stubborn = {
    ...plant,
    derivative: (y: Float64Array, dy: Float64Array) => {
      plant.derivative(y, dy);
      if (plant.mode[0] === 0) dy[at.MOTOR] = 9 * dy[at.ROTOR]! + 10;
      plant.now[at.CLUTCH] = torque;
    },
  };
  const ticker = createTicker(stubborn, 0.001)!;
  const y = startState(sample, { speed: 220, collective: 0.09, height: 9, climb: 0 });
  plant.mode[1] = 1;
  return { plant, ticker, y };
}

describe("a clutch whose torque only touches zero", () => {
  // By definition of a rigid clutch: what turns at one speed and is pushed to go on so stays together.
  it("keeps motor and rotor together through that moment", () => {
    const { plant, ticker, y } = pulling(-1e-5);
    for (let i = 0; i < 50; i++) expect(ticker.tick(y)).toBe(DONE);
    expect(plant.mode[0]).toBe(1);
    expect(y[at.MOTOR]! / (9 * y[at.ROTOR]!)).toBeCloseTo(1, 9);
  });

  it("chatters only where it would have to pull in earnest", () => {
    const { ticker, y } = pulling(-1);
    expect(ticker.tick(y)).toBe(CHATTERS);
  });
});
