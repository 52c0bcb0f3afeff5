/** The rotors as a flight takes them: plain numbers in and out, whatever model stands behind. */
import { type RotorLoad, type Tail, tailThrust } from "../rotor-load.ts";

/**
 * A rotor as steady tests show it: thrust (N) and torque (N m) at a rotor speed (rad/s), a collective (rad) and a climb
 * speed (m/s), the inflow already settled. A closed form, a blade element solution or a map of one can stand behind it.
 */
export interface RotorMap {
  thrust(speed: number, collective: number, axialVelocity: number): number;
  torque(speed: number, collective: number, axialVelocity: number): number;
}

/**
 * Torque (N m) on the main rotor's shaft that the tail rotor takes while it holds a main rotor torque (N m) at a main rotor speed
 * (rad/s); not a finite number where it can't hold it.
 */
export type TailTorque = (mainTorque: number, speed: number) => number;

const maps = new WeakMap<RotorLoad, RotorMap>();
const tails = new WeakMap<Tail, TailTorque>();

/**
 * A steady rotor model as a map (N, N m, rad/s, rad, m/s). The same model always gives the same map, so that tables made
 * of it are made once. Source: definition.
 */
export function mapOfLoad(load: RotorLoad): RotorMap {
  const known = maps.get(load);
  if (known) return known;
  const map: RotorMap = {
    thrust: (speed, collective, climb) => load.thrustAt({ speed, collective, climb }),
    torque: (speed, collective, climb) => load.torqueAt({ speed, collective, climb }),
  };
  maps.set(load, map);
  return map;
}

/** Collectives at which a tail rotor is asked, and how far they go, rad. */
const asked = 121;
const furthest = 0.4;

/** Thrust and torque of a tail rotor over its collective at one speed, from its least thrust to its greatest. */
function tailCurve(rotor: RotorLoad, speed: number): { readonly thrust: number[]; readonly torque: number[] } {
  const all = Array.from({ length: asked }, (_, i) => {
    const collective = furthest * ((2 * i) / (asked - 1) - 1);
    const thrust = rotor.thrustAt({ speed, collective });
    return { thrust, torque: rotor.torqueAt({ speed, collective }) };
  });
  // From zero pitch both ways, as far as thrust still grows.
  const middle = (asked - 1) / 2;
  let [first, last] = [middle, middle];
  while (first > 0 && all[first - 1]!.thrust < all[first]!.thrust) first--;
  while (last < asked - 1 && all[last + 1]!.thrust > all[last]!.thrust) last++;
  const kept = all.slice(first, last + 1);
  return { thrust: kept.map((one) => one.thrust), torque: kept.map((one) => one.torque) };
}

/**
 * What a tail rotor takes from the main shaft, N m: its ratio times its own torque at the thrust Q / arm, straight between
 * the points of a curve over its collective, because it is asked often; not a number where it can't hold. Error: below
 * 0.1 % of its greatest torque. Source: definition (torque balance).
 */
export function tailTorqueOf(tail: Tail): TailTorque {
  const known = tails.get(tail);
  if (known) return known;
  const curves = new Map<number, ReturnType<typeof tailCurve>>();
  const torque: TailTorque = (mainTorque, speed) => {
    let curve = curves.get(speed);
    if (!curve) {
      if (curves.size > 64) curves.clear();
      curve = tailCurve(tail.rotor, speed * tail.ratio);
      curves.set(speed, curve);
    }
    const wanted = tailThrust(mainTorque, tail.arm);
    const { thrust, torque: own } = curve;
    const last = thrust.length - 1;
    if (!(last > 0 && wanted >= thrust[0]! && wanted <= thrust[last]!)) return Number.NaN;
    let [low, high] = [0, last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (thrust[middle]! <= wanted) low = middle;
      else high = middle;
    }
    const share = (wanted - thrust[low]!) / (thrust[high]! - thrust[low]!);
    return tail.ratio * (own[low]! + share * (own[high]! - own[low]!));
  };
  tails.set(tail, torque);
  return torque;
}
