/** Pack, controller, motor and gears as one chain, and where its power goes. SI throughout; speeds are the main rotor's. */
import { relation } from "./relation.ts";

/** The chain from the pack to the main shaft. */
export interface Powertrain {
  /** V at rest, at the present charge */
  readonly openVoltage: number;
  /** ohm, leads included */
  readonly packResistance: number;
  /** N m/A = V s/rad */
  readonly torqueConstant: number;
  /** ohm, at the winding's temperature */
  readonly motorResistance: number;
  /** ohm */
  readonly controllerResistance: number;
  /** A */
  readonly noLoadCurrent: number;
  /** motor turns for one turn of the rotor */
  readonly gearRatio: number;
  /** power out of the gears over power in, 0 to 1 */
  readonly meshEfficiency: number;
}

/**
 * Motor current that gives a torque on the main shaft: I = Q / (k G eta) + I0, A. A torque below zero counts as zero,
 * because the one-way clutch lets the rotor run ahead. Source: M. Drela, First-Order DC Electric Motor Model (2007).
 *
 * @param torque on the main shaft, N m
 */
export const currentForTorque = (train: Powertrain, torque: number): number =>
  Math.max(0, torque) / (train.torqueConstant * train.gearRatio * train.meshEfficiency) + train.noLoadCurrent;

/** Voltage that the motor needs at its plugs before the pack's own sag: k G w + I (Rm + Rc). */
const needed = (train: Powertrain, speed: number, current: number): number =>
  train.torqueConstant * train.gearRatio * speed + current * (train.motorResistance + train.controllerResistance);

/** Smaller root of D² Rp I - D V + c = 0, in the form that also holds for a pack without resistance; null: no root. */
function smallerRoot(volts: number, sag: number, wanted: number): number | null {
  const square = volts * volts - 4 * sag * wanted;
  return square >= 0 && volts > 0 ? (2 * wanted) / (volts + Math.sqrt(square)) : null;
}

/**
 * Duty that holds a speed against a torque (ratio, 0 to 1 when it can be done; above 1: full duty isn't enough).
 * D² Rp I - D V + k G w + I (Rm + Rc) = 0, smaller root. Null: the pack can't give that power at any duty.
 * Source: averaged ideal step-down chopper; Mohan, Undeland, Robbins, Power Electronics, ch. 7.
 *
 * @param speed main rotor, rad/s
 * @param torque on the main shaft, N m
 */
export function dutyAsked(train: Powertrain, speed: number, torque: number): number | null {
  const current = currentForTorque(train, torque);
  return smallerRoot(train.openVoltage, train.packResistance * current, needed(train, speed, current));
}

/**
 * Lowest open voltage of the pack, V, at which a speed can be held against a torque with a duty of at most 1.
 * k G w + I (Rm + Rc + Rp); where the pack's own sag is the larger part, 2 sqrt(Rp I c) with less than full duty.
 * Source: as `dutyAsked`, solved for the voltage.
 *
 * @param speed main rotor, rad/s
 * @param torque on the main shaft, N m
 */
export function voltageToHold(train: Powertrain, speed: number, torque: number): number {
  const current = currentForTorque(train, torque);
  const sag = train.packResistance * current;
  const wanted = needed(train, speed, current);
  return wanted > sag ? wanted + sag : 2 * Math.sqrt(sag * wanted);
}

/** A steady state of the chain. Powers and heats in W: sourcePower = outputPower + all heats. */
export interface OperatingPoint {
  readonly speed: number;
  /** N m on the main shaft */
  readonly torque: number;
  readonly duty: number;
  readonly motorSpeed: number;
  readonly motorCurrent: number;
  readonly packCurrent: number;
  /** V at the pack's plug, under load */
  readonly packVoltage: number;
  readonly sourcePower: number;
  readonly packHeat: number;
  readonly controllerHeat: number;
  readonly copperHeat: number;
  /** iron and bearings of the motor */
  readonly noLoadHeat: number;
  readonly meshHeat: number;
  readonly outputPower: number;
  /** shaft power of the motor over its electrical power */
  readonly motorEfficiency: number;
  /** output over source power */
  readonly chainEfficiency: number;
}

/**
 * Everything about a state in which a speed is held against a torque; null when no duty up to 1 holds it. SI units.
 * Power in equals power out plus heat to rounding. Source: energy balance, by definition; relations as `dutyAsked`.
 *
 * @param speed main rotor, rad/s
 * @param torque on the main shaft, N m, from 0 up
 */
export function operatingPoint(train: Powertrain, speed: number, torque: number): OperatingPoint | null {
  const duty = dutyAsked(train, speed, torque);
  // A ceiling found by iteration may ask for a duty of 1 and a rounding error.
  if (duty === null || duty > 1 + 1e-9) return null;
  return pointAt(train, speed, torque, duty);
}

