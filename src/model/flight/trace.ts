/** What is kept of a run: every so many ticks, all quantities, in one typed array for each. */
import * as at from "./state.ts";

/** A column of a trace: where its values come from. */
interface Column {
  readonly from: "state" | "now";
  readonly place: number;
}

const state = (place: number): Column => ({ from: "state", place });
const now = (place: number): Column => ({ from: "now", place });

/** The quantities of a trace beside its time; all SI. */
export const columns = {
  motorSpeed: state(at.MOTOR),
  rotorSpeed: state(at.ROTOR),
  height: state(at.HEIGHT),
  climb: state(at.CLIMB),
  inflow: state(at.INFLOW),
  charge: state(at.CHARGE),
  sag: state(at.SAG),
  windingTemperature: state(at.WINDING),
  controllerTemperature: state(at.CONTROLLER),
  motorAngle: state(at.ANGLE),
  chemicalEnergy: state(at.CHEMICAL),
  packHeat: state(at.PACK_HEAT),
  controllerHeat: state(at.CONTROLLER_HEAT),
  copperHeat: state(at.COPPER_HEAT),
  frictionHeat: state(at.FRICTION_HEAT),
  meshHeat: state(at.MESH_HEAT),
  airWork: state(at.AIR_WORK),
  liftWork: state(at.LIFT_WORK),
  dragWork: state(at.DRAG_WORK),
  duty: now(at.DUTY),
  collective: now(at.COLLECTIVE),
  motorCurrent: now(at.MOTOR_CURRENT),
  packCurrent: now(at.PACK_CURRENT),
  packVoltage: now(at.PACK_VOLTAGE),
  thrust: now(at.THRUST),
  load: now(at.LOAD),
} as const satisfies Record<string, Column>;

export type Quantity = keyof typeof columns | "time" | "setSpeed" | "engaged";

/** Traces of a run, all of one length; `setSpeed` is the rotor speed asked for (rad/s), 0 without governor. */
export type Trace = { readonly [Q in Quantity]: Float64Array };

export interface Recorder {
  /** Keeps a sample; `port`: [0] time (s), [1] set rotor speed (rad/s). */
  readonly keep: (y: Float64Array, outputs: Float64Array, mode: Int32Array) => void;
  readonly port: Float64Array;
  /** The trace of the samples kept so far: views, no copies. */
  readonly trace: () => Trace;
}

/**
 * Room for a number of samples, all quantities in SI. One block of memory, so that a run can be handed over whole.
 * Source: definition.
 */
export function createRecorder(room: number): Recorder {
  const list = Object.entries(columns);
  const width = list.length + 3;
  const block = new Float64Array(width * room);
  const states = Int32Array.from(list.flatMap(([, c], i) => (c.from === "state" ? [i, c.place] : [])));
  const outs = Int32Array.from(list.flatMap(([, c], i) => (c.from === "now" ? [i, c.place] : [])));
  const port = new Float64Array(2);
  const count = new Int32Array(1);
  const keep = (y: Float64Array, outputs: Float64Array, mode: Int32Array): void => {
    const n = count[0]!;
    if (n >= room) return;
    for (let i = 0; i < states.length; i += 2) block[states[i]! * room + n] = y[states[i + 1]!]!;
    for (let i = 0; i < outs.length; i += 2) block[outs[i]! * room + n] = outputs[outs[i + 1]!]!;
    block[(width - 3) * room + n] = port[0]!;
    block[(width - 2) * room + n] = port[1]!;
    block[(width - 1) * room + n] = mode[0]!;
    count[0] = n + 1;
  };
  const trace = (): Trace => {
    const view = (i: number) => block.subarray(i * room, i * room + count[0]!);
    const named = list.map(([name], i) => [name, view(i)] as const);
    return Object.fromEntries([
      ...named,
      ["time", view(width - 3)],
      ["setSpeed", view(width - 2)],
      ["engaged", view(width - 1)],
    ]) as Trace;
  };
  return { keep, port, trace };
}

/** A quantity (SI) at a time (s) of a trace: straight between samples, its ends held. Source: definition. */
export function valueAt(trace: Trace, quantity: Quantity, time: number): number {
  const times = trace.time;
  const values = trace[quantity];
  let low = 0;
  let high = times.length - 1;
  if (high < 0) return 0;
  if (!(time > times[low]!)) return values[low]!;
  if (time >= times[high]!) return values[high]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle;
  }
  const share = (time - times[low]!) / (times[high]! - times[low]!);
  return values[low]! + share * (values[high]! - values[low]!);
}
