import { describe, expect, it } from "vitest";
import { createPlant } from "#model/flight/plant";
import type { RotorMap } from "#model/flight/rotor-map";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { rotorSurface } from "#model/flight/surface";
import { mainRotor, sample } from "./sample.ts";

const rpm = Math.PI / 30;
const tables = () => rotorSurface(mainRotor, sample.tail, 0.5, sample.airDensity, 320)!;

/** Thrust and shaft torque of the flight's rotor with the inflow settled, beside the steady rotor's. */
function both(speed: number, collective: number, climb: number) {
  const y = startState(sample, { speed, collective, height: 0, climb });
  const plant = createPlant(sample)!;
  plant.now[at.COLLECTIVE] = collective;
  plant.derivative(y, new Float64Array(at.SIZE));
  const torque = mainRotor.torque(speed, collective, climb);
  return {
    thrust: [plant.now[at.THRUST]!, mainRotor.thrust(speed, collective, climb)] as const,
    load: [plant.now[at.LOAD]!, torque + sample.tail!(torque, speed)] as const,
  };
}

describe("unsteady rotor from a steady one", () => {
  it("is the steady rotor in hover, within 0.1 % of full pitch", () => {
    for (const speed of [900 * rpm, 1700 * rpm, 2100 * rpm, 2600 * rpm]) {
      const full = both(speed, 0.2, 0);
      for (let collective = -0.2; collective < 0.201; collective += 0.01) {
        const { thrust, load } = both(speed, collective, 0);
        expect(Math.abs(thrust[0] - thrust[1])).toBeLessThan(1e-3 * full.thrust[1]);
        expect(Math.abs(load[0] - load[1])).toBeLessThan(1e-3 * full.load[1]);
      }
    }
  });

  it("is the steady rotor in a climb, within 0.5 % of full pitch", () => {
    const speed = 2100 * rpm;
    const full = both(speed, 0.2, 0);
    for (const collective of [0.08, 0.12, 0.16, 0.2]) {
      for (const climb of [1, 3, 6]) {
        const { thrust, load } = both(speed, collective, climb);
        expect(Math.abs(thrust[0] - thrust[1])).toBeLessThan(5e-3 * full.thrust[1]);
        expect(Math.abs(load[0] - load[1])).toBeLessThan(5e-3 * full.load[1]);
      }
    }
  });

  // Blade element theory with a root cut-out x: lambda counts 3/2 (1 - x^2) / (1 - x^3) against the collective; the rotor
  // behind it has an induced factor of 1.15. Gessow and Myers, Aerodynamics of the Helicopter (1952), ch. 4.
  it("finds how inflow counts from the map's climb", () => {
    const x = 0.08 / 0.5;
    expect(tables().shift).toBeCloseTo((1.5 * (1 - x ** 2)) / (1 - x ** 3), 4);
    expect(tables().inducedFactor).toBeCloseTo(1.15, 4);
  });

  it("is made once for a rotor, whatever motor turns it", () => {
    const one = tables();
    expect(rotorSurface(mainRotor, sample.tail, 0.5, sample.airDensity, 325)).toBe(one);
    expect(rotorSurface(mainRotor, sample.tail, 0.5, 1.1, 320)).not.toBe(one);
  });

  it("is not made from a map that gives no number", () => {
    const broken: RotorMap = { thrust: () => 1, torque: (_, collective) => (collective > 0.3 ? Number.NaN : 1) };
    expect(rotorSurface(broken, null, 0.5, 1.2, 300)).toBeNull();
    expect(rotorSurface(mainRotor, () => Number.NaN, 0.5, 1.2, 300)).toBeNull();
  });

  it("goes on straight where the tail can't hold", () => {
    const most = 3;
    const tail = (torque: number) => (Math.abs(torque) > most ? Number.NaN : 0.1 * Math.abs(torque));
    const surface = rotorSurface(mainRotor, tail, 0.5, 1.2, 300)!;
    expect(surface.tail.every(Number.isFinite)).toBe(true);
  });
});
