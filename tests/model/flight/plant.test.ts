import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import { hoverCollective } from "#model/flight/pilot";
import { createPlant } from "#model/flight/plant";
import { startDuty, startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { copperResistance, motorCurrent, motorTorque } from "#model/motor";
import { sample, withParts } from "./sample.ts";

const rpm = Math.PI / 30;
const speed = 2100 * rpm;

/** Rates at a state, with a duty and a collective. */
function ratesAt(y: Float64Array, duty: number, collective: number, engaged = true, machine = sample) {
  const plant = createPlant(machine)!;
  plant.mode[0] = engaged ? 1 : 0;
  plant.now[at.DUTY] = duty;
  plant.now[at.COLLECTIVE] = collective;
  const dy = new Float64Array(at.SIZE);
  plant.derivative(y, dy);
  return { dy, now: plant.now, plant };
}

describe("equations of motion", () => {
  const collective = hoverCollective(sample, speed)!;
  const start = { speed, collective, height: 10, climb: 0 };
  const hover = startState(sample, start);
  const duty = startDuty(sample, start);

  it("stand still in a steady hover", () => {
    const { dy, now } = ratesAt(hover, duty, collective);
    expect(now[at.THRUST]).toBeCloseTo(sample.mass * gravity, 3);
    expect(Math.abs(dy[at.ROTOR]!)).toBeLessThan(0.05);
    expect(Math.abs(dy[at.CLIMB]!)).toBeLessThan(1e-3);
    expect(Math.abs(dy[at.INFLOW]!)).toBeLessThan(1e-2);
  });

  it("have the motor's current and torque as the pages show them", () => {
    const y = Float64Array.from(hover);
    y[at.SAG] = 0.2;
    y[at.WINDING] = 350;
    y[at.CHARGE] = 0.63;
    const { now } = ratesAt(y, 0.8, collective);
    const { motor, controller, pack } = sample;
    const current = motorCurrent({
      duty: 0.8,
      openVoltage: pack.openVoltage(0.63) - 0.2,
      torqueConstant: motor.constant,
      motorSpeed: speed * sample.gearRatio,
      motorResistance: copperResistance(motor.resistance, 350, motor.resistanceTemperature),
      controllerResistance: controller.resistance,
      packResistance: pack.resistance,
    });
    expect(now[at.MOTOR_CURRENT]! / current).toBeCloseTo(1, 5);
    expect(now[at.PACK_CURRENT]).toBeCloseTo(0.8 * now[at.MOTOR_CURRENT]!, 12);
    const alone = ratesAt(y, 0.8, collective, false);
    const torque = motorTorque({ torqueConstant: motor.constant, current, noLoadCurrent: motor.noLoadCurrent });
    expect((alone.dy[at.MOTOR]! * motor.inertia) / torque).toBeCloseTo(1, 4);
  });

  // Averaged ideal step-down chopper (Mohan, Undeland, Robbins, Power Electronics, ch. 7): 56.45180726 A, 21.29677108 V.
  it("give the current of the chopper's worked example", () => {
    const machine = withParts({
      pack: { openVoltage: () => 22.2, resistance: 0.02 },
      motor: { constant: 60 / (2 * Math.PI * 1100), resistance: 0.02, resistanceTemperature: 298.15 },
      controller: { resistance: 0.005 },
    });
    const y = Float64Array.from(hover);
    y[at.WINDING] = 298.15;
    y[at.MOTOR] = 1800;
    const { now } = ratesAt(y, 0.8, 0, false, machine);
    expect(now[at.MOTOR_CURRENT]).toBeCloseTo(56.45180726, 7);
    expect(now[at.PACK_VOLTAGE]).toBeCloseTo(21.29677108, 7);
  });

  it("never brake the motor: a duty below its speed gives no current", () => {
    // At flat pitch the air takes little: the motor slows down sooner than the rotor, and the clutch would have to pull.
    const { now } = ratesAt(hover, 0.2, 0);
    expect(now[at.MOTOR_CURRENT]).toBe(0);
    expect(now[at.CLUTCH]!).toBeLessThan(0);
  });

  it("share the torque between motor and rotor while the clutch is engaged", () => {
    const { dy, now } = ratesAt(hover, 0.9, collective);
    const { gearRatio: g, meshEfficiency: e, motor, rotor } = sample;
    const torque = motor.constant * (now[at.MOTOR_CURRENT]! - motor.noLoadCurrent);
    expect(dy[at.MOTOR]).toBeCloseTo(g * dy[at.ROTOR]!, 9);
    expect(rotor.inertia * dy[at.ROTOR]!).toBeCloseTo(e * g * now[at.CLUTCH]! - now[at.LOAD]!, 9);
    expect(motor.inertia * dy[at.MOTOR]! + now[at.CLUTCH]!).toBeCloseTo(torque, 4);
  });

  it("let the inflow follow a punch late: more thrust at first than the new pitch holds", () => {
    const punched = ratesAt(hover, duty, collective + 0.08);
    const steady = sample.rotor.map.thrust(speed, collective + 0.08, 0);
    expect(punched.now[at.THRUST]!).toBeGreaterThan(1.1 * steady);
    expect(punched.dy[at.INFLOW]!).toBeGreaterThan(10);
  });

  // Carpenter and Fridovich, NACA TN 3044 (1953): air of 63.7 % of the sphere around the disc, from rest.
  it("begin an inflow from rest with the apparent mass of the disc", () => {
    const y = Float64Array.from(hover);
    y[at.INFLOW] = 0;
    const { dy, now } = ratesAt(y, duty, 0.1);
    const air = 0.637 * (4 / 3) * Math.PI * 0.5 ** 3 * sample.airDensity;
    expect(dy[at.INFLOW]! / (now[at.THRUST]! / air)).toBeCloseTo(1, 9);
  });

  // A rotor in autorotation sinks as a parachute with a drag coefficient of 1.1 to 1.3 (Gessow and Myers, from memory).
  it("carry a sinking rotor that takes no power like a parachute", () => {
    const y = Float64Array.from(hover);
    const weight = sample.mass * gravity;
    const flow = 2 * sample.airDensity * Math.PI * 0.25;
    // No flow through the disc: inflow = sinking speed.
    const sinking = Math.sqrt(weight / (flow * 0.3));
    y[at.CLIMB] = -sinking;
    y[at.INFLOW] = sinking;
    const { dy, now } = ratesAt(y, 0, collective, false);
    const air = 0.637 * (4 / 3) * Math.PI * 0.5 ** 3 * sample.airDensity;
    // What the inflow takes is the weight, at the sinking speed of a parachute with that drag coefficient.
    const taken = now[at.THRUST]! - dy[at.INFLOW]! * air;
    const drag = taken / (0.5 * sample.airDensity * sinking ** 2 * Math.PI * 0.25);
    expect(taken).toBeCloseTo(weight, 9);
    expect(Math.abs(drag - 1.2)).toBeLessThan(0.1);
  });

  it("are refused where a curve gives no number", () => {
    expect(createPlant(withParts({ pack: { openVoltage: () => Number.NaN } }))).toBeNull();
    const map = { thrust: () => Number.NaN, torque: () => 0 };
    expect(createPlant(withParts({ rotor: { map } }))).toBeNull();
  });
});
