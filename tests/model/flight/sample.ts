/** A machine of ours to fly in the tests: six cells, a rotor of a metre. Numbers invented, of the usual size. */

import type { FlightMachine } from "#model/flight/machine";
import { mapOfLoad, tailTorqueOf } from "#model/flight/rotor-map";
import { openCellVoltage } from "#model/ocv";
import { closedRotor } from "../oracle/closed-rotor.ts";

const radius = 0.5;
const density = 1.2;

/** The main rotor in closed form. */
export const mainRotor = mapOfLoad(closedRotor({ blades: 2, radius, chord: 0.04, rootCutout: 0.08, density }));

const tailRotor = closedRotor({ blades: 2, radius: 0.091, chord: 0.02, rootCutout: 0.02, density });

/** Open voltage of six lithium polymer cells. */
const sixCells = (charge: number): number => 6 * (openCellVoltage("lipo", charge) ?? 0);

const rpm = Math.PI / 30;

export const sample: FlightMachine = {
  pack: {
    openVoltage: sixCells,
    capacity: 3.3 * 3600,
    resistance: 6 * 0.003 + 0.0025,
    slowResistance: 0.627 * 6 * 0.003,
    slowTime: 32.85,
    charge: 1,
  },
  motor: {
    constant: 60 / (2 * Math.PI * 1120),
    resistance: 0.016,
    resistanceTemperature: 298.15,
    noLoadCurrent: 2.4,
    inertia: 2.6e-5,
    poles: 10,
    heatCapacity: 60,
    cooling: 0.6,
    temperature: 303.15,
  },
  controller: {
    resistance: 0.0025,
    dutySteps: 1024,
    loopRate: 1000,
    proportionalGain: 3,
    integralGain: 10,
    antiWindup: "back-calculation",
    backGain: 1,
    lowestDuty: 0,
    highestDuty: 1,
    reference: 2910,
    startRamp: 6,
    bailOutRamp: 1.5,
    clockStep: 5e-7,
    heatCapacity: 40,
    cooling: 0.8,
    temperature: 298.15,
  },
  gearRatio: 9,
  meshEfficiency: 0.96,
  rotor: { map: mainRotor, radius, inertia: 0.0075, lowestCollective: -0.21, highestCollective: 0.21 },
  tail: tailTorqueOf({ rotor: tailRotor, arm: 0.59, ratio: 4.5 }),
  mass: 2.05,
  dragArea: 0.02,
  airDensity: density,
  airTemperature: 293.15,
  limits: {
    motorSpeed: 36_000 * rpm,
    electricalSpeed: 240_000 * rpm,
    rotorSpeed: 2800 * rpm,
    packCurrent: 100,
    windingTemperature: 393.15,
    controllerTemperature: 373.15,
  },
};

/** The sample with other parts. */
export function withParts(
  parts: {
    readonly [K in keyof FlightMachine]?: FlightMachine[K] extends object | null
      ? Partial<NonNullable<FlightMachine[K]>> | FlightMachine[K]
      : FlightMachine[K];
  },
): FlightMachine {
  const merged: Record<string, unknown> = { ...sample };
  for (const [key, value] of Object.entries(parts)) {
    const old = merged[key];
    merged[key] = typeof value === "object" && value !== null && typeof old === "object" ? { ...old, ...value } : value;
  }
  return merged as unknown as FlightMachine;
}
