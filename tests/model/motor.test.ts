import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromCelsius, rpm } from "#model/constants";
import {
  copperResistance,
  landmarks,
  motorCurrent,
  motorPoint,
  motorTorque,
  noLoadSpeed,
  torqueConstant,
} from "#model/motor";

const near = (value: number, expected: number, relative: number) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(relative);

describe("torque constant", () => {
  it("is 60 / (2 pi Kv)", () => {
    // Drela, First-Order DC Electric Motor Model, MIT 2007: 1000 rpm/V.
    near(torqueConstant({ speedConstant: 1000 * rpm }), 0.009549296586, 1e-9);
  });
});

describe("published machines", () => {
  it("the direct-current machine of the Modelica Standard Library", () => {
    // DC_PermanentMagnet defaults: 100 V, 100 A, 0.05 ohm, 1425 rpm; torque 63.66 Nm, 9500 W, efficiency 0.95.
    const k = 95 / (1425 * rpm);
    const point = motorPoint(100, 100, 0.05, k, 0);
    near(point.speed, 1425 * rpm, 1e-12);
    expect(Math.abs(point.torque - 63.66)).toBeLessThan(0.005);
    near(point.power, 9500, 1e-9);
    near(point.heat, 500, 1e-9);
    near(point.efficiency, 0.95, 1e-9);
  });

  it("its winding from 20 to 95 degC", () => {
    // alpha20 = 3.92e-3: 0.03864 ohm becomes 0.05 ohm.
    const warm = copperResistance(0.03864, fromCelsius(95), fromCelsius(20), 0.00392);
    expect(Math.abs(warm - 0.05)).toBeLessThan(1e-5);
  });

  it("copper by the rule of IEC 60034-1 (from memory)", () => {
    near(copperResistance(1, fromCelsius(100)), (235 + 100) / (235 + 25), 1e-3);
    expect(copperResistance(0.02, fromCelsius(25))).toBe(0.02);
  });

  it("a motor from its no-load speed and stall torque", () => {
    // University mechatronics exercise: 12 V, 3800 rpm, 0.030 Nm at stall, running at 2500 rpm.
    const k = 12 / (3800 * rpm);
    const r = (k * 12) / 0.03;
    const current = (12 - k * 2500 * rpm) / r;
    const point = motorPoint(12, current, r, k, 0);
    near(current, 0.340337, 1e-4);
    near(point.torque, 0.0102632, 1e-4);
    near(12 * current, 4.08405, 1e-4);
    near(point.power, 2.68685, 1e-4);
    near(point.heat, 1.3972, 1e-4);
  });

  it("a motor driven to find its back-emf", () => {
    // FOSSEE Scilab companion 1892, example 4.5: 120 V at 6000 rpm, 2.5 ohm; at 60 V and 0.5 Nm.
    const k = 120 / (6000 * rpm);
    near(k, 0.190986, 1e-5);
    const point = motorPoint(60, 0.5 / k, 2.5, k, 0);
    near(point.current, 2.61799, 1e-5);
    expect(Math.abs(point.speed / rpm - 2672.7)).toBeLessThan(0.1);
  });

  it("a brushless motor with a drop in its switches", () => {
    // FOSSEE Scilab companion 1892, example 4.4: 0.12 Nm/A, 48 V less 2 V, 2 x 0.15 ohm.
    const at = landmarks(46, 0.3, 0.12, 0)!;
    near(at.stall.current, 153.333, 1e-5);
    near(at.stall.torque, 18.4, 1e-9);
    // The no-load speed printed there, 3819.72 rpm, is for the whole 48 V.
    near(landmarks(48, 0.3, 0.12, 0)!.noLoad.speed / rpm, 3819.72, 1e-5);
  });

  it("currents at the start", () => {
    // OpenStax College Physics, ch. 23: 120 V, 0.720 ohm: 115 V of back-emf at 7 A, 167 A at the start; 6 V, 0.5 ohm: 12 A.
    expect(Math.abs(motorPoint(120, 7, 0.72, 1, 0).speed - 115)).toBeLessThan(0.5);
    expect(Math.abs(landmarks(120, 0.72, 0.1, 0)!.stall.current - 167)).toBeLessThan(0.5);
    near(landmarks(6, 0.5, 0.1, 0)!.stall.current, 12, 1e-12);
  });
});

