import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { motorCurrent, torqueConstant } from "#model/motor";
import {
  ceilingSpeed,
  currentAtLoad,
  currentForTorque,
  dutyAsked,
  dutyToHold,
  operatingPoint,
  type Powertrain,
  packCurrent,
  voltageToHold,
} from "#model/powertrain";

/** Kv 1000, 22.2 V stiff, 0.03 ohm, 1.5 A, 9:1, mesh 0.96. */
const stiff: Powertrain = {
  openVoltage: 22.2,
  packResistance: 0,
  torqueConstant: torqueConstant({ speedConstant: 1000 * rpm }),
  motorResistance: 0.03,
  controllerResistance: 0,
  noLoadCurrent: 1.5,
  gearRatio: 9,
  meshEfficiency: 0.96,
};
const soft = { ...stiff, packResistance: 0.02 };
const speed = 2000 * rpm;
/** Torque of a rotor that takes 1e-4 w². */
const torque = 1e-4 * speed * speed;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const torques = fc.oneof(fc.constant(0), number(1e-3, 12));
const trains = fc.record({
  openVoltage: number(7, 60),
  packResistance: number(0, 0.06),
  torqueConstant: number(0.003, 0.03),
  motorResistance: number(0.005, 0.1),
  controllerResistance: number(0, 0.01),
  noLoadCurrent: number(0.01, 4),
  gearRatio: number(4, 15),
  meshEfficiency: number(0.85, 1),
});

describe("duty that holds a speed", () => {
  it("is the closed form's behind a stiff pack", () => {
    // D = (k w + I R) / V, closed form: 54.6658 A and 0.884683472084.
    expect(Math.abs(currentForTorque(stiff, torque) - 54.66577)).toBeLessThan(1e-4);
    expect(Math.abs(dutyAsked(stiff, speed, torque)! / 0.884683472084 - 1)).toBeLessThan(1e-11);
  });

  it("is the smaller root behind a soft one", () => {
    // D² Rp I - D V + (k w + I R) = 0, closed form: 0.927004496028.
    expect(Math.abs(dutyAsked(soft, speed, torque)! / 0.927004496028 - 1)).toBeLessThan(1e-9);
  });

  it("draws the current of the averaged chopper", () => {
    fc.assert(
      fc.property(trains, number(20, 250), torques, (train, w, q) => {
        const duty = dutyAsked(train, w, q);
        if (duty === null) return;
        const current = motorCurrent({ ...train, duty, motorSpeed: w * train.gearRatio });
        const wanted = currentForTorque(train, q);
        // The current is a small difference of two voltages, so it is compared as a voltage.
        const resistance = train.motorResistance + train.controllerResistance + duty ** 2 * train.packResistance;
        expect(Math.abs(current - wanted) * resistance).toBeLessThan(1e-11 * (train.openVoltage * duty + wanted));
      }),
    );
  });

  it("rises with speed and torque, and falls with voltage", () => {
    fc.assert(
      fc.property(trains, number(20, 250), torques, (train, w, q) => {
        const duty = dutyAsked(train, w, q);
        if (duty === null) return;
        expect(dutyAsked(train, w * 0.99, q)!).toBeLessThan(duty);
        expect(dutyAsked(train, w, q - 0.01)!).toBeLessThanOrEqual(duty);
        expect(dutyAsked({ ...train, openVoltage: train.openVoltage + 0.1 }, w, q)!).toBeLessThan(duty);
      }),
    );
  });

  it("doesn't exist when the pack can't give the power", () => {
    expect(dutyAsked({ ...soft, packResistance: 2 }, speed, torque)).toBeNull();
    expect(dutyAsked({ ...stiff, openVoltage: 0 }, speed, torque)).toBeNull();
    expect(operatingPoint({ ...soft, packResistance: 2 }, speed, torque)).toBeNull();
    expect(operatingPoint(stiff, 2600 * rpm, torque)).toBeNull();
    expect(dutyAsked(stiff, 2600 * rpm, torque)).toBeGreaterThan(1);
  });
});

describe("lowest voltage that holds a speed", () => {
  it("is the border between held and not", () => {
    fc.assert(
      fc.property(trains, number(20, 250), number(0, 30), (train, w, q) => {
        const volts = voltageToHold(train, w, q);
        expect(operatingPoint({ ...train, openVoltage: volts * (1 + 1e-6) }, w, q)).not.toBeNull();
        expect(operatingPoint({ ...train, openVoltage: volts * (1 - 1e-6) }, w, q)).toBeNull();
      }),
    );
  });
});

describe("an operating point", () => {
  it("balances: power in is power out and heat", () => {
    fc.assert(
      fc.property(trains, number(20, 250), torques, (train, w, q) => {
        const p = operatingPoint(train, w, q);
        if (p === null) return;
        const heat = p.packHeat + p.controllerHeat + p.copperHeat + p.noLoadHeat + p.meshHeat;
        expect(Math.abs(p.sourcePower - p.outputPower - heat)).toBeLessThan(1e-12 * p.sourcePower + 1e-12);
        expect(p.outputPower).toBeCloseTo(q * w, 8);
        for (const share of [p.motorEfficiency, p.chainEfficiency, p.duty]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1 + 1e-9);
        }
        expect(p.packVoltage * p.packCurrent).toBeCloseTo(p.sourcePower - p.packHeat, 8);
        expect(p.chainEfficiency).toBeLessThanOrEqual(p.motorEfficiency + 1e-12);
      }),
    );
  });

  it("of a rotor that runs ahead takes the no-load current only", () => {
    const p = operatingPoint(stiff, speed, -3)!;
    expect(p.motorCurrent).toBe(1.5);
    expect([p.torque, p.outputPower, p.meshHeat]).toEqual([0, 0, 0]);
  });
});

describe("what a worked number shows", () => {
  it("is what the solver found", () => {
    const p = operatingPoint(soft, speed, torque)!;
    const { torqueConstant: k, motorResistance: resistance } = soft;
    expect(currentAtLoad({ ...soft, torque })).toBeCloseTo(p.motorCurrent, 10);
    const emf = k * p.motorSpeed;
    expect(dutyToHold({ ...soft, current: p.motorCurrent, emf, resistance })).toBeCloseTo(p.duty, 12);
    expect(packCurrent({ duty: p.duty, current: p.motorCurrent })).toBeCloseTo(p.packCurrent, 12);
    expect(dutyToHold.general).toBe("D^2 \\times R_p \\times I - D \\times V_o + k\\omega + I \\times R = 0");
    // At the voltage that just holds the speed, this speed is the ceiling.
    const openVoltage = voltageToHold(soft, speed, torque);
    const ceiling = { ...soft, openVoltage, current: p.motorCurrent, resistance: resistance + soft.packResistance };
    expect(ceilingSpeed({ ...ceiling, speedConstant: 1 / k })).toBeCloseTo(speed, 9);
  });
});
