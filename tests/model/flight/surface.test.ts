import { describe, expect, it } from "vitest";
import type { FlightMachine } from "#model/flight/machine";
import { createPlant } from "#model/flight/plant";
import type { RotorMap } from "#model/flight/rotor-map";
import { mapOfLoad, tailTorqueOf } from "#model/flight/rotor-map";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { rotorSurface } from "#model/flight/surface";
import { rotorLoad } from "#model/rotor/load";
import { sections } from "#model/rotor/section";
import { mainRotor, sample } from "./sample.ts";

const rpm = Math.PI / 30;
const tables = () => rotorSurface(mainRotor, sample.tail, 0.5, sample.airDensity, 320)!;

/** Thrust and shaft torque of a flight's rotor with its inflow settled, beside the steady rotor's. */
function both(machine: FlightMachine, speed: number, collective: number, climb: number) {
  const y = startState(machine, { speed, collective, height: 0, climb });
  const plant = createPlant(machine)!;
  const dy = new Float64Array(at.SIZE);
  plant.now[at.COLLECTIVE] = collective;
  let [low, high] = [-30, 30];
  for (let i = 0; i < 60; i++) {
    y[at.INFLOW] = (low + high) / 2;
    plant.derivative(y, dy);
    if (dy[at.INFLOW]! > 0) low = y[at.INFLOW]!;
    else high = y[at.INFLOW]!;
  }
  const { map } = machine.rotor;
  const torque = map.torque(speed, collective, climb);
  return {
    thrust: [plant.now[at.THRUST]!, map.thrust(speed, collective, climb)] as const,
    load: [plant.now[at.LOAD]!, torque + machine.tail!(torque, speed)] as const,
  };
}

/** Largest difference over these collectives, as shares of the steady rotor's figures at full pitch. */
function worst(machine: FlightMachine, speed: number, climb: number, from: number): { thrust: number; load: number } {
  const { map } = machine.rotor;
  const full = { thrust: map.thrust(speed, 0.2, 0), load: map.torque(speed, 0.2, 0) };
  const found = { thrust: 0, load: 0 };
  for (let collective = from; collective < 0.201; collective += 0.012) {
    const { thrust, load } = both(machine, speed, collective, climb);
    // A rotor that pushes down while it climbs works in its own wake, where steady theory itself is a guess.
    if (climb > 0 && thrust[1] < 0) continue;
    found.thrust = Math.max(found.thrust, Math.abs(thrust[0] - thrust[1]) / full.thrust);
    // Past what the tail rotor can hold there is no steady figure.
    if (Number.isFinite(load[1])) found.load = Math.max(found.load, Math.abs(load[0] - load[1]) / full.load);
  }
  return found;
}

const section = sections["symmetric-12"];
const air = { density: sample.airDensity, viscosity: 1.8e-5, soundSpeed: 343 };
const blades = rotorLoad({ blades: 2, radius: 0.5, rootCutout: 0.08, chordRoot: 0.04, chordTip: 0.04, section }, air);
const tail = rotorLoad({ blades: 2, radius: 0.091, rootCutout: 0.02, chordRoot: 0.02, chordTip: 0.02, section }, air);
/** The sample with blade element rotors in place of the closed form. */
const bladed: FlightMachine = {
  ...sample,
  rotor: { ...sample.rotor, map: mapOfLoad(blades) },
  tail: tailTorqueOf({ rotor: tail, arm: 0.59, ratio: 4.5 }),
};