function pointAt(train: Powertrain, speed: number, torque: number, duty: number): OperatingPoint {
  const motorCurrent = currentForTorque(train, torque);
  const motorSpeed = speed * train.gearRatio;
  const packCurrent = duty * motorCurrent;
  const sourcePower = train.openVoltage * packCurrent;
  const emf = train.torqueConstant * motorSpeed;
  const copperHeat = motorCurrent * motorCurrent * train.motorResistance;
  const shaftPower = emf * (motorCurrent - train.noLoadCurrent);
  const motorPower = emf * motorCurrent + copperHeat;
  const outputPower = shaftPower * train.meshEfficiency;
  return {
    speed,
    torque: Math.max(0, torque),
    duty,
    motorSpeed,
    motorCurrent,
    packCurrent,
    packVoltage: train.openVoltage - packCurrent * train.packResistance,
    sourcePower,
    packHeat: packCurrent * packCurrent * train.packResistance,
    controllerHeat: motorCurrent * motorCurrent * train.controllerResistance,
    copperHeat,
    noLoadHeat: emf * train.noLoadCurrent,
    meshHeat: shaftPower - outputPower,
    outputPower,
    motorEfficiency: motorPower > 0 ? shaftPower / motorPower : 0,
    chainEfficiency: sourcePower > 0 ? outputPower / sourcePower : 0,
  };
}

const openVoltage = { name: "open voltage of the pack", symbol: "V_o", unit: "V" };
const packResistance = { name: "pack resistance", symbol: "R_p", unit: "Ω" };
const current = { name: "motor current", symbol: "I", unit: "A" };
const emf = { name: "voltage that the turning motor makes", symbol: "k\\omega", unit: "V" };
const resistance = { name: "resistance of motor and controller", symbol: "R", unit: "Ω" };
const chopper = "Mohan, Undeland, Robbins, Power Electronics, ch. 7";

/** Motor current at a load on the main shaft. */
export const currentAtLoad = relation({
  name: "motor current",
  symbol: "I",
  unit: "A",
  terms: {
    torque: { name: "torque on the main shaft", symbol: "Q", unit: "N m" },
    torqueConstant: { name: "torque constant", symbol: "k", unit: "N m/A" },
    gearRatio: { name: "gear ratio", symbol: "G", unit: "" },
    meshEfficiency: { name: "efficiency of the gears", symbol: "\\eta", unit: "" },
    noLoadCurrent: { name: "no-load current", symbol: "I_0", unit: "A" },
  },
  formula: (t) =>
    `\\frac{${t.torque}}{${t.torqueConstant} \\times ${t.gearRatio} \\times ${t.meshEfficiency}} + ${t.noLoadCurrent}`,
  of: (v) => v.torque / (v.torqueConstant * v.gearRatio * v.meshEfficiency) + v.noLoadCurrent,
  assumes: "The speed is held; iron and bearings take the no-load current at every speed.",
  source: "M. Drela, First-Order DC Electric Motor Model, MIT (2007)",
});

/** Duty that holds a speed. */
export const dutyToHold = relation({
  name: "duty",
  symbol: "D",
  unit: "",
  terms: { openVoltage, packResistance, current, emf, resistance },
  equation: (t, d) =>
    `${d}^2 \\times ${t.packResistance} \\times ${t.current} - ${d} \\times ${t.openVoltage} + ${t.emf} + ${t.current} \\times ${t.resistance} = 0`,
  of: (v) => smallerRoot(v.openVoltage, v.packResistance * v.current, v.emf + v.current * v.resistance),
  assumes: "The controller is an ideal chopper. Of the two answers the smaller one.",
  source: chopper,
});

/** Current out of the pack. */
export const packCurrent = relation({
  name: "pack current",
  symbol: "I_p",
  unit: "A",
  terms: { duty: { name: "duty", symbol: "D", unit: "" }, current },
  formula: (t) => `${t.duty} \\times ${t.current}`,
  of: (v) => v.duty * v.current,
  assumes: "The controller is an ideal chopper: power in equals power out.",
  source: chopper,
});

/** Head speed with full duty, at the torque that the load asks for there. */
export const ceilingSpeed = relation({
  name: "ceiling",
  symbol: "n_c",
  unit: "rad/s",
  terms: {
    speedConstant: { name: "speed constant (Kv)", symbol: "K_v", unit: "rad/(V s)" },
    openVoltage,
    current: { name: "motor current at that speed", symbol: "I", unit: "A" },
    resistance: { name: "resistance of motor, controller and pack", symbol: "R", unit: "Ω" },
    gearRatio: { name: "gear ratio", symbol: "G", unit: "" },
  },
  formula: (t) =>
    `\\frac{${t.speedConstant}\\,(${t.openVoltage} - ${t.current} \\times ${t.resistance})}{${t.gearRatio}}`,
  of: (v) => (v.speedConstant * (v.openVoltage - v.current * v.resistance)) / v.gearRatio,
  assumes:
    "Full duty. Any unit of speed will do for Kv. The current itself depends on the speed, through the torque of the rotor, so it is found by trial.",
  source: chopper,
});
