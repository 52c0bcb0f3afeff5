/** Where the chain and a load come to rest: speed at a duty, ceiling, learning run. SI; speeds are the main rotor's. */
import { motorCurrent, motorTorque } from "./motor.ts";
import { currentForTorque, type Powertrain } from "./powertrain.ts";
import { learning } from "./reference.ts";
import { bracketedRoot } from "./root.ts";
import type { LoadTorque } from "./rotor-load.ts";

/** The speed at which a load and the chain balance, or why there is none. */
export type SteadySpeed =
  | { readonly ok: true; readonly speed: number; readonly torque: number }
  | { readonly ok: false; readonly why: "motor does not turn" | "load too heavy" | "rotor cannot carry it" };

/** Shares of the no-load speed that are tried from the top down. */
const tries = [0.94, 0.88, 0.8, 0.68, 0.52, 0.34, 0.18, 0.06, 0.01, 1e-4] as const;
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Speed in rad/s at which the rotor settles with a duty, open loop: D V = k G w + I (Rm + Rc + D² Rp), I by the load's
 * torque there. Where a load that needs constant thrust could balance at two speeds, the upper, stable one.
 * Never fails to converge; when there is no such speed it says why. Exact to 1e-12 of the speed.
 * Source: averaged ideal step-down chopper, Mohan, Undeland, Robbins, Power Electronics, ch. 7.
 *
 * @param duty 0 to 1
 * @param load torque on the main shaft (N m) at a speed of it
 * @param near a speed close to the answer, rad/s, if one is known: saves half the calls of `load`
 */
export function speedAtDuty(train: Powertrain, duty: number, load: LoadTorque, near?: number): SteadySpeed {
  const back = train.torqueConstant * train.gearRatio;
  const resistance = train.motorResistance + train.controllerResistance + duty * duty * train.packResistance;
  const volts = duty * train.openVoltage;
  const top = (volts - resistance * train.noLoadCurrent) / back;
  if (!(top > 0)) return { ok: false, why: "motor does not turn" };

  let carried = false;
  /** Volts to spare at a speed; a rotor that can't carry the load there asks for more than there is. */
  const spare = (speed: number): number => {
    const torque = load(speed);
    if (torque === null) return Number.NEGATIVE_INFINITY;
    carried = true;
    return volts - back * speed - resistance * currentForTorque(train, torque);
  };
  const between = (low: number, high: number, atLow: number, atHigh: number): SteadySpeed => {
    const speed = bracketedRoot(spare, low, high, 1e-12 * top, atLow, atHigh) ?? low;
    // What the motor gives there is what the load takes, and saves another call of the load.
    const { openVoltage, torqueConstant, motorResistance, controllerResistance, packResistance, noLoadCurrent } = train;
    const motorSpeed = train.gearRatio * speed;
    const current = motorCurrent({
      duty,
      openVoltage,
      torqueConstant,
      motorSpeed,
      motorResistance,
      controllerResistance,
      packResistance,
    });
    const torque = train.gearRatio * train.meshEfficiency * motorTorque({ torqueConstant, current, noLoadCurrent });
    return { ok: true, speed, torque };
  };

  /** The balance close to a speed, if it is there. */
  const close = (to: number): SteadySpeed | null => {
    if (!(to > 0 && to < top)) return null;
    const low = to * 0.997;
    const high = Math.min(top, to * 1.003);
    const atLow = spare(low);
    const atHigh = atLow > 0 ? spare(high) : atLow;
    return atLow > 0 && atHigh <= 0 ? between(low, high, atLow, atHigh) : null;
  };

  const known = near === undefined ? null : close(near);
  if (known) return known;
  const atTop = load(top);
  if (atTop !== null && (atTop <= 0 || resistance === 0)) return { ok: true, speed: top, torque: Math.max(0, atTop) };

  // Torque goes nearly with the square of the speed: twice from a speed to where that rule puts the balance.
  let [tried, taken] = [top, atTop];
  for (let step = 0; step < 2 && taken !== null; step++) {
    const perSquare = (resistance * (currentForTorque(train, taken) - train.noLoadCurrent)) / (tried * tried);
    const rest = volts - resistance * train.noLoadCurrent;
    tried = (2 * rest) / (back + Math.sqrt(back * back + 4 * perSquare * rest));
    taken = load(tried);
  }
  const guessed = taken === null ? null : close(tried);
  if (guessed) return guessed;

  let best = top;
  let most = Number.NEGATIVE_INFINITY;
  let above = top;
  let atAbove = atTop === null ? most : -resistance * (currentForTorque(train, atTop) - train.noLoadCurrent);
  for (const share of tries) {
    const speed = share * top;
    const rest = spare(speed);
    if (rest > 0) return between(speed, above, rest, atAbove);
    if (rest > most) {
      most = rest;
      best = speed;
    }
    above = speed;
    atAbove = rest;
  }
  // The volts to spare rise to one peak and fall again; a narrow peak may lie between two tries.
  const peak = summit(spare, Math.max(0.01 * top, best - 0.18 * top), Math.min(top, best + 0.18 * top));
  const atPeak = spare(peak);
  if (atPeak > 0) return between(peak, top, atPeak, spare(top));
  return { ok: false, why: carried || atTop !== null ? "load too heavy" : "rotor cannot carry it" };
}

/** Where a function with one peak has it, by golden section, to 1e-4 of the interval. */
function summit(f: (x: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let fa = f(a);
  let fb = f(b);
  for (let i = 0; i < 20; i++) {
    // Below the speeds at which the rotor carries the load at all there is nothing to compare: go up.
    if (fa > fb) {
      [high, b, fb] = [b, a, fa];
      a = high - golden * (high - low);
      fa = f(a);
    } else {
      [low, a, fa] = [a, b, fb];
      b = low + golden * (high - low);
      fb = f(b);
    }
  }
  return (low + high) / 2;
}

/**
 * Ceiling: head speed with full duty against a load, rad/s; nothing can hold more. Parameters and errors as `speedAtDuty`.
 * Source: definition.
 */
export const ceilingAt = (train: Powertrain, load: LoadTorque, near?: number): SteadySpeed =>
  speedAtDuty(train, 1, load, near);

/**
 * Head speed to expect while a reference is learned, rad/s: open loop, at the learning throttle taken as duty.
 * Common practice, no source: full pack, flat pitch, blades on.
 *
 * @param full the chain with a full pack
 * @param flatPitch load of main and tail rotor at zero collective
 * @param throttle 0 to 1
 */
export const learningSpeed = (
  full: Powertrain,
  flatPitch: LoadTorque,
  throttle: number = learning.throttle,
): SteadySpeed => speedAtDuty(full, throttle, flatPitch);
