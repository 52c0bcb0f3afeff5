import { describe, expect, it } from "vitest";
import { rotorsOf } from "#figures/rotors";
import { partsOf } from "#machine/parts";
import { airAt } from "#model/air";
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
    const { main } = rotorsOf(parts, air);
    const speed = 960 * rpm;
    const state = { speed, collective: (pitch * Math.PI) / 180 };
    const unit = air.density * Math.PI * 0.762 ** 2 * (speed * 0.762) ** 2;
    expect(Math.abs(main.thrustAt(state) / unit / ct - 1)).toBeLessThan(0.2);
    expect(Math.abs(main.torqueAt(state) / unit / 0.762 / cq - 1)).toBeLessThan(0.2);
  });

  it("are in the air of the place: thrust goes with density", () => {
    const parts = partsOf(machineWith({}));
    const state = { speed: 200, collective: 0.1 };
    const [low, high] = [0, 3000].map((elevation) => {
      const air = airAt({ elevation, temperature: 288.15, humidity: 0 });
      return rotorsOf(parts, air).main.thrustAt(state) / air.density;
    });
    // At the same tip speed thrust is CT rho A (omega R)²; Reynolds and Mach number move CT a little.
    expect(high! / low!).toBeCloseTo(1, 1);
  });

  it("have the tail of the record: its own blades, arm and ratio", () => {
    const parts = partsOf(machineWith({ "tailRotor.armMm": 600, "gears.tailRatio": 5 }));
    const { tail } = rotorsOf(parts, airAt(parts.place));
    expect([tail.arm, tail.ratio]).toEqual([0.6, 5]);
    const larger = partsOf(machineWith({ "tailRotor.diameterMm": 220 }));
    const task = { speed: 1000, thrust: 4 };
    const of = (each: typeof parts) =>
      rotorsOf(each, airAt(each.place)).tail.rotor.collectiveForThrust(task) ?? Number.NaN;
    expect(of(larger)).toBeLessThan(of(parts));
  });
});
