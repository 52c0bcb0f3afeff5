/** The motor to first order: a back-emf behind a resistance, and a current that it takes for itself. SI throughout. */
import { relation, type Term } from "./relation.ts";

/** Temperature coefficient of annealed copper at 20 °C, 1/K. IEC 60028 (from memory); one standard library has 0.00392. */
export const copperCoefficient = 0.00393;

/** Temperature at which a motor's resistance is taken to be given: 25 °C, in K. Common practice, no source. */
export const copperReference = 298.15;

/**
 * Resistance of a copper winding at another temperature: R = R0 (1 + a (T - 20 °C)) / (1 + a (T0 - 20 °C)), ohm.
 *
 * @param resistance measured, ohm
 * @param temperature of the winding now, K
 * @param at temperature when it was measured, K
 * @param coefficient per kelvin at 20 °C
 *
 * Range: -50 to 200 °C. Error: 0.1 % of the change. Source: IEC 60028, IEC 60034-1 (from memory).
 */
export function copperResistance(
  resistance: number,
  temperature: number,
  at: number = copperReference,
  coefficient: number = copperCoefficient,
): number {
  const factor = (t: number) => 1 + coefficient * (t - 293.15);
  return (resistance * factor(temperature)) / factor(at);
}

const constantTerm: Term = { name: "torque constant", symbol: "k", unit: "N m/A" };
const voltage: Term = { name: "open voltage of the pack", symbol: "V_o", unit: "V" };
const noLoad: Term = { name: "no-load current", symbol: "I_0", unit: "A" };

/** Torque constant from the speed constant: the same number is the back-emf in V s/rad. */
export const torqueConstant = relation({
  name: "torque constant",
  symbol: "k",
  unit: "N m/A",
  terms: { speedConstant: { name: "speed constant (Kv)", symbol: "K_v", unit: "rad/(V s)" } },
  formula: (t) => `\\frac{1}{${t.speedConstant}}`,
  of: ({ speedConstant }) => 1 / speedConstant,
  assumes: "Kv in radians per second and volt; with Kv in rpm/V it is 60 / (2π Kv).",
  source: "M. Drela, First-Order DC Electric Motor Model, MIT (2007)",
});

/** Speed with full duty and nothing to drive, after the gears. */
export const noLoadSpeed = relation({
  name: "no-load head speed",
  symbol: "n_0",
  unit: "rad/s",
  terms: {
    speedConstant: { name: "speed constant (Kv)", symbol: "K_v", unit: "rad/(V s)" },
    openVoltage: voltage,
    noLoadCurrent: noLoad,
    resistance: { name: "resistance of motor, controller and pack", symbol: "R", unit: "Ω" },
    gearRatio: { name: "gear ratio", symbol: "G", unit: "" },
  },
  formula: (t) =>
    `\\frac{${t.speedConstant}\\,(${t.openVoltage} - ${t.noLoadCurrent} \\times ${t.resistance})}{${t.gearRatio}}`,
  of: (v) => (v.speedConstant * (v.openVoltage - v.noLoadCurrent * v.resistance)) / v.gearRatio,
  assumes: "No blades, no tail: the motor turns nothing but the bare gears. Any unit of speed will do for Kv.",
  source: "M. Drela, First-Order DC Electric Motor Model, MIT (2007)",
});

