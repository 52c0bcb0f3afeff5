/** The speed controller at work: carries out the throttle's orders, sample by sample. */
import { ANGLE, createSpeedMeter, MEASURED, SPEED, TIME } from "./commutation.ts";
import { createGovernor, ERROR, INTERVAL, OUTPUT } from "./governor.ts";
import type { FlightMachine } from "./machine.ts";
import type { Throttle } from "./orders.ts";

export const NOW = 0;
export const TURNED = 1;
export const MOTOR = 2;
export const DUTY = 3;
export const ASKED = 4;
export const READING = 5;
export const HOLDS = 6;

export interface Control {
  /**
   * [NOW] time (s), [TURNED] motor angle (rad), [MOTOR] motor speed (rad/s) in; [DUTY], [ASKED] motor speed asked for at this moment
   * (rad/s, 0 without governor), [READING] speed that the controller believes (rad/s), [HOLDS] 1 when no ramp is on, out.
   */
  readonly port: Float64Array;
  /** One sample of the loop. */
  readonly sample: () => void;
}

/**
 * A controller that follows throttle orders through a run, once in each sample of `interval` seconds: off, an open-loop
 * duty with its ramp, or the governor with soft start or bail-out ramp, on the speed (rad/s) that it reads from the
 * commutation. Source: common practice for the ramps; the parts' own files for the rest.
 *
 * @param machine for the controller's settings and the motor's poles
 * @param orders rising in time
 * @param interval between samples, s
 * @param speed motor speed at time 0, rad/s
 * @param duty at time 0
 */
export function createControl(
  machine: FlightMachine,
  orders: readonly Throttle[],
  interval: number,
  speed: number,
  duty: number,
): Control {
  const c = machine.controller;
  const meter = createSpeedMeter(machine.motor.poles, c.clockStep);
  const governor = createGovernor({
    proportionalGain: c.proportionalGain,
    integralGain: c.integralGain,
    antiWindup: c.antiWindup,
    backGain: c.backGain,
    lowest: c.lowestDuty,
    highest: c.highestDuty,
    steps: c.dutySteps,
  });
  const port = new Float64Array(7);
  // [0] the order that is carried out, [1] what it is: nothing, a duty, or a speed.
  const place = new Int32Array([-1, 0]);
  // [0] time the order began, s; [1] duty then; [2] rate of the set speed, rad/s2; [3] duty or speed at the end of the ramp;
  // [4] length of a duty's ramp, s; [5] time of the next order, s. Numbers in a typed array: no garbage.
  const kept = new Float64Array(6);
  kept[5] = orders[0]?.from ?? Number.POSITIVE_INFINITY;
  const { reference, dutySteps } = c;
  meter.reset(0, speed);
  governor.preset(duty);
  governor.port[INTERVAL] = interval;
  port[DUTY] = duty;
  port[READING] = speed;
  port[ASKED] = speed;

  const begin = (): void => {
    place[0] = place[0]! + 1;
    const order = orders[place[0]!]!;
    kept[0] = port[NOW]!;
    kept[1] = port[DUTY]!;
    kept[2] = 0;
    kept[5] = orders[place[0]! + 1]?.from ?? Number.POSITIVE_INFINITY;
    place[1] = order.kind === "off" ? 0 : order.kind === "duty" ? 1 : 2;
    if (order.kind !== "speed") port[ASKED] = 0;
    if (order.kind === "off") governor.preset(0);
    if (order.kind === "duty") {
      kept[3] = order.duty;
      kept[4] = order.ramp;
    }
    if (order.kind === "speed") {
      kept[3] = order.speed;
      const from = port[READING]!;
      port[ASKED] = order.ramp === "none" ? order.speed : from;
      if (order.ramp === "bail-out") kept[2] = (order.speed - from) / Math.max(c.bailOutRamp, interval);
      if (order.ramp === "start") kept[2] = reference / Math.max(c.startRamp, interval);
    }
  };

  const sample = (): void => {
    const time = port[NOW]!;
    meter.port[TIME] = time;
    meter.port[ANGLE] = port[TURNED]!;
    meter.port[SPEED] = port[MOTOR]!;
    meter.read();
    port[READING] = meter.port[MEASURED]!;
    while (time >= kept[5]! - 1e-9) begin();
    port[HOLDS] = 0;
    if (place[1] === 0) port[DUTY] = 0;
    else if (place[1] === 1) {
      const share = kept[4]! > 0 ? (time - kept[0]!) / kept[4]! : 1;
      const wanted = kept[1]! + Math.min(share, 1) * (kept[3]! - kept[1]!);
      port[DUTY] = Math.round(wanted * dutySteps) / dutySteps;
    } else {
      const rate = kept[2]!;
      const next = port[ASKED]! + rate * interval;
      const reached = rate === 0 || rate > 0 === next >= kept[3]!;
      port[ASKED] = reached ? kept[3]! : next;
      if (reached) {
        kept[2] = 0;
        port[HOLDS] = 1;
      }
      governor.port[ERROR] = (port[ASKED]! - port[READING]!) / reference;
      governor.correct();
      port[DUTY] = governor.port[OUTPUT]!;
    }
  };
  return { port, sample };
}
