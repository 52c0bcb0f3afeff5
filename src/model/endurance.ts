/** How long and how far down the charge goes: flight time, and the lowest charge that still holds a speed. SI. */
import { integral } from "./gauss.ts";
import { currentForTorque, dutyAsked, type Powertrain, voltageToHold } from "./powertrain.ts";
import { relation } from "./relation.ts";
import { bracketedRoot } from "./root.ts";

/** Charge at which a flight ends: 20 %. Common practice, no source. */
export const reserveCharge = 0.2;

/** Time that a charge lasts at a mean current. */
export const flightTime = relation({
  name: "flight time",
  symbol: "t",
  unit: "s",
  terms: {
    capacity: { name: "charge of the full pack", symbol: "C", unit: "C" },
    used: { name: "share of it that is used", symbol: "\\Delta c", unit: "" },
    current: { name: "mean pack current", symbol: "\\bar{I}_p", unit: "A" },
  },
  formula: (t) => `\\frac{${t.capacity} \\times ${t.used}}{${t.current}}`,
  of: (v) => (v.capacity * v.used) / v.current,
  assumes: "The pack gives its printed capacity, and nothing but this load draws from it.",
  source: "charge count, by definition",
});

/**
 * Lowest charge (0 to 1) at which an open voltage still stands; 0 when an empty pack has it, null when a full one hasn't.
 * Exact to 1e-12. Source: the pack's own voltage curve, inverted.
 *
 * @param voltage open voltage of the pack, V, at a charge; rises with it
 * @param wanted V
 */
export function chargeForVoltage(voltage: (charge: number) => number, wanted: number): number | null {
  if (voltage(1) < wanted) return null;
  if (voltage(0) >= wanted) return 0;
  return bracketedRoot((charge) => voltage(charge) - wanted, 0, 1, 1e-12);
}

/**
 * Lowest charge (0 to 1) at which a speed can be held against a torque; null when even a full pack can't.
 * The pack's resistance is taken as that of the chain at every charge. Source: `voltageToHold` and the pack's curve.
 *
 * @param train the chain; its own open voltage plays no part
 * @param speed main rotor, rad/s
 * @param torque on the main shaft, N m
 * @param voltage open voltage of the pack, V, at a charge
 */
export const lowestCharge = (
  train: Powertrain,
  speed: number,
  torque: number,
  voltage: (charge: number) => number,
): number | null => chargeForVoltage(voltage, voltageToHold(train, speed, torque));

/** How long a speed is held, and what ends it. */
export interface Endurance {
  /** s */
  readonly time: number;
  /** charge at the end, 0 to 1 */
  readonly end: number;
  readonly because: "reserve reached" | "speed lost";
  /** A, mean over the time; null for no time at all */
  readonly meanCurrent: number | null;
}

/**
 * How long (s) a speed is held against a torque while the pack empties: t = C ∫ dc / (D(c) I), with the duty rising as the
 * voltage falls. Ends at the reserve, or where the speed can no longer be held; null when it can't be held at the start.
 * Error: 1e-5 of the integral; the slow sag, which costs a per cent or two, is left out. Source: charge count, by definition.
 *
 * @param train the chain; its own open voltage plays no part
 * @param speed main rotor, rad/s
 * @param torque on the main shaft, N m
 * @param capacity charge of the full pack, C
 * @param from charge at the start, 0 to 1
 * @param voltage open voltage of the pack, V, at a charge
 * @param reserve charge at which the flight ends
 */
export function endurance(
  train: Powertrain,
  speed: number,
  torque: number,
  capacity: number,
  from: number,
  voltage: (charge: number) => number,
  reserve: number = reserveCharge,
): Endurance | null {
  const lowest = lowestCharge(train, speed, torque, voltage);
  if (lowest === null || lowest > from) return null;
  const lost = lowest > reserve;
  const end = lost ? lowest : reserve;
  const because = lost ? "speed lost" : "reserve reached";
  if (from <= end) return { time: 0, end: from, because, meanCurrent: null };
  const current = currentForTorque(train, torque);
  // Within rounding of the lowest charge the duty may miss by a hair: it is full duty there.
  const drawn = (charge: number) =>
    current * Math.min(1, dutyAsked({ ...train, openVoltage: voltage(charge) }, speed, torque) ?? 1);
  const time = capacity * integral((charge) => 1 / drawn(charge), end, from, 3);
  return { time, end, because, meanCurrent: (capacity * (from - end)) / time };
}
