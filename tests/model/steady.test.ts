import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gravity, rpm } from "#model/constants";
import { torqueConstant } from "#model/motor";
import { operatingPoint, type Powertrain } from "#model/powertrain";
import { type LoadTorque, pitchLoad, thrustLoad } from "#model/rotor-load";
import { ceilingAt, learningSpeed, speedAtDuty } from "#model/steady";
import { closedRotor } from "./oracle/closed-rotor.ts";

/** Kv 1000, 22.2 V stiff, 0.03 ohm, 1.5 A, 9:1, mesh 0.96. */
const train: Powertrain = {
  openVoltage: 22.2,
  packResistance: 0,
  torqueConstant: torqueConstant({ speedConstant: 1000 * rpm }),
  motorResistance: 0.03,
  controllerResistance: 0,
  noLoadCurrent: 1.5,
  gearRatio: 9,
  meshEfficiency: 0.96,
};
const square =
  (factor: number): LoadTorque =>
  (speed) =>
    factor * speed * speed;

const rotor = closedRotor({ blades: 2, radius: 0.5, chord: 0.045, rootCutout: 0.07, density: 1.2 });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function speedOf(answer: ReturnType<typeof speedAtDuty>): number {
  if (!answer.ok) throw new Error(answer.why);
  return answer.speed;
}

describe("ceiling", () => {
  it("on a square-law load is the root of the quadratic", () => {
    // k ((V - k w) / R - I0) = c w² / (G³ eta), closed form: 2110.6492149 rad/s of the motor, 2239.46837123 rpm.
    const answer = ceilingAt(train, square(1e-4));
    expect(Math.abs((speedOf(answer) * 9) / 2110.6492149 - 1)).toBeLessThan(1e-9);
    expect(Math.abs(speedOf(answer) / rpm / 2239.46837123 - 1)).toBeLessThan(1e-9);
    if (answer.ok) expect(answer.torque / (1e-4 * answer.speed ** 2)).toBeCloseTo(1, 9);
  });

  it("on any chain and square-law load is the root of the quadratic", () => {
    const trains = fc.record({
      openVoltage: number(7, 60),
      packResistance: number(0, 0.06),
      torqueConstant: number(0.003, 0.03),
      motorResistance: number(0.005, 0.1),
      controllerResistance: number(0, 0.01),
      noLoadCurrent: number(0, 4),
      gearRatio: number(4, 15),
      meshEfficiency: number(0.85, 1),
    });
    fc.assert(
      fc.property(trains, number(1e-6, 1e-2), number(0.2, 1), (chain, c, duty) => {
        const resistance = chain.motorResistance + chain.controllerResistance + duty ** 2 * chain.packResistance;
        const back = chain.torqueConstant * chain.gearRatio;
        const a = (resistance * c) / (back * chain.meshEfficiency);
        const rest = duty * chain.openVoltage - resistance * chain.noLoadCurrent;
        const root = (2 * rest) / (back + Math.sqrt(back * back + 4 * a * rest));
        expect(speedOf(speedAtDuty(chain, duty, square(c))) / root).toBeCloseTo(1, 10);
      }),
    );
  });

  it("rises with voltage, and leaves a duty of one", () => {
    const load = thrustLoad(rotor, null, 3 * gravity);
    let before = 0;
    for (let volts = 18; volts < 26; volts += 0.5) {
      const chain = { ...train, packResistance: 0.02, openVoltage: volts };
      const answer = ceilingAt(chain, load);
      expect(speedOf(answer)).toBeGreaterThan(before);
      before = speedOf(answer);
      const point = operatingPoint(chain, before, answer.ok ? answer.torque : 0)!;
      expect(point.duty).toBeCloseTo(1, 9);
      const heat = point.packHeat + point.controllerHeat + point.copperHeat + point.noLoadHeat + point.meshHeat;
      expect(Math.abs(point.sourcePower - point.outputPower - heat)).toBeLessThan(1e-9 * point.sourcePower);
    }
  });

  it("of a hover is the upper of two speeds that balance", () => {
    const load = thrustLoad(rotor, null, 3 * gravity);
    const speed = speedOf(ceilingAt(train, load));
    // Just below it there is power to spare, so the rotor comes back to it.
    const margin = (w: number) => operatingPoint(train, w, load(w)!);
    expect(margin(speed * 0.99)).not.toBeNull();
    expect(margin(speed * 1.01)).toBeNull();
  });

  it("is the same with a good or a bad first guess, and takes few calls", () => {
    const load = thrustLoad(rotor, null, 3 * gravity);
    let calls = 0;
    const counted: LoadTorque = (w) => {
      calls++;
      return load(w);
    };
    const speed = speedOf(ceilingAt(train, counted));
    expect(calls).toBeLessThan(11);
    for (const near of [speed * 1.001, speed * 0.5, speed * 2, Number.NaN]) {
      expect(speedOf(ceilingAt(train, load, near)) / speed).toBeCloseTo(1, 11);
    }
    calls = 0;
    ceilingAt(train, counted, speed * 0.999);
    expect(calls).toBeLessThan(8);
  });
});

