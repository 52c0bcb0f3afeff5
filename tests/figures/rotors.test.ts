import { describe, expect, it } from "vitest";
import { tabulated } from "#figures/loads";
import { rotorsOf } from "#figures/rotors";
import type { Machine } from "#machine/machine";
import { partsOf } from "#machine/parts";
import { airAt } from "#model/air";
import { thrustLoad } from "#model/rotor-load";
import { machineWith, standardPlace } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

describe("the rotors of a machine", () => {
  // Knight and Hefner, NACA TN 626 (1937), tables I and II: R 0.762 m, chord 0.0508 m, NACA 0015, 960 rpm. Blades, pitch
  // in degrees, CT and CQ on the full dynamic head.
  it.each([
    [2, 6, 0.00221, 0.000158],
    [2, 8, 0.00325, 0.000247],
    [2, 10, 0.004235, 0.0003455],
    [3, 6, 0.00274, 0.000237],
    [3, 8, 0.004165, 0.0003675],
    [3, 10, 0.005625, 0.000524],
  ])("%i blades at %i degrees: thrust and torque of a published test within 20 %%", (blades, pitch, ct, cq) => {
    const machine = machineWith({
      ...standardPlace,
      "mainRotor.blades": blades,
      "mainRotor.diameterMm": 1524,
      "mainRotor.chordMm": 50.8,
      "mainRotor.rootCutoutMm": 120,
      "mainRotor.bladeCentreMm": 400,
      "mainRotor.bladeSection": "symmetric-15",
    });
    const parts = partsOf(machine);
    const air = airAt(parts.place);
    const { main } = rotorsOf(machine, parts, air);
    const speed = 960 * rpm;
    const state = { speed, collective: (pitch * Math.PI) / 180 };
    const unit = air.density * Math.PI * 0.762 ** 2 * (speed * 0.762) ** 2;
    expect(Math.abs(main.thrustAt(state) / unit / ct - 1)).toBeLessThan(0.2);
    expect(Math.abs(main.torqueAt(state) / unit / 0.762 / cq - 1)).toBeLessThan(0.2);
  });

  it("are in the air of the place: thrust goes with density", () => {
    const state = { speed: 200, collective: 0.1 };
    const [low, high] = [0, 3000].map((elevation) => {
      const machine = machineWith({
        "place.elevationM": elevation,
        "place.temperatureC": 15,
        "place.humidityPercent": 0,
      });
      const parts = partsOf(machine);
      const air = airAt(parts.place);
      return rotorsOf(machine, parts, air).main.thrustAt(state) / air.density;
    });
    // At the same tip speed thrust is CT rho A (omega R)²; Reynolds and Mach number move CT a little.
    expect(high! / low!).toBeCloseTo(1, 1);
  });

  it("have the tail of the record: its own blades, arm and ratio", () => {
    const rotors = (machine: Machine) => {
      const parts = partsOf(machine);
      return rotorsOf(machine, parts, airAt(parts.place));
    };
    const machine = machineWith({ "tailRotor.armMm": 600, "gears.tailRatio": 5 });
    const { tail } = rotors(machine);
    expect([tail.arm, tail.ratio]).toEqual([0.6, 5]);
    const larger = machineWith({ "tailRotor.diameterMm": 220 });
    const task = { speed: 1000, thrust: 4 };
    const of = (each: Machine) => rotors(each).tail.rotor.collectiveForThrust(task) ?? Number.NaN;
    expect(of(larger)).toBeLessThan(of(machine));
  });
});

describe("a load as a table", () => {
  it("gives what the load itself gives, within 1e-5, and asks it seldom", () => {
    const machine = machineWith({});
    const parts = partsOf(machine);
    const { main, tail } = rotorsOf(machine, parts, airAt(parts.place));
    let asked = 0;
    const exact = thrustLoad(main, tail, 20);
    const table = tabulated((speed) => {
      asked++;
      return exact(speed);
    });
    for (let speed = 150; speed < 300; speed += 0.7) {
      expect(Math.abs(table(speed)! / exact(speed)! - 1)).toBeLessThan(1e-5);
    }
    expect(asked).toBeLessThan(45);
  });

  it("asks for nothing below a speed at which the rotor stalls", () => {
    let asked = 0;
    const table = tabulated((speed) => {
      asked++;
      return speed < 100 || speed > 1000 ? null : speed * speed;
    });
    // A speed that is too high for the load says nothing of lower ones.
    expect(table(1200)).toBeNull();
    expect(table(500)).toBeCloseTo(500 * 500, 6);
    expect(table(90)).toBeNull();
    asked = 0;
    for (const speed of [80, 50, 20, 1]) expect(table(speed)).toBeNull();
    expect(asked).toBe(0);
    expect(table(103)).toBeCloseTo(103 * 103, 9);
  });

  it("has nothing to give where the rotor stalls, and a straight line beside that", () => {
    const table = tabulated((speed) => (speed < 100 ? null : speed * speed));
    expect(table(50)).toBeNull();
    expect(table(103)).toBeCloseTo(103 * 103, 9);
    expect(table(0)).toBeNull();
  });
});
