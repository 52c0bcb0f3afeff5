import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { clubTrainer, demos } from "#machine/demos";
import { fieldAt, fields } from "#machine/fields";
import { defaultMachine, machineSchema } from "#machine/machine";
import { partsOf } from "#machine/parts";
import { valueAt } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { packVoltage, voltageLimits } from "#machine/voltage";
import { airAt } from "#model/air";
import { rpm } from "#model/constants";
import { ratioOf } from "#model/gears";
import { copperResistance } from "#model/motor";
import { operatingPoint, type Powertrain } from "#model/powertrain";
import { pitchLoad, type Tail, thrustLoad } from "#model/rotor-load";
import { ceilingAt, learningSpeed } from "#model/steady";
import { closedRotor } from "../model/oracle/closed-rotor.ts";

const rows = demos.map((machine) => [machine.name, machine] as const);

/** A demo machine as the model's chain and rotors, put together here from the machine's parts alone. */
function built(machine: (typeof demos)[number]) {
  const { pack, motor, controller, gears, mainRotor, tailRotor, airframe, place } = partsOf(machine);
  const { density } = airAt(place);
  const main = closedRotor({ ...mainRotor, density });
  const tail: Tail = {
    rotor: closedRotor({ ...tailRotor, rootCutout: 0.2 * tailRotor.radius, density }),
    arm: tailRotor.arm,
    ratio: gears.tailRatio,
  };
  const train: Powertrain = {
    openVoltage: packVoltage(machine),
    packResistance: pack.cells * pack.cellResistance + pack.leadResistance,
    torqueConstant: 1 / motor.speedConstant,
    motorResistance: copperResistance(motor.resistance, motor.windingTemperature),
    controllerResistance: controller.resistance,
    noLoadCurrent: motor.noLoadCurrent,
    gearRatio: ratioOf(gears),
    meshEfficiency: gears.meshEfficiency,
  };
  return { main, tail, train, weight: airframe.mass * 9.80665 };
}

describe("demo machines", () => {
  it("have the default machine in front, and names of their own", () => {
    expect(demos[0]).toBe(clubTrainer);
    expect(clubTrainer).toBe(defaultMachine);
    expect(new Set(demos.map((machine) => machine.name)).size).toBe(demos.length);
    expect(demos.map((machine) => machine.pack.cells)).toEqual([6, 3, 12]);
  });

  it.each(rows)("%s is valid, and every number of it is on its slider", (_, machine) => {
    expect(v.is(machineSchema, machine)).toBe(true);
    expect(brokenRules(machine)).toEqual([]);
    for (const { path } of fields) {
      const value = valueAt(machine, path.replace("*", "2"));
      if (typeof value !== "number") continue;
      expect(value, path).toBeGreaterThanOrEqual(fieldAt(path).low);
      expect(value, path).toBeLessThanOrEqual(fieldAt(path).high);
    }
  });

  it.each(rows)("%s has its motor, controller and blades within their limits", (_, machine) => {
    const free = machine.motor.kvRpmPerVolt * voltageLimits(machine)[1];
    expect(free).toBeLessThan(machine.motor.ratedRpm);
    expect((free * machine.motor.poles) / 2).toBeLessThan(machine.controller.electricalRpmLimit);
    for (const { headRpm } of machine.modes) expect(headRpm).toBeLessThan(0.95 * (machine.mainRotor.ratedRpm ?? 0));
  });

  // Common practice, no source: tail and main disc do not meet, the blade's centre lies half-way out, tip speeds of
  // 60 to 170 m/s, 20 to 35 N of weight for a square metre of rotor.
  it.each(rows)("%s has proportions that such machines have", (_, machine) => {
    const { mainRotor, tailRotor, airframe, modes } = partsOf(machine);
    expect(tailRotor.arm).toBeGreaterThan(mainRotor.radius + tailRotor.radius);
    expect(tailRotor.arm).toBeLessThan(1.1 * (mainRotor.radius + tailRotor.radius));
    expect(mainRotor.bladeCentre / mainRotor.radius).toBeGreaterThan(0.48);
    expect(mainRotor.bladeCentre / mainRotor.radius).toBeLessThan(0.58);
    const loading = (airframe.mass * 9.80665) / (Math.PI * mainRotor.radius ** 2);
    expect(loading).toBeGreaterThan(20);
    expect(loading).toBeLessThan(35);
    for (const { headSpeed } of modes) {
      expect(headSpeed * mainRotor.radius).toBeGreaterThan(55);
      expect(headSpeed * mainRotor.radius).toBeLessThan(170);
    }
  });

  // Common practice, no source: a reference learned at half throttle; modes between 60 and 90 % of it.
  it.each(rows)("%s has its modes in the usable band of the reference to expect", (_, machine) => {
    const { main, tail, train } = built(machine);
    const learned = learningSpeed(train, pitchLoad(main, tail, 0), 0.5);
    const reference = learned.ok ? learned.speed / 0.5 : 0;
    for (const { headSpeed } of partsOf(machine).modes) {
      expect(headSpeed / reference).toBeGreaterThan(0.6);
      expect(headSpeed / reference).toBeLessThan(0.9);
    }
  });

  // Common practice, no source: duty of hover between the mode's throttle and some points above; five to twenty minutes.
  it.each(rows)("%s hovers in every mode with room to spare, for minutes", (_, machine) => {
    const { main, tail, train, weight } = built(machine);
    for (const { headSpeed, name, collectiveMax } of partsOf(machine).modes) {
      const collective = main.collectiveForThrust({ speed: headSpeed, thrust: weight });
      const torque = thrustLoad(main, tail, weight)(headSpeed);
      const hover = torque === null ? null : operatingPoint(train, headSpeed, torque);
      expect(hover?.duty, name).toBeGreaterThan(0.55);
      expect(hover?.duty, name).toBeLessThan(0.92);
      expect(((collective ?? 0) * 180) / Math.PI, name).toBeGreaterThan(2);
      expect(((collective ?? 0) * 180) / Math.PI, name).toBeLessThan(8);
      const minutes = (0.8 * partsOf(machine).pack.capacity) / (hover?.packCurrent ?? 0) / 60;
      expect(minutes, name).toBeGreaterThan(5);
      expect(minutes, name).toBeLessThan(20);
      const ceiling = ceilingAt(train, pitchLoad(main, tail, collectiveMax));
      expect(ceiling.ok && ceiling.speed / rpm, name).toBeGreaterThan(headSpeed / rpm);
    }
  });
});
