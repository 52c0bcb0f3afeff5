/**
 * The pilot's hand on the collective. Drawn curves and held values go out as they are; to hold a height, the pilot looks
 * twenty times a second and moves the collective, evenly until the next look, by height error, vertical speed and a slow
 * habit: so slow and steady a hand is our choice, no source.
 */
import { gravity } from "../constants.ts";
import { bracketedRoot } from "../root.ts";
import type { FlightMachine } from "./machine.ts";
import type { Collective } from "./orders.ts";

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
  const miss = (collective: number) => map.thrust(speed, collective, 0) - weight;
  return bracketedRoot(miss, lowestCollective, highestCollective, 1e-10);
}

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
  // [0] collective when the order began, [1] time of the next look, [2] habit (rad), [3] end of the last tick's collective.
  const kept = new Float64Array([start, 0, trim, start]);
  const place = new Int32Array([-1, 0]);

  const begin = (): void => {
    place[0] = place[0]! + 1;
    place[1] = 0;
    kept[0] = kept[3]!;
    kept[1] = port[NOW]!;
    kept[2] = trim;
  };

  const move = (): void => {
    const time = port[NOW]!;
    const tick = port[TICK]!;
    while (place[0]! + 1 < orders.length && time >= orders[place[0]! + 1]!.from - 1e-9) begin();
    const order = place[0]! < 0 ? undefined : orders[place[0]!];
    const present = kept[3]!;
    let end = present;
    if (order?.kind === "hold") {
      const passed = time + tick - order.from;
      const share = passed >= order.over ? 1 : passed / order.over;
      end = kept[0]! + share * (order.collective - kept[0]!);
    } else if (order?.kind === "curve") {
      end = drawn(order.times, order.collectives, time + tick);
    } else if (order?.kind === "height") {
      if (time >= kept[1]! - 1e-9) {
        const error = order.height - port[HEIGHT]!;
        // A pilot gives a large error no more than full attention: 3 m.
        const heed = error > 3 ? 3 : Math.max(error, -3);
        kept[2] = Math.min(highest, Math.max(lowest, kept[2]! + (habit * heed * look) / answer));
        const wish = kept[2]! + (stiffness * heed - damping * port[CLIMB]!) / answer;
        port[RATE] = (Math.min(highest, Math.max(lowest, wish)) - present) / look;
        kept[1] = kept[1]! + look;
      }
      end = present + port[RATE]! * tick;
    }
    if (end > highest) end = highest;
    if (end < lowest) end = lowest;
    port[COLLECTIVE] = present;
    if (order?.kind !== "height") port[RATE] = (end - present) / tick;
    kept[3] = end;
  };

  /** Collective of a drawn curve: straight between its points; the place is remembered, for times that rise. */
  const drawn = (times: ArrayLike<number>, values: ArrayLike<number>, time: number): number => {
    const last = times.length - 1;
    let i = place[1]!;
    while (i < last && time >= times[i + 1]!) i++;
    place[1] = i;
    if (i >= last || time <= times[i]!) return values[i]!;
    return values[i]! + ((values[i + 1]! - values[i]!) * (time - times[i]!)) / (times[i + 1]! - times[i]!);
  };
  // The first order acts from the start when its time has come, and its collective is then there at once.
  if (orders[0] && orders[0].from <= 0) {
    begin();
    if (orders[0].kind === "curve") kept[3] = drawn(orders[0].times, orders[0].collectives, 0);
    if (orders[0].kind === "hold" && orders[0].over <= 0) kept[3] = orders[0].collective;
  }
  return { port, move };
}
