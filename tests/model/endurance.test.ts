import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { milliampereHour, rpm } from "#model/constants";
import { chargeForVoltage, endurance, flightTime, lowestCharge, reserveCharge } from "#model/endurance";
import { openCellVoltage } from "#model/ocv";
import { dutyAsked, operatingPoint, type Powertrain } from "#model/powertrain";
import { steps } from "./support/steps.ts";

const train: Powertrain = {
  openVoltage: 0,
  packResistance: 0.02,
  torqueConstant: 0.0095,
  motorResistance: 0.03,
  controllerResistance: 0.002,
  noLoadCurrent: 1.5,
  gearRatio: 9,
  meshEfficiency: 0.96,
};
const pack = (charge: number) => 6 * openCellVoltage("lipo", charge)!;
const capacity = 5000 * milliampereHour;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("flight time", () => {
  it("is charge over current", () => {
    // t = Q used / I: 5000 mAh, 80 % used, 40 A: 360 s.
    expect(flightTime({ capacity, used: 0.8, current: 40 })).toBeCloseTo(360, 9);
  });

  it("with a falling voltage is the sum over many small steps", () => {
    const speed = 1900 * rpm;
    const torque = 3;
    const sum = steps(20000, 1, reserveCharge, (charge) => {
      const point = operatingPoint({ ...train, openVoltage: pack(charge) }, speed, torque)!;
      return capacity / point.packCurrent;
    });
    const flight = endurance(train, speed, torque, capacity, 1, pack)!;
    expect(Math.abs(flight.time / sum - 1)).toBeLessThan(1e-4);
    expect(flight).toMatchObject({ end: 0.2, because: "reserve reached" });
    const back = flightTime({ capacity, used: 0.8, current: flight.meanCurrent! });
    expect(back).toBeCloseTo(flight.time, 9);
  });

  it("at a steady voltage is the constant-current limit", () => {
    const flat = { ...train, openVoltage: 24 };
    const current = dutyAsked(flat, 200, 3)! * (3 / (0.0095 * 9 * 0.96) + 1.5);
    const flight = endurance(train, 200, 3, capacity, 1, () => 24)!;
    expect(flight.time).toBeCloseTo(flightTime({ capacity, used: 0.8, current }), 8);
  });

  it("ends where the speed is lost, or at once", () => {
    const lowest = lowestCharge(train, 2300 * rpm, 3, pack)!;
    expect(lowest).toBeGreaterThan(0.2);
    expect(lowest).toBeLessThan(1);
    const flight = endurance(train, 2300 * rpm, 3, capacity, 1, pack)!;
    expect(flight).toMatchObject({ end: lowest, because: "speed lost" });
    expect(flight.time).toBeLessThan(endurance(train, 2300 * rpm, 3, capacity, 1, pack, lowest + 0.01)!.time * 1.1);
    expect(endurance(train, 2300 * rpm, 3, capacity, lowest - 0.05, pack)).toBeNull();
    expect(endurance(train, 2600 * rpm, 3, capacity, 1, pack)).toBeNull();
    expect(endurance(train, 1500 * rpm, 3, capacity, 0.15, pack)).toMatchObject({ time: 0, meanCurrent: null });
  });
});

describe("lowest charge", () => {
  it("is where full duty is asked for, as halving finds it too", () => {
    fc.assert(
      fc.property(number(1500, 2300), number(0.5, 6), (headSpeed, torque) => {
        const speed = headSpeed * rpm;
        const held = (charge: number) =>
          operatingPoint({ ...train, openVoltage: pack(charge) }, speed, torque) !== null;
        const lowest = lowestCharge(train, speed, torque, pack);
        if (!held(1)) {
          expect(lowest).toBeNull();
          return;
        }
        let [low, high] = [0, 1];
        for (let i = 0; i < 40; i++) {
          const middle = (low + high) / 2;
          if (held(middle)) high = middle;
          else low = middle;
        }
        expect(lowest).toBeCloseTo(high, 6);
      }),
    );
  });

  it("falls with a lighter load, and is none where even a full pack fails", () => {
    expect(lowestCharge(train, 2150 * rpm, 2, pack)!).toBeLessThan(lowestCharge(train, 2300 * rpm, 3, pack)!);
    expect(lowestCharge(train, 3000 * rpm, 2, pack)).toBeNull();
    expect(lowestCharge(train, 1000 * rpm, 1, pack)).toBe(0);
    expect(chargeForVoltage(pack, 6 * 3.7925)).toBeCloseTo(0.5, 9);
  });
});