/** Motor current behind a controller taken as an ideal chopper. */
export const motorCurrent = relation({
  name: "motor current",
  symbol: "I",
  unit: "A",
  terms: {
    duty: { name: "duty", symbol: "D", unit: "" },
    openVoltage: voltage,
    torqueConstant: constantTerm,
    motorSpeed: { name: "motor speed", symbol: "\\omega", unit: "rad/s" },
    motorResistance: { name: "resistance of the warm winding", symbol: "R_m", unit: "Ω" },
    controllerResistance: { name: "resistance of the controller", symbol: "R_s", unit: "Ω" },
    packResistance: { name: "pack resistance", symbol: "R_p", unit: "Ω" },
  },
  formula: (t) =>
    `\\frac{${t.duty} \\times ${t.openVoltage} - ${t.torqueConstant} \\times ${t.motorSpeed}}{${t.motorResistance} + ${t.controllerResistance} + ${t.duty}^2 \\times ${t.packResistance}}`,
  of: (v) =>
    (v.duty * v.openVoltage - v.torqueConstant * v.motorSpeed) /
    (v.motorResistance + v.controllerResistance + v.duty * v.duty * v.packResistance),
  assumes:
    "The controller is an ideal chopper: the pack gives D times the motor's current, so its resistance counts D² times.",
  source: "Mohan, Undeland, Robbins, Power Electronics, ch. 7; Drela (2007)",
});

/** Torque on the motor's shaft. */
export const motorTorque = relation({
  name: "motor torque",
  symbol: "Q_m",
  unit: "N m",
  terms: {
    torqueConstant: constantTerm,
    current: { name: "motor current", symbol: "I", unit: "A" },
    noLoadCurrent: noLoad,
  },
  formula: (t) => `${t.torqueConstant}\\,(${t.current} - ${t.noLoadCurrent})`,
  of: (v) => v.torqueConstant * (v.current - v.noLoadCurrent),
  assumes: "Iron and bearings take the no-load current at every speed and load.",
  source: "M. Drela, First-Order DC Electric Motor Model, MIT (2007)",
});

/** A point on a motor's curve at a fixed voltage. */
export interface MotorPoint {
  /** A */
  readonly current: number;
  /** rad/s of the motor */
  readonly speed: number;
  /** N m */
  readonly torque: number;
  /** W on the shaft */
  readonly power: number;
  /** W into the copper and into iron and bearings: power in = power + heat */
  readonly heat: number;
  /** shaft power over electrical power */
  readonly efficiency: number;
}

/**
 * Where a motor runs at a voltage and a current: speed (V - I R) / k, torque k (I - I0), in SI units.
 * Source: M. Drela, First-Order DC Electric Motor Model, MIT (2007).
 *
 * @param volts at the terminals, V
 * @param current A
 * @param resistance ohm
 * @param constant torque constant, N m/A
 * @param noLoadCurrent A
 */
export function motorPoint(
  volts: number,
  current: number,
  resistance: number,
  constant: number,
  noLoadCurrent: number,
): MotorPoint {
  const speed = (volts - current * resistance) / constant;
  const torque = constant * (current - noLoadCurrent);
  const power = torque * speed;
  const heat = current * current * resistance + noLoadCurrent * constant * speed;
  return { current, speed, torque, power, heat, efficiency: current === 0 ? 0 : power / (volts * current) };
}

/** The four landmarks of a motor at a voltage. */
export interface Landmarks {
  readonly noLoad: MotorPoint;
  readonly bestEfficiency: MotorPoint;
  readonly bestPower: MotorPoint;
  readonly stall: MotorPoint;
}

/**
 * No load (I0), best efficiency sqrt(I0 V / R), best power (V/R + I0) / 2 and stall V / R, currents in A.
 * Null when the voltage can't even drive the no-load current: the motor doesn't turn.
 * No page asks for them; they are part of the model all the same, since a motor is known by them, and checked as such.
 * Source: closed forms of M. Drela, First-Order DC Electric Motor Model, MIT (2007). Parameters as `motorPoint`.
 */
export function landmarks(
  volts: number,
  resistance: number,
  constant: number,
  noLoadCurrent: number,
): Landmarks | null {
  if (!(volts > noLoadCurrent * resistance && resistance > 0)) return null;
  const at = (current: number) => motorPoint(volts, current, resistance, constant, noLoadCurrent);
  return {
    noLoad: at(noLoadCurrent),
    bestEfficiency: at(Math.sqrt((noLoadCurrent * volts) / resistance)),
    bestPower: at((volts / resistance + noLoadCurrent) / 2),
    stall: at(volts / resistance),
  };
}