describe("a load far too heavy", () => {
  it("still has its crawl, the root of the quadratic", () => {
    const chain = { ...train, torqueConstant: 0.003, gearRatio: 4, motorResistance: 0.1, noLoadCurrent: 0 };
    // Nearly at a stall: c w² = k G eta V / R.
    const stall = (0.003 * 4 * 0.96 * 22.2) / 0.1;
    expect(speedOf(ceilingAt(chain, square(0.05))) / Math.sqrt(stall / 0.05)).toBeCloseTo(1, 1);
  });
});

describe("no steady speed", () => {
  it("says which part can't", () => {
    const off = { ...train, openVoltage: 0.03 };
    expect(speedAtDuty(off, 1, square(1e-4))).toEqual({ ok: false, why: "motor does not turn" });
    expect(speedAtDuty(train, 0, square(1e-4))).toEqual({ ok: false, why: "motor does not turn" });
    expect(ceilingAt(train, () => 1000)).toEqual({ ok: false, why: "load too heavy" });
    expect(ceilingAt(train, () => null)).toEqual({ ok: false, why: "rotor cannot carry it" });
    // 60 kg on a rotor of one metre: the blades stall at any speed that the motor reaches.
    expect(ceilingAt(train, thrustLoad(rotor, null, 60 * gravity))).toEqual({
      ok: false,
      why: "rotor cannot carry it",
    });
  });

  it("never comes out of a narrow window of power", () => {
    // A load of constant power leaves room around half the no-load speed only; the window closes at the motor's best power.
    const { torqueConstant: k, openVoltage: v, motorResistance: r, noLoadCurrent: i0, gearRatio: g } = train;
    const best = (0.96 * 0.25 * (v - r * i0) ** 2) / r;
    const constantPower =
      (power: number): LoadTorque =>
      (w) =>
        power / w;
    for (const share of [0.2, 0.9, 0.99, 0.9999]) {
      const peak = (v - r * i0) / (2 * k * g);
      const speed = speedOf(ceilingAt(train, constantPower(share * best)));
      // Closed form: w = peak (1 + sqrt(1 - share)).
      expect(speed / (peak * (1 + Math.sqrt(1 - share)))).toBeCloseTo(1, 8);
    }
    expect(ceilingAt(train, constantPower(1.001 * best))).toEqual({ ok: false, why: "load too heavy" });
  });
});

describe("a learning run", () => {
  it("runs open loop at half duty with flat pitch", () => {
    const flat = pitchLoad(rotor, null, 0);
    expect(learningSpeed(train, flat)).toEqual(speedAtDuty(train, 0.5, flat));
    expect(speedOf(learningSpeed(train, flat, 0.7))).toBeGreaterThan(speedOf(learningSpeed(train, flat)));
    // Blades' drag costs some of the no-load speed, but not half of it.
    const free = speedOf(speedAtDuty(train, 0.5, () => 0));
    expect(speedOf(learningSpeed(train, flat)) / free).toBeGreaterThan(0.8);
    expect(speedOf(learningSpeed(train, flat)) / free).toBeLessThan(0.999);
  });

  it("reaches the no-load speed when nothing loads it", () => {
    const { openVoltage, motorResistance, noLoadCurrent, torqueConstant: k, gearRatio } = train;
    const free = (0.5 * openVoltage - motorResistance * noLoadCurrent) / (k * gearRatio);
    expect(speedOf(speedAtDuty(train, 0.5, () => 0))).toBeCloseTo(free, 10);
    expect(speedOf(speedAtDuty(train, 0.5, () => -1))).toBeCloseTo(free, 10);
  });
});
