/** The one-way clutch: rigid while the motor drives, loose while the rotor runs ahead; each change is met at its moment. */
import { createStepper } from "./integrate.ts";
import type { Plant } from "./plant.ts";
import * as at from "./state.ts";

/** Step length as a share of the fastest time constant: an error of 5e-6 of a motion that has just begun. Our choice. */
const finest = 0.2;
/** More steps in one tick than this and the machine is too quick to be followed. */
const mostSteps = 200;
/** A pull of less than this share of the motor's stall torque only touches zero. Our choice. */
const touch = 1e-4;
/** More changes of the clutch in one tick than this: it chatters without end. */
const mostChanges = 40;

/** A figure past this is on its way out of the numbers: the square of a speed like that still is one. Our choice. */
const beyond = 1e30;

/** What a tick came to. */
export const DONE = 0;
export const CHATTERS = 1;
export const BROKEN = 2;

export interface Ticker {
  /** Advances the state by a whole tick; DONE, CHATTERS, or BROKEN when a figure left the numbers. */
  readonly tick: (y: Float64Array) => number;
  /** [0]: changes of the clutch so far; [1] is for the caller to keep; [2]: steps taken so far. */
  readonly changes: Int32Array;
  /** Steps of a tick with the clutch engaged and overrunning. */
  readonly steps: readonly [number, number];
}

/**
 * Steps a plant through ticks of equal length (s), with as many Runge-Kutta steps as its fastest time constant wants in each
 * state of the clutch. Where the clutch changes within a step, the moment is found by regula falsi (Illinois), the
 * step ends there and the rest follows in the other state. A torque that only touches zero parts nothing. Null when a tick would take too many steps.
 *
 * Sources: E. Hairer, S. Norsett, G. Wanner, Solving Ordinary Differential Equations I, II.6; Illinois rule: M. Dowell
 * and P. Jarratt, BIT 11 (1971) 168-174.
 *
 * @param plant equations of motion
 * @param length of a tick, s
 * @param share step length as a share of the fastest time constant
 */
export function createTicker(plant: Plant, length: number, share: number = finest): Ticker | null {
  const { now, mode } = plant;
  const count = (rate: number) => Math.max(1, Math.ceil((length * rate) / share));
  const steps: [number, number] = [count(plant.fastest[0]), count(plant.fastest[1])];
  if (!(Math.max(...steps) <= mostSteps)) return null;
  const { gearRatio, motor, controller, pack } = plant.machine;
  const stall = (motor.constant * pack.openVoltage(1)) / (motor.resistance + controller.resistance + pack.resistance);
  const slight = Math.abs(stall) * touch;
  const stepper = createStepper(at.SIZE, at.ACTING, plant.derivative, now, at.SINCE);
  const tiny = length * 1e-9;
  const changes = new Int32Array(3);
  const kept = new Float64Array(at.SIZE);
  const spare = new Float64Array(at.SIZE);
  // [0] the sign of change: below nothing, the clutch must change; [1] its value at the step's start.
  const sign = new Float64Array(2);

  /** How far the clutch is from changing: the torque through it, or how far the motor is behind the rotor. */
  const measure = (y: Float64Array): void => {
    if (mode[0] === 1) {
      plant.derivative(y, spare);
      sign[0] = now[at.CLUTCH]!;
    } else {
      sign[0] = gearRatio * y[at.ROTOR]! - y[at.MOTOR]!;
    }
  };

  /** Both speeds are equal when the clutch takes or lets go: rounding is wiped off then. */
  const change = (y: Float64Array): void => {
    mode[0] = 1 - mode[0]!;
    y[at.MOTOR] = gearRatio * y[at.ROTOR]!;
    changes[0] = changes[0]! + 1;
  };

  /** Moves the state from `kept` to the moment of change within a step of the length that `stepper` holds. */
  const meet = (y: Float64Array, start: number): void => {
    let low = 0;
    let high = stepper.length[0]!;
    let below = sign[1]!;
    let above = sign[0]!;
    let end = high;
    for (let n = 0; n < 60 && high - low > 1e-13; n++) {
      end = n < 40 ? low + ((high - low) * below) / (below - above) : (low + high) / 2;
      y.set(kept);
      now[at.SINCE] = start;
      stepper.length[0] = end;
      stepper.begin(y);
      stepper.finish(y);
      measure(y);
      const value = sign[0]!;
      if (value === 0 || Math.abs(value) < 1e-13 * Math.abs(sign[1]!)) break;
      if (value < 0) {
        high = end;
        above = value;
        below /= 2;
      } else {
        low = end;
        below = value;
        above /= 2;
      }
    }
    change(y);
  };

  const tick = (y: Float64Array): number => {
    now[at.SINCE] = 0;
    const first = changes[0]!;
    let together = false;
    let pulled = 0;
    for (;;) {
      const left = length - now[at.SINCE]!;
      if (!(left > tiny)) break;
      const start: number = now[at.SINCE]!;
      stepper.begin(y);
      if (mode[0] === 1 && now[at.CLUTCH]! < 0 && !together) {
        // The duty or the collective has just jumped: a clutch that would have to pull lets go at once.
        pulled = now[at.CLUTCH]!;
        change(y);
        stepper.begin(y);
      }
      const engaged = mode[0] === 1;
      sign[1] = engaged ? now[at.CLUTCH]! : gearRatio * y[at.ROTOR]! - y[at.MOTOR]!;
      // Equal steps through what is left, so that none is a sliver.
      stepper.length[0] = left / Math.ceil((left / length) * steps[engaged ? 0 : 1]! - 1e-9);
      kept.set(y);
      stepper.finish(y);
      changes[2] = changes[2]! + 1;
      // The torque of the last stage is close to that of the step's end: only when it is past zero is the end asked.
      if (!engaged || now[at.CLUTCH]! < 0) {
        measure(y);
        if (sign[0]! < 0 && !engaged && sign[1]! <= 0 && pulled > -slight) {
          // It has just let go, and the motor is ahead again before the step is over: the torque only touched zero. Both go
          // this one step together; else it would let go and take at one and the same moment for ever.
          y.set(kept);
          now[at.SINCE] = start;
          mode[0] = 1;
          together = true;
          continue;
        }
        if (sign[0]! < 0 && !together) {
          meet(y, start);
          pulled = 0;
        }
      }
      together = false;
      if (changes[0]! - first > mostChanges) return CHATTERS;
    }
    for (let i = 0; i < at.SIZE; i++) if (!(Math.abs(y[i]!) < beyond)) return BROKEN;
    return DONE;
  };
  return { tick, changes, steps };
}
