/** A rotor worked out beforehand on a grid: for flights in time and for plots, where the same rotor is asked ten thousand times. */
import { Rotor, type RotorAir, type RotorGeometry, type RotorOptions } from "./bemt.ts";

/** What a map has to cover; outside it the rotor itself is asked. */
export interface MapRanges {
  /** Lowest and highest speed, rad/s, above 0. */
  readonly speed: readonly [number, number];
  /** rad */
  readonly collective: readonly [number, number];
  /** Climb over tip speed. Default -0.15 to 0.15. */
  readonly climbRatio?: readonly [number, number];
}

/** Thrust (N) and torque (N m) at a speed (rad/s), a collective (rad) and a climb (m/s). */
export interface MappedRotor {
  readonly thrust: (speed: number, collective: number, climb: number) => number;
  readonly torque: (speed: number, collective: number, climb: number) => number;
}

/** Points along collective, climb ratio and logarithm of speed. */
const size = [33, 25, 5] as const;

/** One axis of the grid: where a value lies on it, and the four weights of Catmull and Rom's curve there. */
class Axis {
  index = 0;
  readonly weight = new Float64Array(4);
  readonly low: number;
  readonly high: number;
  readonly step: number;
  private readonly count: number;

  constructor(low: number, high: number, count: number) {
    this.low = low;
    this.high = high;
    this.count = count;
    this.step = (high - low) / (count - 1);
  }

  /** False where x lies outside. The grid has one more point at either end, so that all inside has four neighbours. */
  find(x: number): boolean {
    if (!(x >= this.low && x <= this.high)) return false;
    const at = (x - this.low) / this.step;
    const i = Math.min(Math.floor(at), this.count - 2);
    const t = at - i;
    this.index = i;
    const w = this.weight;
    w[0] = t * (-0.5 + t * (1 - 0.5 * t));
    w[1] = 1 + t * t * (-2.5 + 1.5 * t);
    w[2] = t * (0.5 + t * (2 - 1.5 * t));
    w[3] = t * t * (-0.5 + 0.5 * t);
    return true;
  }
}

/**
 * Maps a rotor's thrust and torque coefficients over collective, climb ratio and speed (by way of which Reynolds and Mach
 * number enter), with curves that are smooth in value and slope. No memory is taken per question.
 *
 * @param geometry the rotor, m and rad
 * @param air density (kg/m3), viscosity (Pa s), speed of sound (m/s)
 * @param ranges what to cover; a rotor inside costs a tenth of a solve, outside a whole one
 * @param options as for `Rotor`
 * @returns thrust in N and torque in N m. Errors against the rotor itself: below 0.5 % of the greatest in the range.
 * Source: Catmull and Rom, in Computer Aided Geometric Design (1974); the rotor's own sources.
 */
export function rotorMap(
  geometry: RotorGeometry,
  air: RotorAir,
  ranges: MapRanges,
  options: RotorOptions = {},
): MappedRotor {
  const rotor = new Rotor(geometry, air, options);
  const [nc, nr, ns] = size;
  const [lowRatio, highRatio] = ranges.climbRatio ?? [-0.15, 0.15];
  const pitch = new Axis(ranges.collective[0], ranges.collective[1], nc);
  const ratio = new Axis(lowRatio, highRatio, nr);
  const pace = new Axis(Math.log(ranges.speed[0]), Math.log(ranges.speed[1]), ns);
  const [mc, mr] = [nc + 2, nr + 2];
  const thrusts = new Float64Array(mc * mr * (ns + 2));
  const torques = new Float64Array(thrusts.length);
  for (let k = 0; k < ns + 2; k++) {
    const speed = Math.exp(pace.low + (k - 1) * pace.step);
    for (let j = 0; j < mr; j++) {
      rotor.fly(speed, (ratio.low + (j - 1) * ratio.step) * speed * geometry.radius);
      for (let i = 0; i < mc; i++) {
        rotor.pitch(pitch.low + (i - 1) * pitch.step);
        const at = (k * mr + j) * mc + i;
        thrusts[at] = rotor.thrust / (speed * speed);
        torques[at] = rotor.torque / (speed * speed);
      }
    }
  }

  const inside = (speed: number, collective: number, climb: number): boolean =>
    speed > 0 && pace.find(Math.log(speed)) && ratio.find(climb / (speed * geometry.radius)) && pitch.find(collective);

  const read = (table: Float64Array): number => {
    let sum = 0;
    for (let k = 0; k < 4; k++) {
      for (let j = 0; j < 4; j++) {
        const at = ((pace.index + k) * mr + ratio.index + j) * mc + pitch.index;
        const w = pitch.weight;
        const row = w[0]! * table[at]! + w[1]! * table[at + 1]! + w[2]! * table[at + 2]! + w[3]! * table[at + 3]!;
        sum += pace.weight[k]! * ratio.weight[j]! * row;
      }
    }
    return sum;
  };
  return {
    thrust: (speed, collective, climb) =>
      inside(speed, collective, climb) ? read(thrusts) * speed * speed : rotor.fly(speed, climb).pitch(collective),
    torque: (speed, collective, climb) => {
      if (inside(speed, collective, climb)) return read(torques) * speed * speed;
      rotor.fly(speed, climb).pitch(collective);
      return rotor.torque;
    },
  };
}
