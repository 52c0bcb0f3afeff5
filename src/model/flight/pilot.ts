/**
 * The pilot's hand on the collective. Drawn curves and held values go out as they are; to hold a height, the pilot looks
 * twenty times a second and moves the collective, evenly until the next look, by height error, vertical speed and a slow
 * habit: so slow and steady a hand is our choice, no source.
 */
import { gravity } from "../constants.ts";
import { bracketedRoot } from "../root.ts";
import type { FlightMachine } from "./machine.ts";
import type { Collective } from "./orders.ts";
import type { RotorMap } from "./rotor-map.ts";

/** Time between two looks, s. */
const look = 0.05;
/** Answer of the height to the hand: 1/s2 for height, 1/s for speed, 1/s3 for the habit. */
const stiffness = 1.4;
const damping = 1.6;
const habit = 0.3;

export const NOW = 0;
export const TICK = 1;
export const HEIGHT = 2;
export const CLIMB = 3;
export const COLLECTIVE = 4;
export const RATE = 5;

export interface Pilot {
  /** [NOW] time and [TICK] length of the coming tick (s), [HEIGHT] (m), [CLIMB] (m/s) in; [COLLECTIVE] (rad) and its [RATE] (rad/s) out. */
  readonly port: Float64Array;
  /** Moves the hand for the coming tick. */
  readonly move: () => void;
}

/**
 * Collective (rad) with which a rotor at a speed (rad/s) carries the machine in a steady hover; null when none within
 * the machine's range does. Source: definition (thrust = weight).
 */
export function hoverCollective(machine: FlightMachine, speed: number): number | null {
  const { map, lowestCollective, highestCollective } = machine.rotor;
  const weight = machine.mass * gravity;
  // A flight asks for it several times, and a page flies the same rotors again and again.
  const known = hovers.get(map) ?? [];
  const same = known.find(
    (one) =>
      one.speed === speed &&
      one.weight === weight &&
      one.lowest === lowestCollective &&
      one.highest === highestCollective,
  );
  if (same) return same.collective;
  const miss = (collective: number) => map.thrust(speed, collective, 0) - weight;
  const collective = bracketedRoot(miss, lowestCollective, highestCollective, 1e-10);
  const found = { speed, weight, lowest: lowestCollective, highest: highestCollective, collective };
  hovers.set(map, [found, ...known].slice(0, 6));
  return collective;
}

interface Hover {
  readonly speed: number;
  readonly weight: number;
  readonly lowest: number;
  readonly highest: number;
  readonly collective: number | null;
}
const hovers = new WeakMap<RotorMap, readonly Hover[]>();

/** Vertical acceleration for each radian of collective about a hover, 1/s2 x m/rad. */
function grip(machine: FlightMachine, speed: number, collective: number): number {
  const { map } = machine.rotor;
  const span = 0.02;
  const rise = map.thrust(speed, collective + span, 0) - map.thrust(speed, collective - span, 0);
  return Math.max(rise / (2 * span * machine.mass), gravity);
}

/**
 * A pilot who follows orders (angles in rad, times in s) through a run, beginning with a collective at time 0.
 * Source: our choice; common practice for how fast a hand is.
 *
 * @param machine for the range of the collective and how it answers
 * @param orders rising in time
 * @param start collective at time 0, rad
 * @param speed rotor speed at which heights are held, rad/s
 */
export function createPilot(
  machine: FlightMachine,
  orders: readonly Collective[],
  start: number,
  speed: number,
): Pilot {
  const { lowestCollective: lowest, highestCollective: highest } = machine.rotor;
  const port = new Float64Array(6);
  port[COLLECTIVE] = start;
  const trim = hoverCollective(machine, speed) ?? highest;
  const answer = grip(machine, speed, Math.min(trim, highest - 0.02));
  // [0] the order that is carried out, [1] what it is: nothing, a held value, a curve, a height; [2] place in the curve.
  const place = new Int32Array([-1, 0, 0]);
  // [0] collective when the order began, [1] time of the next look, [2] habit (rad), [3] end of the last tick's collective,
  // [4] time of the order and [5] of the next, [6] value it goes to, [7] how long it takes. All in one typed array: no garbage.
  const kept = new Float64Array([start, 0, trim, start, 0, orders[0]?.from ?? Number.POSITIVE_INFINITY, 0, 0]);
  let times = new Float64Array(0);
  let values = new Float64Array(0);

  const begin = (): void => {
    place[0] = place[0]! + 1;
    place[2] = 0;
    const order = orders[place[0]!]!;
    kept[0] = kept[3]!;
    kept[1] = port[NOW]!;
    kept[2] = trim;
    kept[4] = order.from;
    kept[5] = orders[place[0]! + 1]?.from ?? Number.POSITIVE_INFINITY;
    place[1] = order.kind === "hold" ? 1 : order.kind === "curve" ? 2 : 3;
    if (order.kind === "hold") {
      kept[6] = order.collective;
      kept[7] = order.over;
    } else if (order.kind === "height") kept[6] = order.height;
    else {
      times = Float64Array.from(order.times);
      values = Float64Array.from(order.collectives);
    }
  };

  /** Collective of a drawn curve at the end of the tick: straight between its points, for times that rise. */
  const follow = (end: number): void => {
    const last = times.length - 1;
    let i = place[2]!;
    while (i < last && end >= times[i + 1]!) i++;
    place[2] = i;
    if (i >= last || end <= times[i]!) kept[3] = values[i]!;
    else kept[3] = values[i]! + ((values[i + 1]! - values[i]!) * (end - times[i]!)) / (times[i + 1]! - times[i]!);
  };

  /** Looks at the height when it is time, and moves on. */
  const hold = (): void => {
    const present = kept[3]!;
    if (port[NOW]! >= kept[1]! - 1e-9) {
      // A pilot gives a large error no more than full attention: 3 m.
      const heed = Math.min(3, Math.max(-3, kept[6]! - port[HEIGHT]!));
      kept[2] = Math.min(highest, Math.max(lowest, kept[2]! + (habit * heed * look) / answer));
      const wish = kept[2]! + (stiffness * heed - damping * port[CLIMB]!) / answer;
      port[RATE] = (Math.min(highest, Math.max(lowest, wish)) - present) / look;
      kept[1] = kept[1]! + look;
    }
    kept[3] = present + port[RATE]! * port[TICK]!;
  };

  const move = (): void => {
    const time = port[NOW]!;
    const tick = port[TICK]!;
    while (time >= kept[5]! - 1e-9) begin();
    const present = kept[3]!;
    if (place[1] === 1) {
      const passed = time + tick - kept[4]!;
      kept[3] = passed >= kept[7]! ? kept[6]! : kept[0]! + (passed / kept[7]!) * (kept[6]! - kept[0]!);
    } else if (place[1] === 2) follow(time + tick);
    else if (place[1] === 3) hold();
    kept[3] = Math.min(highest, Math.max(lowest, kept[3]!));
    port[COLLECTIVE] = present;
    if (place[1] !== 3) port[RATE] = (kept[3]! - present) / tick;
  };

  // The first order acts from the start when its time has come, and its collective is then there at once.
  if (kept[5]! <= 0) {
    begin();
    if (place[1] === 2) follow(0);
    if (place[1] === 1 && kept[7]! <= 0) kept[3] = kept[6]!;
  }
  return { port, move };
}
