/**
 * A rotor as a map for sweeps: torque against thrust at a few head speeds, solved when a speed beside them is asked for
 * first. Both over the square of speed change slowly with it, so straight lines between are close enough for a plot.
 */
import type { RotorLoad } from "#model/rotor-load";
import { keeper } from "./kept.ts";

/** Distance of the solved speeds in the logarithm of the speed: 28 %. */
const STEP = 0.25;
/** Collectives, rad: a degree apart, as far as thrust still rises and no further than any blade does. */
const PITCHES = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 180);

export interface RotorMap {
  /** Torque of the shaft, N m, at a speed in rad/s and a thrust in N, from 0 up; null where the blades stall below that thrust. */
  readonly torque: (speed: number, thrust: number) => number | null;
  /** Thrust at which the blades stall, N, at a speed in rad/s. */
  readonly most: (speed: number) => number;
}

/** Thrust and torque over the square of speed at rising collectives; the last one is past the most thrust, if that was met. */
interface Node {
  readonly thrusts: readonly number[];
  readonly torques: readonly number[];
  /** The most thrust over the square of speed. */
  readonly most: number;
}

function solved(rotor: RotorLoad, speed: number): Node {
  const square = speed * speed;
  const thrusts: number[] = [];
  const torques: number[] = [];
  for (const collective of PITCHES) {
    thrusts.push(rotor.thrustAt({ speed, collective }) / square);
    torques.push(rotor.torqueAt({ speed, collective }) / square);
    const [before = -1, last = 0] = thrusts.slice(-2);
    if (thrusts.length > 3 && last <= before) break;
  }
  const { half, bend, at } = parabola(thrusts, thrusts.length - 2);
  const top = bend < 0 ? half / (-2 * bend) : 1;
  return { thrusts, torques, most: at(Math.min(Math.max(top, 0), 1)) };
}

/** The parabola through a point of a list and its two neighbours, counted in steps from that point. */
function parabola(list: readonly number[], middle: number) {
  const [a = 0, b = 0, c = 0] = list.slice(middle - 1, middle + 2);
  const half = (c - a) / 2;
  const bend = (c + a) / 2 - b;
  return { half, bend, at: (steps: number) => b + steps * (half + steps * bend) };
}

/** Torque for a thrust up to the most of a node: the collective is found on a parabola, the torque read there on another. */
function torqueFor({ thrusts, torques }: Node, thrust: number): number {
  let high = 1;
  while (high < thrusts.length - 2 && (thrusts[high] ?? 0) < thrust) high++;
  const { half, bend } = parabola(thrusts, high);
  const rest = thrust - (thrusts[high] ?? 0);
  const steps = (2 * rest) / (half + Math.sqrt(Math.max(0, half * half + 4 * bend * rest)));
  return parabola(torques, high).at(Number.isFinite(steps) ? steps : 0);
}

const maps = keeper<RotorMap>(8);

/** The map of a rotor: made once. Units: N, N m, rad/s. Errors: about 1 % of the torque, tested. Source: the rotor model. */
export function rotorMap(rotor: RotorLoad): RotorMap {
  return maps([rotor], () => {
    const nodes = new Map<number, Node>();
    const node = (k: number): Node => {
      let found = nodes.get(k);
      if (!found) {
        found = solved(rotor, Math.exp(k * STEP));
        nodes.set(k, found);
      }
      return found;
    };
    const between = (speed: number) => {
      const at = Math.log(speed) / STEP;
      const k = Math.floor(at);
      return { low: node(k), high: node(k + 1), share: at - k };
    };
    const mostOf = ({ low, high, share }: ReturnType<typeof between>): number =>
      (1 - share) * low.most + share * high.most;
    return {
      most: (speed) => (speed > 0 ? mostOf(between(speed)) * speed * speed : 0),
      torque(speed, thrust) {
        if (!(speed > 0)) return null;
        const around = between(speed);
        const square = speed * speed;
        const most = mostOf(around);
        if (thrust / square > most) return null;
        // Read at the same share of the way to stall in both, so that the map bends where the rotor does.
        const share = most > 0 ? thrust / square / most : 0;
        const a = torqueFor(around.low, share * around.low.most);
        const b = torqueFor(around.high, share * around.high.most);
        return ((1 - around.share) * a + around.share * b) * square;
      },
    };
  });
}

/**
 * Torque of both rotors on the main shaft, N m, from the main rotor's at a speed in rad/s: the tail read from its map. A
 * tail that can't give the thrust stands at its stall, as it does in the figures. Source: definition (torque balance).
 */
export function withTail(tail: { rotor: RotorLoad; arm: number; ratio: number }, speed: number, own: number): number {
  const map = rotorMap(tail.rotor);
  const turning = speed * tail.ratio;
  const thrust = Math.max(0, Math.min(own / tail.arm, map.most(turning)));
  return own + tail.ratio * (map.torque(turning, thrust * (1 - 1e-9)) ?? 0);
}
