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
  const place = new Int32Array([-1]);
  // [0] time the order began, s; [1] duty then; [2] rate of the ramp, rad/s2.
  const kept = new Float64Array(3);
  meter.reset(0, speed);
  governor.preset(duty);
  governor.port[INTERVAL] = interval;
  port[DUTY] = duty;
  port[READING] = speed;
  port[ASKED] = speed;

  const begin = (): void => {
    const order = orders[place[0]!]!;
    kept[0] = port[NOW]!;
    kept[1] = port[DUTY]!;
    if (order.kind === "off") governor.preset(0);
    if (order.kind !== "speed") port[ASKED] = 0;
    else if (order.ramp === "none") port[ASKED] = order.speed;
    else {
      const from = port[READING]!;
      if (order.ramp === "bail-out") kept[2] = (order.speed - from) / Math.max(c.bailOutRamp, interval);
      else kept[2] = c.reference / Math.max(c.startRamp, interval);
      port[ASKED] = from;
    }
  };

  const sample = (): void => {
    const time = port[NOW]!;
    meter.port[TIME] = time;
    meter.port[ANGLE] = port[TURNED]!;
    meter.port[SPEED] = port[MOTOR]!;
    meter.read();
    const reading = meter.port[MEASURED]!;
    port[READING] = reading;
    while (place[0]! + 1 < orders.length && time >= orders[place[0]! + 1]!.from - 1e-9) {
      place[0] = place[0]! + 1;
      begin();
    }
    const order = place[0]! < 0 ? undefined : orders[place[0]!];
    port[HOLDS] = 0;
    if (order === undefined || order.kind === "off") port[DUTY] = 0;
    else if (order.kind === "duty") {
      const share = order.ramp > 0 ? (time - kept[0]!) / order.ramp : 1;
      const wanted = kept[1]! + Math.min(share, 1) * (order.duty - kept[1]!);
      port[DUTY] = Math.round(wanted * c.dutySteps) / c.dutySteps;
    } else {
      if (port[ASKED] !== order.speed) {
        const next = port[ASKED]! + kept[2]! * interval;
        const reached = kept[2]! >= 0 === next >= order.speed;
        port[ASKED] = order.ramp === "none" || reached || kept[2] === 0 ? order.speed : next;
      }
      if (port[ASKED] === order.speed) port[HOLDS] = 1;
      governor.port[ERROR] = (port[ASKED]! - reading) / c.reference;
      governor.correct();
      port[DUTY] = governor.port[OUTPUT]!;
    }
  };
  return { port, sample };
}