describe("unsteady rotor from a steady one", () => {
  it.each([
    ["in closed form", sample],
    ["by blade elements", bladed],
  ])("is the steady rotor %s in hover and climb, within 0.5 % of full pitch", (_, machine) => {
    for (const speed of [1200 * rpm, 1700 * rpm, 2100 * rpm, 2600 * rpm]) {
      for (const climb of [0, 2, 5, 9]) {
        const { thrust, load } = worst(machine, speed, climb, climb > 0 ? 0.04 : -0.2);
        expect(thrust).toBeLessThan(5e-3);
        expect(load).toBeLessThan(5e-3);
      }
    }
  });

  it("shows in a punch more thrust than the new pitch holds, as a rotor whose inflow stands still", () => {
    // Closed form with the inflow of a hover at 0.08 rad and the pitch of 0.14: C_T = sigma a / 2 (A theta - B lambda).
    const speed = 2100 * rpm;
    const y = startState(sample, { speed, collective: 0.08, height: 0, climb: 0 });
    const plant = createPlant(sample)!;
    plant.now[at.COLLECTIVE] = 0.14;
    plant.derivative(y, new Float64Array(at.SIZE));
    const tip = speed * 0.5;
    const x = 0.08 / 0.5;
    const lift = ((2 * 0.04) / (Math.PI * 0.5)) * (5.73 / 2);
    const ct = lift * (((1 - x ** 3) / 3) * 0.14 - ((1 - x ** 2) / 2) * (y[at.INFLOW]! / tip));
    expect(plant.now[at.THRUST]! / (ct * sample.airDensity * Math.PI * 0.25 * tip * tip)).toBeCloseTo(1, 3);
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
    const tail = (torque: number) => (Math.abs(torque) > most ? Number.NaN : 0.1 * torque);
    const surface = rotorSurface(mainRotor, tail, 0.5, 1.2, 300)!;
    expect(surface.tail.every(Number.isFinite)).toBe(true);
    // To both ends of the table, at every speed: a tenth of the main torque.
    const highest = surface.tailFrom + 128 / surface.tailCells;
    for (let j = 0; j < surface.speeds.length; j++) {
      const [a, b, c, d] = surface.tail.slice((j * 128 + 127) * 4, (j * 128 + 128) * 4);
      expect((a! + b! + c! + d!) / (0.1 * highest)).toBeCloseTo(1, 9);
      expect(surface.tail[j * 128 * 4]! / (0.1 * surface.tailFrom)).toBeCloseTo(1, 9);
    }
  });

  it("is not made where the tail's torque has a gap", () => {
    const gap = (torque: number) => (Math.abs(torque - 1) < 0.4 ? Number.NaN : 0.1 * Math.abs(torque));
    expect(rotorSurface(mainRotor, gap, 0.5, 1.2, 300)).toBeNull();
  });

  /** Thrust that rises with the square of the collective, whatever the climb. */
  const still = (steepness: number): RotorMap => ({
    thrust: (speed, collective) =>
      steepness * 1.2 * Math.PI * 0.25 * (speed * 0.5) ** 2 * collective * Math.abs(collective),
    torque: () => 0.1,
  });

  it("takes blade element theory's shift where the map's climb gives no sense", () => {
    expect(rotorSurface(still(0.05), null, 0.5, 1.2, 300)).toMatchObject({ shift: 1.5, inducedFactor: 1 });
  });

  it("is not made where the inflow outruns the collective", () => {
    expect(rotorSurface(still(0.05), null, 0.5, 1.2, 300)).not.toBeNull();
    // Inflow of sqrt(C_T / 2) = 1.6 x collective: the blade angle falls as the collective rises.
    expect(rotorSurface(still(5), null, 0.5, 1.2, 300)).toBeNull();
  });

  it("has thrust that falls on with the collective in a climb, far below what a climb needs", () => {
    const plant = createPlant(sample)!;
    const y = startState(sample, { speed: 220, collective: 0.1, height: 0, climb: 8 });
    const thrusts = Array.from({ length: 40 }, (_, i) => {
      plant.now[at.COLLECTIVE] = -0.2 + 0.01 * i;
      plant.derivative(y, new Float64Array(at.SIZE));
      return plant.now[at.THRUST]!;
    });
    // Blade elements at a fixed inflow: straight in the collective, so even steps; less even only where the rotor enters its own wake.
    const steps = thrusts.slice(1).map((thrust, i) => thrust - thrusts[i]!);
    const usual = steps[35]!;
    for (const [i, step] of steps.entries()) expect(step / usual).toBeGreaterThan(i < 20 || i > 30 ? 0.9 : 0.2);
  });
});