describe("landmarks", () => {
  it("follow the closed forms", () => {
    // Drela (2007): 22.2 V, 0.020 ohm, 1.5 A, 1100 rpm/V.
    const k = torqueConstant({ speedConstant: 1100 * rpm });
    const at = landmarks(22.2, 0.02, k, 1.5)!;
    near(at.bestEfficiency.current, 40.8044, 1e-5);
    near(at.bestEfficiency.efficiency, 0.927829889142, 1e-9);
    near(at.bestPower.current, 555.75, 1e-6);
    near(at.stall.current, 1110, 1e-12);
    near(at.noLoad.speed / rpm, 24387, 1e-12);
    const gearless = { speedConstant: 1100, openVoltage: 22.2, noLoadCurrent: 1.5, resistance: 0.02, gearRatio: 1 };
    near(noLoadSpeed(gearless), 24387, 1e-12);
    near(noLoadSpeed({ ...gearless, gearRatio: 10 }), 2438.7, 1e-12);
  });

  it("are the best that any current gives", () => {
    const k = torqueConstant({ speedConstant: 1100 * rpm });
    const at = landmarks(22.2, 0.02, k, 1.5)!;
    for (let current = 2; current < 1110; current += 7) {
      const point = motorPoint(22.2, current, 0.02, k, 1.5);
      expect(point.efficiency).toBeLessThanOrEqual(at.bestEfficiency.efficiency);
      expect(point.power).toBeLessThanOrEqual(at.bestPower.power);
    }
  });

  it("balance: what goes in comes out or heats", () => {
    const k = torqueConstant({ speedConstant: 1100 * rpm });
    for (const point of Object.values(landmarks(22.2, 0.02, k, 1.5)!)) {
      expect(point.power + point.heat).toBeCloseTo(22.2 * point.current, 9);
    }
  });

  it("are none for a motor that its voltage can't turn", () => {
    expect(landmarks(0.02, 0.02, 0.009, 1.5)).toBeNull();
    expect(landmarks(10, 0, 0.009, 1.5)).toBeNull();
  });
});

describe("behind a chopper", () => {
  const train = {
    duty: 0.8,
    openVoltage: 22.2,
    torqueConstant: torqueConstant({ speedConstant: 1100 * rpm }),
    motorSpeed: 1800,
    motorResistance: 0.02,
    controllerResistance: 0.005,
    packResistance: 0.02,
  };

  it("current and pack voltage follow the averaged step-down chopper", () => {
    // Mohan, Undeland, Robbins, Power Electronics, ch. 7: 56.4518 A, 21.29677 V.
    const current = motorCurrent(train);
    near(current, 56.4518, 1e-5);
    near(22.2 - 0.8 * current * 0.02, 21.29677, 1e-6);
  });

  it("what goes in comes out or heats", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0.05, 1), number(0, 2000), number(0, 3), (duty, motorSpeed, noLoadCurrent) => {
        const k = train.torqueConstant;
        const i = motorCurrent({ ...train, duty, motorSpeed });
        const shaft = motorTorque({ torqueConstant: k, current: i, noLoadCurrent }) * motorSpeed;
        const heat = i * i * 0.025 + (duty * i) ** 2 * 0.02 + noLoadCurrent * k * motorSpeed;
        const source = 22.2 * duty * i;
        expect(Math.abs(source - shaft - heat)).toBeLessThan(1e-9 * (Math.abs(source) + Math.abs(shaft) + heat));
      }),
    );
  });

  it("draws nothing at the speed where back-emf meets the duty", () => {
    const { torqueConstant: k } = train;
    expect(motorCurrent({ ...train, motorSpeed: (0.8 * 22.2) / k })).toBeCloseTo(0, 10);
  });
});
