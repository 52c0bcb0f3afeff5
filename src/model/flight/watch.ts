/** Watches a run tick by tick, so that nothing is lost between the samples that are kept: when what was out of order. */
import { reserveCharge } from "../endurance.ts";
import type { FlightMachine } from "./machine.ts";
import type { Plant } from "./plant.ts";
import * as at from "./state.ts";

/** What is watched; the order is the place in the tables. */
export const kinds = [
  "duty-at-limit",
  "speed-low",
  "speed-high",
  "motor-over-limit",
  "electrical-over-limit",
  "blades-over-limit",
  "current-over-limit",
  "winding-over-limit",
  "controller-over-limit",
  "overrunning",
  "hunting",
  "charge-low",
] as const;
export type Kind = (typeof kinds)[number];

/** A stretch of time (s) in which something was so. */
export interface Span {
  readonly kind: Kind;
  readonly from: number;
  /** When it ended; the end of the run when it hadn't by then. */
  readonly to: number;
  /** False when it still went on at the end of the run. */
  readonly ended: boolean;
  /** The furthest value (SI; a duty, a charge: ratio; hunting: swing about the set speed, relative) and its time, s. */
  readonly value: number;
  readonly at: number;
  /** What it is held against: the limit, the set rotor speed (rad/s); hunting: swings in a second, Hz. */
  readonly level: number;
}

/** Relative departures from the set speed that count, our choice: 1 % is some 20 rpm. */
const speedBand = 0.01;

/** Quiet time that ends a stretch, and shortest stretch that counts, s, by kind. */
const gaps = [0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.5, 0.5, 0.03, 1.2, 1];
const shortest = [0.03, 0.02, 0.02, 0, 0, 0, 0, 0, 0, 0.05, 0.5, 0];
/** The furthest value is the lowest of these, the highest of the others. */
const lowest = new Set<Kind>(["speed-low", "charge-low"]);
/** Most stretches kept of one run. */
const room = 512;

export interface Watch {
  /** [0] time (s), [1] 1 when the governor holds a fixed speed, [2] set rotor speed (rad/s): in, for each tick. */
  readonly port: Float64Array;
  readonly look: (y: Float64Array) => void;
  /** The stretches, in order of their beginning, all closed at this time (s). */
  readonly spans: (end: number) => Span[];
}

/** The duty is at its limit when it was there for this share of the time just past (s), and so since this long (s). Our choice. */
const dutyTime = 0.015;
const dutyShare = 0.7;
const dutyLag = -dutyTime * Math.log(1 - dutyShare);
/** Ticks between the governor's extremes: a swing to the other side of this band is one half of a hunt. Our choice. */
const huntBand = 0.003;

/**
 * A watch over a run of a plant (SI units): see `kinds`. A speed counts as low or high once it departs by 1 % from a set
 * speed that was reached. Hunting: the speed swings from side to side, at least six times, while the collective rests.
 * Source: our choice of bands; limits are the machine's.
 */
