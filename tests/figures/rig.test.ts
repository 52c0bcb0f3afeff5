import { describe, expect, it } from "vitest";
import { rigOf } from "#figures/rig";
import { defaultMachine } from "#machine/machine";
import { machineWith, standardPlace } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

describe("a rig", () => {
  const rig = rigOf(defaultMachine);

  it("is the machine in SI", () => {
    // By definition of the units: 2.05 kg on the standard fall, 970 mm across, 1120 rpm/V.
    expect(rig.weight).toBeCloseTo(2.05 * 9.80665, 12);
    expect(rig.parts.mainRotor.radius).toBeCloseTo(0.485, 12);
    expect(rig.train.torqueConstant).toBeCloseTo(60 / (2 * Math.PI * 1120), 12);
    expect(rig.train.controllerResistance).toBeCloseTo(0.0025, 12);
    expect(rig.train.noLoadCurrent).toBe(2.4);
    expect(rig.ratio).toBeCloseTo(120 / 13, 12);
    expect(rig.tail.ratio).toBe(4.6);
    expect(rig.tail.arm).toBeCloseTo(0.59, 12);
  });

  it("has the torque constant of the identity Kt = 60 / (2 pi Kv): 0.009549296586 N m/A at 1000 rpm/V", () => {
    // M. Drela, First-Order DC Electric Motor Model, MIT (2007).
    expect(rigOf(machineWith({ "motor.kvRpmPerVolt": 1000 })).train.torqueConstant).toBeCloseTo(0.009549296586, 12);
  });

  it("changes nothing but the voltage with the charge", () => {
    const { openVoltage, ...rest } = rig.trainAt(0.5);
    expect({ ...rest, openVoltage: rig.train.openVoltage }).toEqual(rig.train);
    expect(openVoltage).toBe(rig.voltageAt(0.5));
    expect(openVoltage).toBeLessThan(rig.voltageAt(0.6));
    expect(rig.voltageAt(1)).toBeCloseTo(25.2, 12);
  });

  it("loses a share in every pair of gears", () => {
    const two = rigOf(machineWith({ "gears.secondStage": { driverTeeth: 20, drivenTeeth: 40 } }));
    expect(rig.train.meshEfficiency).toBe(0.965);
    expect(two.train.meshEfficiency).toBeCloseTo(0.965 * 0.965, 12);
    expect(two.ratio).toBeCloseTo(240 / 13, 12);
  });

  it("has blades of the inertia m (R² + R r + r²) / 3 when they are uniform", () => {
    // OpenStax College Physics, section 10.3, for a rod; parallel axes.
    const uniform = rigOf(machineWith({ "mainRotor.rootCutoutMm": 85, "mainRotor.bladeCentreMm": 285 }));
    expect(uniform.bladeInertia).toBeCloseTo((0.076 * (0.485 ** 2 + 0.485 * 0.085 + 0.085 ** 2)) / 3, 12);
  });

  it("hovers in the air of its place", () => {
    expect(rigOf(machineWith(standardPlace)).air.soundSpeed).toBeCloseTo(340.294, 3);
  });
});

describe("loads", () => {
  const rig = rigOf(defaultMachine);
  const speed = 2100 * rpm;

  it("hover carries the weight and turns the tail that holds the torque", () => {
    const main = rig.main.torqueForThrust({ speed, thrust: rig.weight })!;
    // Balance of torques, by definition: the tail's thrust on its arm holds the main rotor.
    const tail = rig.tail.rotor.torqueForThrust({ speed: speed * 4.6, thrust: main / 0.59 })!;
    // Between the solved points of a load lies a curve: 5e-5 of the torque.
    expect(rig.load("hover", 0)(speed)! / (main + 4.6 * tail)).toBeCloseTo(1, 4);
    expect(rig.load("hover", 2)).toBe(rig.load("hover", 0));
  });

  it("full pitch is each mode's own", () => {
    const main = rig.main.torqueAt({ speed, collective: (10 * Math.PI) / 180 });
    const tail = rig.tail.rotor.torqueForThrust({ speed: speed * 4.6, thrust: main / 0.59 })!;
    expect(rig.load("full-pitch", 1)(speed)! / (main + 4.6 * tail)).toBeCloseTo(1, 4);
    const torques = [0, 1, 2].map((mode) => rig.load("full-pitch", mode)(speed)!);
    expect(torques).toEqual([...torques].sort((a, b) => a - b));
    expect(torques[0]).toBeLessThan(torques[2]!);
  });

  it("flat pitch is only drag", () => {
    expect(rig.flat(speed)).toBeGreaterThan(0);
    expect(rig.flat(speed)).toBeLessThan(rig.load("hover", 0)(speed)!);
  });
});

describe("a doubt about the model", () => {
  it("adds to every cell's voltage", () => {
    const doubted = rigOf(defaultMachine, { cellVoltage: 0.01 });
    expect(doubted.train.openVoltage).toBeCloseTo(25.2 + 6 * 0.01, 12);
    expect(doubted.voltageAt(0.5)).toBeCloseTo(rigOf(defaultMachine).voltageAt(0.5) + 0.06, 12);
  });

  it("scales the torque of every load", () => {
    const [plain, doubted] = [rigOf(defaultMachine), rigOf(defaultMachine, { rotorTorque: 1.05 })];
    const speed = 2100 * rpm;
    expect(doubted.load("hover", 0)(speed)! / plain.load("hover", 0)(speed)!).toBeCloseTo(1.05, 12);
    expect(doubted.load("full-pitch", 1)(speed)! / plain.load("full-pitch", 1)(speed)!).toBeCloseTo(1.05, 12);
    expect(doubted.flat(speed)! / plain.flat(speed)!).toBeCloseTo(1.05, 12);
    expect(doubted.load("hover", 0)(10 * rpm)).toBeNull();
  });
});
