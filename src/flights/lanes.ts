/** The traces of a flight in the units that they are read in. */
import { rpm } from "#model/constants";
import { decimate } from "#model/flight/decimate";
import { type Trace, valueAt } from "#model/flight/trace";

/** What can be drawn against time. */
export const laneNames = ["head-speed", "duty", "collective", "voltage", "current", "charge", "height"] as const;
export type LaneName = (typeof laneNames)[number];

interface Lane {
  readonly quantity: "rotorSpeed" | "duty" | "collective" | "packVoltage" | "packCurrent" | "charge" | "height";
  readonly unit: string;
  /** SI value = shown value x this. */
  readonly scale: number;
}

/** Where each lane's values come from, and their unit. */
export const lanes: Readonly<Record<LaneName, Lane>> = {
  "head-speed": { quantity: "rotorSpeed", unit: "rpm", scale: rpm },
  duty: { quantity: "duty", unit: "percent", scale: 0.01 },
  collective: { quantity: "collective", unit: "deg", scale: Math.PI / 180 },
  voltage: { quantity: "packVoltage", unit: "V", scale: 1 },
  current: { quantity: "packCurrent", unit: "A", scale: 1 },
  charge: { quantity: "charge", unit: "percent", scale: 0.01 },
  height: { quantity: "height", unit: "m", scale: 1 },
};

/** A line against time: s, and the lane's unit. */
export interface Line {
  readonly times: Float64Array;
  readonly values: Float64Array;
}

/** The line of a lane, thinned to what a plot so many pixels wide can show, no extreme lost. Units: s and the lane's. */
export function lineOf(trace: Trace, name: LaneName, pixels: number): Line {
  const { quantity, scale } = lanes[name];
  const all = trace[quantity];
  const kept = decimate(all, Math.max(40, pixels / 2));
  const times = new Float64Array(kept.length);
  const values = new Float64Array(kept.length);
  for (let i = 0; i < kept.length; i++) {
    times[i] = trace.time[kept[i]!]!;
    values[i] = all[kept[i]!]! / scale;
  }
  return { times, values };
}

/** A lane's value at a time (s), in the lane's unit; null past the end of the flight. */
export function laneAt(trace: Trace, name: LaneName, time: number): number | null {
  const last = trace.time[trace.time.length - 1] ?? -1;
  if (time > last + 1e-6) return null;
  return valueAt(trace, lanes[name].quantity, time) / lanes[name].scale;
}