export function createWatch(plant: Plant, machine: FlightMachine): Watch {
  const { limits, controller, motor } = machine;
  const n = kinds.length;
  const top = controller.highestDuty - 0.5 / controller.dutySteps;
  // A clutch that rattles while the motor starts is not worth a word.
  const turning = (0.2 * controller.reference) / machine.gearRatio;
  const none = Number.POSITIVE_INFINITY;
  const levels = Float64Array.of(
    controller.highestDuty,
    0,
    0,
    limits.motorSpeed ?? none,
    limits.electricalSpeed ?? none,
    limits.rotorSpeed ?? none,
    limits.packCurrent ?? none,
    limits.windingTemperature ?? none,
    limits.controllerTemperature ?? none,
    0,
    0,
    reserveCharge,
  );
  const values = new Float64Array(n);
  const inside = new Uint8Array(n);
  const open = new Uint8Array(n);
  const turn = Int8Array.from(kinds, (kind) => (lowest.has(kind) ? -1 : 1));
  // Per kind: from, last, furthest value, its time, level then.
  const now = new Float64Array(n * 5);
  const done = new Float64Array(room * 7);
  const count = new Int32Array(1);
  const port = new Float64Array(3);
  // [0] set speed that was reached, [1] collective when it last moved, [2] time of that, [3] time of the last swing,
  // [4] furthest in this hunt, [5] time the hunt began, [6] share of time at the duty's limit, [7] time of the last look, [8] departure from the set speed.
  const kept = new Float64Array(9);
  // [0] side of the last swing, [1] swings in a row.
  const swing = new Int32Array(2);
  const outputs = plant.now;

  const close = (k: number, ended: number): void => {
    open[k] = 0;
    const from = now[k * 5]!;
    const to = now[k * 5 + 1]!;
    const c = count[0]!;
    if (to - from < shortest[k]! || c >= room) return;
    for (let i = 0; i < 5; i++) done[c * 7 + 1 + i] = now[k * 5 + i]!;
    done[c * 7] = k;
    done[c * 7 + 6] = ended;
    count[0] = c + 1;
  };

  const hunt = (holds: boolean): void => {
    const error = kept[8]!;
    const time = port[0]!;
    const collective = outputs[at.COLLECTIVE]! + outputs[at.COLLECTIVE_RATE]! * outputs[at.SINCE]!;
    if (Math.abs(collective - kept[1]!) > 0.004) {
      kept[1] = collective;
      kept[2] = time;
    }
    if (!holds || time - kept[2]! < 0.3 || time - kept[3]! > 1) swing[1] = 0;
    const side = error > huntBand ? 1 : error < -huntBand ? -1 : 0;
    if (side !== 0 && side !== swing[0]) {
      swing[0] = side;
      kept[3] = time;
      if (swing[1] === 0) {
        kept[4] = 0;
        kept[5] = time;
      }
      swing[1] = swing[1]! + 1;
    }
    const size = Math.abs(error);
    if (size > kept[4]!) kept[4] = size;
    inside[10] = swing[1]! >= 6 ? 1 : 0;
    values[10] = kept[4]!;
    if (inside[10] === 1 && time > kept[5]!) levels[10] = (swing[1]! - 1) / (2 * (kept[3]! - kept[5]!));
  };

  const look = (y: Float64Array): void => {
    const time = port[0]!;
    const set = port[2]!;
    const speed = y[at.ROTOR]!;
    const error = set > 0 ? speed / set - 1 : 0;
    const holds = port[1] === 1;
    // A set speed counts as reached from the first time that the rotor was there.
    if (holds && set !== kept[0] && Math.abs(error) < speedBand) kept[0] = set;
    const held = holds && set === kept[0];
    values[0] = outputs[at.DUTY]!;
    // A duty that jumps between its limits from sample to sample isn't at one: it has to be there most of the time.
    const share = (time - kept[7]!) / dutyTime;
    kept[6] = kept[6]! + ((outputs[at.DUTY]! >= top ? 1 : 0) - kept[6]!) * Math.min(share, 1);
    kept[7] = time;
    inside[0] = kept[6]! > dutyShare ? 1 : 0;
    values[1] = speed;
    inside[1] = held && error < -speedBand ? 1 : 0;
    values[2] = speed;
    inside[2] = held && error > speedBand ? 1 : 0;
    levels[1] = set;
    levels[2] = set;
    values[3] = y[at.MOTOR]!;
    values[4] = (y[at.MOTOR]! * motor.poles) / 2;
    values[5] = speed;
    values[6] = outputs[at.PACK_CURRENT]!;
    values[7] = y[at.WINDING]!;
    values[8] = y[at.CONTROLLER]!;
    for (let k = 3; k < 9; k++) inside[k] = values[k]! > levels[k]! ? 1 : 0;
    values[9] = speed;
    inside[9] = plant.mode[0] === 0 && speed > turning ? 1 : 0;
    values[11] = y[at.CHARGE]!;
    inside[11] = y[at.CHARGE]! < reserveCharge ? 1 : 0;
    kept[8] = error;
    hunt(held);
    for (let k = 0; k < n; k++) {
      const b = k * 5;
      if (inside[k] === 1) {
        if (open[k] === 0) {
          open[k] = 1;
          now[b] = k === 10 ? kept[5]! : k === 0 ? Math.max(0, time - dutyLag) : time;
          now[b + 2] = values[k]!;
          now[b + 3] = time;
        }
        now[b + 1] = time;
        now[b + 4] = levels[k]!;
        if ((values[k]! - now[b + 2]!) * turn[k]! > 0) {
          now[b + 2] = values[k]!;
          now[b + 3] = time;
        }
      } else if (open[k] === 1 && time - now[b + 1]! > gaps[k]!) close(k, 1);
    }
  };

  const spans = (end: number): Span[] => {
    for (let k = 0; k < n; k++) {
      if (open[k] === 1) close(k, end - now[k * 5 + 1]! > gaps[k]! ? 1 : 0);
    }
    return Array.from({ length: count[0]! }, (_, c) => {
      const [k, from, to, value, when, level, ended] = done.subarray(c * 7, c * 7 + 7) as unknown as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      return { kind: kinds[k]!, from, to, ended: ended === 1, value, at: when, level };
    }).sort((a, b) => a.from - b.from);
  };

  return { port, look, spans };
}
