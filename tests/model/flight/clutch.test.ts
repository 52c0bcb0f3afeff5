import { describe, expect, it } from "vitest";
import { createTicker, DONE } from "#model/flight/clutch";
import { createPlant } from "#model/flight/plant";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { sample, withParts } from "./sample.ts";

const speed = 220;
const start = { speed, collective: 0.08, height: 10, climb: 0 };

function begin(machine = sample, length = 0.001) {
  const plant = createPlant(machine)!;
  const ticker = createTicker(plant, length)!;
  const y = startState(machine, start);
  plant.mode[1] = 1;
  plant.now[at.COLLECTIVE] = start.collective;
  return { plant, ticker, y };
}

describe("one-way clutch", () => {
  it("lets the rotor go as soon as the motor would have to be pulled, and takes it when the motor has caught up", () => {
    const { plant, ticker, y } = begin();
    plant.now[at.COLLECTIVE] = 0;
    plant.now[at.DUTY] = 0;
    for (let i = 0; i < 200; i++) expect(ticker.tick(y)).toBe(DONE);
    expect(plant.mode[0]).toBe(0);
    expect(ticker.changes[0]).toBe(1);
    expect(y[at.MOTOR]!).toBeLessThan(9 * y[at.ROTOR]!);
    plant.now[at.DUTY] = 0.75;
    for (let i = 0; i < 200; i++) ticker.tick(y);
    expect(plant.mode[0]).toBe(1);
    expect(ticker.changes[0]).toBe(2);
    expect(y[at.MOTOR]).toBeCloseTo(9 * y[at.ROTOR]!, 9);
  });

  it("never lets the motor run ahead of the rotor", () => {
    const { plant, ticker, y } = begin(sample, 0.002);
    plant.now[at.COLLECTIVE] = 0;
    let most = 0;
    for (let i = 0; i < 3000; i++) {
      plant.now[at.DUTY] = 0.4 + 0.4 * Math.sin(i / 37);
      ticker.tick(y);
      most = Math.max(most, y[at.MOTOR]! - 9 * y[at.ROTOR]!);
    }
    expect(ticker.changes[0]).toBeGreaterThan(10);
    expect(most).toBeLessThan(1e-6);
  });

  it("meets its moment within a step: the same end whatever the ticks", () => {
    const end = (length: number) => {
      const { plant, ticker, y } = begin(sample, length);
      plant.now[at.DUTY] = 0.75;
      plant.mode[0] = 0;
      y[at.MOTOR] = 0.3 * y[at.MOTOR]!;
      for (let i = 0; i < Math.round(0.2 / length); i++) ticker.tick(y);
      expect(ticker.changes[0]).toBe(1);
      return y;
    };
    const [fine, coarse] = [end(0.0001), end(0.004)];
    expect(coarse[at.ROTOR]! / fine[at.ROTOR]!).toBeCloseTo(1, 6);
    expect(coarse[at.COPPER_HEAT]! / fine[at.COPPER_HEAT]!).toBeCloseTo(1, 4);
  });

  it("takes more steps where the motor turns alone, and refuses a motor that no step can follow", () => {
    const { ticker } = begin(withParts({ motor: { inertia: 1e-6 } }), 0.002);
    expect(ticker.steps[1]).toBeGreaterThan(10 * ticker.steps[0]);
    expect(createTicker(createPlant(withParts({ motor: { inertia: 1e-9 } }))!, 0.002)).toBeNull();
  });

  it("follows a light motor that turns alone as closely as finer ticks do", () => {
    const machine = withParts({ motor: { inertia: 2e-6 } });
    const end = (length: number) => {
      const { plant, ticker, y } = begin(machine, length);
      plant.mode[0] = 0;
      y[at.MOTOR] = 0.2 * y[at.MOTOR]!;
      // Still on its way when it is looked at: its time constant is some 2 ms.
      plant.now[at.DUTY] = 0.5;
      for (let i = 0; i < Math.round(0.002 / length); i++) ticker.tick(y);
      expect(ticker.changes[0]).toBe(0);
      return y;
    };
    const [fine, coarse] = [end(0.00002), end(0.002)];
    expect(coarse[at.MOTOR]! / fine[at.MOTOR]!).toBeCloseTo(1, 4);
  });
});
