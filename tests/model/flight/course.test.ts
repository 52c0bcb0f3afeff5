import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import { createPlant } from "#model/flight/plant";
import type { RotorMap } from "#model/flight/rotor-map";
import { type FlightOrder, fly } from "#model/flight/run";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import type { Trace } from "#model/flight/trace";
import { copperResistance } from "#model/motor";
import { sample, withParts } from "./sample.ts";

const nothing: RotorMap = { thrust: () => 0, torque: () => 0 };
/** A machine without blades, at rest or moving, that nobody steers. */
const left = (parts: Parameters<typeof withParts>[0], order: Partial<FlightOrder>): FlightOrder => ({
  machine: { ...withParts({ rotor: { map: nothing }, ...parts }), tail: null },
  start: { speed: 0, collective: 0, height: 0, climb: 0 },
  throttle: [],
  collective: [],
  duration: 1,
  held: true,
  ...order,
});
const furthest = (trace: Trace, miss: (i: number) => number): number =>
  trace.time.reduce((most, _, i) => Math.max(most, Math.abs(miss(i))), 0);

describe("what falls, warms up and drains", () => {
  // Free fall with drag: v = v_t tanh(g t / v_t), h = v_t^2 / g ln cosh(g t / v_t), v_t^2 = 2 m g / (rho A). Textbook.
  it("falls with the drag of its area, and thrown up is braked on its way too", () => {
    const area = 0.5;
    const end = Math.sqrt((2 * sample.mass * gravity) / (sample.airDensity * area));
    const begin = { speed: 0, collective: 0, height: 300, climb: 0 };
    const fall = fly(left({ dragArea: area }, { start: begin, held: false, duration: 3 })).trace;
    expect(furthest(fall, (i) => fall.climb[i]! + end * Math.tanh((gravity * fall.time[i]!) / end))).toBeLessThan(1e-6);
    const way = (t: number) => (end ** 2 / gravity) * Math.log(Math.cosh((gravity * t) / end));
    expect(furthest(fall, (i) => 300 - fall.height[i]! - way(fall.time[i]!))).toBeLessThan(1e-6);
    // Upwards the closed form is a tangent: v = v_t tan(arctan(v_0 / v_t) - g t / v_t).
    const up = { ...begin, climb: end };
    const throwUp = fly(left({ dragArea: area }, { start: up, held: false, duration: 0.5 })).trace;
    const climb = (t: number) => end * Math.tan(Math.PI / 4 - (gravity * t) / end);
    expect(furthest(throwUp, (i) => throwUp.climb[i]! - climb(throwUp.time[i]!))).toBeLessThan(1e-6);
  });

  // Newton's law of cooling: the excess temperature falls as exp(-h t / C).
  it("cools winding and controller towards the air, each at its own pace", () => {
    const order = left(
      { motor: { temperature: 393.15 }, controller: { temperature: 353.15 } },
      { duration: 60, longestTick: 0.01 },
    );
    const { trace } = fly(order);
    const { motor, controller, airTemperature } = sample;
    for (const [temperature, begin, rate] of [
      [trace.windingTemperature, 393.15, motor.cooling / motor.heatCapacity],
      [trace.controllerTemperature, 353.15, controller.cooling / controller.heatCapacity],
    ] as const) {
      const excess = (i: number) => (begin - airTemperature) * Math.exp(-rate * trace.time[i]!);
      expect(furthest(trace, (i) => temperature[i]! - airTemperature - excess(i))).toBeLessThan(1e-6);
      expect(temperature.at(-1)!).toBeLessThan(begin - 20);
    }
  });

  it("warms the winding by copper and friction, the controller by its own resistance", () => {
    const plant = createPlant(sample)!;
    const y = startState(sample, { speed: 220, collective: 0.09, height: 9, climb: 0 });
    y[at.WINDING] = 350;
    y[at.CONTROLLER] = 330;
    plant.now[at.DUTY] = 0.8;
    plant.now[at.COLLECTIVE] = 0.09;
    const dy = new Float64Array(at.SIZE);
    plant.derivative(y, dy);
    const { motor, controller, airTemperature } = sample;
    const current = plant.now[at.MOTOR_CURRENT]!;
    const copper = current ** 2 * copperResistance(motor.resistance, 350, motor.resistanceTemperature);
    const friction = motor.constant * motor.noLoadCurrent * 220 * sample.gearRatio;
    const winding = copper + friction - motor.cooling * (350 - airTemperature);
    const own = current ** 2 * controller.resistance - controller.cooling * (330 - airTemperature);
    expect((dy[at.WINDING]! * motor.heatCapacity) / winding).toBeCloseTo(1, 4);
    expect((dy[at.CONTROLLER]! * controller.heatCapacity) / own).toBeCloseTo(1, 9);
    expect(dy[at.ANGLE]).toBe(y[at.MOTOR]);
  });

  // At half duty the pack gives half the motor's current (ideal chopper); charge by count: dq = I t / C.
  it("drains by the pack's current, not the motor's, and sags by it", () => {
    const still = { constant: 1e-9, resistance: 0.1, noLoadCurrent: 0, inertia: 1e9, temperature: 298.15 };
    const order = left(
      {
        pack: { openVoltage: () => 10, resistance: 0, slowResistance: 1e-3, slowTime: 5, capacity: 5000 },
        motor: { ...still, heatCapacity: 1e12 },
        controller: { resistance: 0, dutySteps: 1000, loopRate: 100 },
      },
      { throttle: [{ from: 0, kind: "duty", duty: 0.5, ramp: 0 }], duration: 100, longestTick: 0.01 },
    );
    const { trace } = fly(order);
    // 0.5 (10 - sag) / 0.1 in the motor, half of it in the pack: 25 A less what the sag takes, R1 / (R1 + 0.1 / 0.25).
    const settled = (10 * 1e-3) / (1e-3 + 0.4);
    expect(trace.sag.at(-1)! / settled).toBeCloseTo(1, 6);
    const current = (10 - settled) / 0.4;
    expect(trace.packCurrent.at(-1)! / current).toBeCloseTo(1, 6);
    // The first seconds, before the sag has come, a little more: less than settled / 0.4 x 5 s.
    const drawn = (1 - trace.charge.at(-1)!) * 5000;
    expect(Math.abs(drawn - 100 * current)).toBeLessThan((settled / 0.4) * 5);
    expect(trace.packVoltage.at(-1)).toBeCloseTo(10 - settled, 6);
  });

  it("has the pack's curve between the points of its table, up to the full and the empty pack", () => {
    const plant = createPlant(sample)!;
    const y = startState(sample, { speed: 220, collective: 0.09, height: 9, climb: 0 });
    const missAt = (charge: number) => {
      y[at.CHARGE] = charge;
      plant.derivative(y, new Float64Array(at.SIZE));
      return plant.now[at.PACK_VOLTAGE]! - sample.pack.openVoltage(charge);
    };
    for (const charge of [1, 1 - 0.25 / 256, 1 - 0.5 / 256, 1 - 0.75 / 256, 0.9013, 0.5007]) {
      expect(Math.abs(missAt(charge))).toBeLessThan(2e-4);
    }
    // A curve that is straight has no error at all, at its ends neither.
    const straight = createPlant(withParts({ pack: { openVoltage: (charge) => 20 + 5 * charge } }))!;
    for (const charge of [0.1 / 256, 0.5, 1 - 0.3 / 256]) {
      y[at.CHARGE] = charge;
      straight.derivative(y, new Float64Array(at.SIZE));
      expect(straight.now[at.PACK_VOLTAGE]).toBeCloseTo(20 + 5 * charge, 12);
    }
  });

  it("has the collective where it is within a tick", () => {
    const plant = createPlant(sample)!;
    const y = startState(sample, { speed: 220, collective: 0.09, height: 9, climb: 0 });
    const thrust = (collective: number, rate: number, since: number) => {
      plant.now.set([collective, rate, since], at.COLLECTIVE);
      plant.derivative(y, new Float64Array(at.SIZE));
      return plant.now[at.THRUST]!;
    };
    expect(thrust(0.08, 5, 0.002)).toBeCloseTo(thrust(0.09, 0, 0.002), 12);
    expect(thrust(0.08, 5, 0)).toBeLessThan(thrust(0.09, 0, 0) - 1);
  });

  it("goes on without a jump where it climbs faster than the tables go: 15 % of the tip speed", () => {
    const plant = createPlant(sample)!;
    const y = startState(sample, { speed: 220, collective: 0.2, height: 9, climb: 0 });
    plant.now[at.COLLECTIVE] = 0.2;
    const end = 0.15 * 0.5 * Math.hypot(220, 1);
    const [below, above, far] = [end - 1e-7, end + 1e-7, 80].map((climb) => {
      y[at.CLIMB] = climb;
      plant.derivative(y, new Float64Array(at.SIZE));
      return [plant.now[at.THRUST]!, plant.now[at.LOAD]!] as const;
    });
    expect(above![0]).toBeCloseTo(below![0], 4);
    expect(above![1]).toBeCloseTo(below![1], 4);
    expect(far!.every(Number.isFinite)).toBe(true);
  });
});
