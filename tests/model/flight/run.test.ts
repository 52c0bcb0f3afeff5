import { describe, expect, it } from "vitest";
import type { RotorMap } from "#model/flight/rotor-map";
import { type FlightOrder, fly } from "#model/flight/run";
import { autorotation, hover, pumps, punch, spoolUp, suddenUnload, wholePack } from "#model/flight/scenarios";
import { integral } from "#model/gauss";
import { energiesAt } from "../oracle/energy.ts";
import { slowSagAfter } from "../oracle/slow-sag.ts";
import { sample, withParts } from "./sample.ts";

const rpm = Math.PI / 30;
const mode = { machine: sample, setSpeed: 2100 * rpm };
const full = 0.19;
const nothing: RotorMap = { thrust: () => 0, torque: () => 0 };

describe("a flight against closed forms", () => {
  // First-order spool-up: w = w_inf (1 - exp(-t / tau)), tau = J R / k^2. The machine of the Modelica Standard Library's
  // DC_PermanentMagnet example with a load inertia of 0.30 kg m2: tau = 0.0370110 s.
  it("spools up as a motor of the first order", () => {
    const machine = withParts({
      pack: { openVoltage: () => 100, resistance: 0, slowResistance: 0, capacity: 1e9 },
      motor: {
        constant: 0.63662,
        resistance: 0.05,
        noLoadCurrent: 0,
        inertia: 0.3 - 1e-9,
        temperature: 298.15,
        heatCapacity: 1e12,
      },
      controller: { resistance: 0, loopRate: 1000, reference: 160, dutySteps: 1000 },
      rotor: { map: nothing, inertia: 1e-9 },
      gearRatio: 1,
      meshEfficiency: 1,
    });
    const flight = fly({
      machine: { ...machine, tail: null },
      start: { speed: 0, collective: 0, height: 0, climb: 0 },
      throttle: [{ from: 0, kind: "duty", duty: 1, ramp: 0 }],
      collective: [],
      duration: 0.3,
      held: true,
    });
    const tau = 0.0370110165;
    const { time, rotorSpeed } = flight.trace;
    expect(time.length).toBe(301);
    for (let i = 0; i < time.length; i++) {
      expect(Math.abs(rotorSpeed[i]! / (100 / 0.63662) - (1 - Math.exp(-time[i]! / tau)))).toBeLessThan(1e-5);
    }
  });

  // v = I R1 (1 - exp(-t / (R1 C1))), then exponential decay: Plett, Battery Management Systems 1 (2015), section 2.
  it("sags and relaxes as an RC pair does: 10 A, 10 mohm, 20 s", () => {
    // A motor held still by an enormous inertia takes a constant current: 1 V over 0.1 ohm.
    const machine = withParts({
      pack: { openVoltage: () => 1.0, resistance: 0, slowResistance: 0.01, slowTime: 20, capacity: 1e9 },
      motor: {
        constant: 1e-9,
        resistance: 0.1,
        noLoadCurrent: 0,
        inertia: 1e9,
        temperature: 298.15,
        heatCapacity: 1e12,
      },
      controller: { resistance: 0, loopRate: 100, reference: 1, dutySteps: 1 },
      rotor: { map: nothing },
    });
    const order: FlightOrder = {
      machine: { ...machine, tail: null },
      start: { speed: 0, collective: 0, height: 0, climb: 0 },
      throttle: [
        { from: 0, kind: "duty", duty: 1, ramp: 0 },
        { from: 20, kind: "off" },
      ],
      collective: [],
      duration: 40,
      held: true,
      longestTick: 0.01,
      samples: 1e5,
    };
    const { trace } = fly(order);
    // The sag itself lowers the current: the pair in series with 0.1 ohm settles at V R1 / (R + R1) with 1 / (1 + R1 / R) of its time.
    const settled = (1.0 * 0.01) / 0.11;
    const at20 = settled * (1 - Math.exp((-20 / 20) * 1.1));
    const i20 = trace.time.findIndex((t) => t >= 20 - 1e-9);
    expect(trace.sag[i20]! / at20).toBeCloseTo(1, 9);
    expect(trace.sag.at(-1)! / slowSagAfter(at20, 0, 0.01, 20, 20)).toBeCloseTo(1, 9);
    expect(slowSagAfter(0, 10, 0.01, 20, 20)).toBeCloseTo(0.0632120558829, 12);
    expect(slowSagAfter(0.0632120558829, 0, 0.01, 20, 20)).toBeCloseTo(0.0232544157935, 12);
  });
});

describe("energy", () => {
  const mix = [
    { collective: 0.08, seconds: 4 },
    { collective: full, seconds: 1.5 },
  ];
  const flights: [string, FlightOrder][] = [
    ["spool-up", spoolUp(mode)],
    ["hover", hover(mode, 5)],
    ["punch", punch(mode, { collective: full })],
    ["pumps", pumps(mode, { highest: full, lowest: -0.12 })],
    ["unload", suddenUnload(mode, full)],
    ["autorotation", autorotation(mode, { flare: 5 })],
    ["bail-out", autorotation(mode, { bailOut: 2.5 })],
    ["whole pack", wholePack({ ...mode, machine: withParts({ pack: { capacity: 1500 } }) }, mix)],
    [
      "governor at 20 Hz",
      punch({ ...mode, machine: withParts({ controller: { loopRate: 20 } }) }, { collective: full }),
    ],
  ];

  it.each(flights)("in a %s is where it was or where it went, within 1e-6", (_, order) => {
    const flight = fly(order);
    const { length } = flight.trace.time;
    expect(length).toBeGreaterThan(10);
    for (const i of [Math.floor(length / 2), length - 1]) {
      const e = energiesAt(order.machine, flight.trace, i, order.held);
      expect(Math.abs(e.missing)).toBeLessThan(1e-6 * e.chemical);
      const moved = Math.abs(e.liftWork) + Math.abs(e.potential) + e.dragWork + Math.abs(e.vertical);
      expect(Math.abs(e.missingVertical)).toBeLessThan(1e-6 * (moved + e.airWork));
      // What the cells gave is what their charge was worth: C ∫ U dc, by the voltage curve alone.
      const { pack } = order.machine;
      const [full, left] = [flight.trace.charge[0]!, flight.trace.charge[i]!];
      expect(e.chemical / (pack.capacity * integral(pack.openVoltage, left, full, 64))).toBeCloseTo(1, 5);
      expect(e.delivered).toBeCloseTo(e.chemical - e.packHeat - e.sag, 6);
    }
  });
});
