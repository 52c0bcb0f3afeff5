/**
 * The rotor while its inflow hasn't settled. A steady map says what the rotor does once the inflow fits the thrust; in a
 * punch the collective has moved and the inflow has not. To blade element theory the two act through one angle,
 * collective less about 3/2 of the inflow ratio. So the steady map, read against that angle, gives the unsteady rotor as
 * well: steady hover and climb are exact, what lies between them is as good as that theory. In a descent the hover's
 * tables serve.
 */

import { bracketedRoot } from "../root.ts";
import { evenly, writeCubics } from "./cubics.ts";
import type { RotorMap, TailTorque } from "./rotor-map.ts";
import { climbCount, climbStep, rowOf, rungOf, rungs, speedOf } from "./rotor-rows.ts";

/** Range of the blade angle that the tables cover, rad, and their steps. Past the ends the rotor is stalled: the end holds. */
const reach = 0.42;
const steps = 168;
const width = (2 * reach) / steps;
export const climbsPerRatio = 1 / climbStep;
/**
 * Most downward thrust in a climb that momentum theory has one inflow for, as a share of (climb ratio)^2, and how far that
 * inflow may go, as a share of the climb: past it the rotor works in its own wake.
 */
const ownWake = 0.55;

export interface Surface {
  /** Lowest speed of the tables and the others, rad/s. */
  readonly speeds: Float64Array;
  /**
   * For each speed, climb and cell the cubic of C_T = thrust / (rho A (Omega R)^2), then that of C_Q - (climb ratio +
   * factor x induced ratio) C_T with C_Q = torque / (rho A R (Omega R)^2).
   */
  readonly cells: Float64Array;
  /** Tail torque coefficient against the main rotor's, per speed. */
  readonly tail: Float64Array;
  /** Lowest main torque coefficient of the tail table, and cells for each unit. */
  readonly tailFrom: number;
  readonly tailCells: number;
  /** How the inflow shifts the blade angle: rad for each unit of inflow ratio (3/2 at constant chord and lift slope). */
  readonly shift: number;
  /** Real over ideal induced power. */
  readonly inducedFactor: number;
  /** Steepest thrust coefficient against blade angle, 1/rad. */
  readonly steepest: number;
}

/** Cells of the blade angle table, its lower end (rad) and cells for each radian. */
export const cellCount = steps;
export const angleFrom = -reach;
export const cellsPerRadian = 1 / width;
/** Cells of the tail's table. */
export const tailCellCount = 128;
/**
 * Least flow through the disc where climb and inflow are against each other, as a share of the climb: momentum theory has none where they
 * cancel; 0.3 gives the drag coefficient of 1.2 that a rotor has in autorotation (Gessow and Myers, from memory).
 */
export const mixing = 0.3;

/**
 * Induced ratio that fits a thrust coefficient in a climb, by the equation that the flight's inflow settles to:
 * C_T = 2 v sqrt((V + v)^2 + (m V)^2 where v is against V).
 */
function settled(thrust: number, climb: number): number {
  if (climb === 0) return Math.sign(thrust) * Math.sqrt(Math.abs(thrust) / 2);
  // Written so that no two large numbers are subtracted.
  if (thrust >= 0) return thrust / (climb + Math.sqrt(climb * climb + 2 * thrust));
  const miss = (v: number) => 2 * v * Math.hypot(climb + v, mixing * climb) - thrust;
  return bracketedRoot(miss, -ownWake * climb, 0, 1e-9 * climb) ?? -ownWake * climb;
}

/**
 * How inflow counts, from the map's climb: a climb and a hover of equal thrust have the same blade angle, and their
 * torques differ by what the inflow costs. Blade element theory has 3/2 and 1; a map that gives no sense keeps these.
 */
function inflowOf(map: RotorMap, radius: number, density: number, speed: number): { shift: number; factor: number } {
  const tip = speed * radius;
  const force = density * Math.PI * radius * radius * tip * tip;
  let shift = 0;
  let factor = 0;
  const cases = [
    [0.12, 0.02],
    [0.12, 0.04],
    [0.16, 0.03],
  ] as const;
  for (const [collective, climb] of cases) {
    const thrust = map.thrust(speed, collective, climb * tip);
    const hover = bracketedRoot((angle) => map.thrust(speed, angle, 0) - thrust, 0, collective, 1e-9);
    if (hover === null || !(thrust > 0)) return { shift: 1.5, factor: 1 };
    const ct = thrust / force;
    // v (v + V) = T / (2 rho A), in the hover and in the climb.
    const hovering = Math.sqrt(ct / 2);
    const climbing = Math.sqrt((climb * climb) / 4 + ct / 2) - climb / 2;
    shift += (collective - hover) / (climb + climbing - hovering) / cases.length;
    const more = (map.torque(speed, collective, climb * tip) - map.torque(speed, hover, 0)) / (force * radius * ct);
    factor += (more - climb) / (climbing - hovering) / cases.length;
  }
  const sensible = shift > 1 && shift < 2 && factor > 0.8 && factor < 2.5;
  return sensible ? { shift, factor } : { shift: 1.5, factor: 1 };
}

/** So many surfaces of a rotor are kept: those that a drag through the gears goes through. */
const kept = 12;

const built = new WeakMap<RotorMap, { key: string; tail: TailTorque | null; surface: Surface | null }[]>();

/**
 * Tables of the unsteady rotor from a steady map: thrust coefficient C_T(x) and the share of the torque coefficient that
 * inflow doesn't explain, over the blade angle x = theta - s lambda (rad, s about 3/2), dimensionless, at eight rotor speeds
 * (rad/s) and seven climb ratios. Null when the map gives no number somewhere in its range, or thrust that falls so fast
 * with collective that x does. The last few are kept, and the speeds lie on a fixed ladder, so that a flight with other
 * gains, gears or motor needs no new tables, or few new rows of them.
 *
 * Source: A. Gessow and G. C. Myers, Aerodynamics of the Helicopter (1952), ch. 4: C_T = sigma a / 2 (theta / 3 - lambda / 2).
 *
 * @param map steady rotor
 * @param tail tail rotor, or null
 * @param radius m
 * @param density kg/m3
 * @param reference rotor speed about which the tables lie, rad/s
 */
export function rotorSurface(
  map: RotorMap,
  tail: TailTorque | null,
  radius: number,
  density: number,
  reference: number,
): Surface | null {
  const known = built.get(map) ?? [];
  const top = rungOf(reference);
  const key = `${radius} ${density} ${top}`;
  const found = known.find((one) => one.key === key && one.tail === tail);
  if (found) return found.surface;
  const surface = build(map, tail, radius, density, top);
  built.set(map, [{ key, tail, surface }, ...known].slice(0, kept));
  return surface;
}

function build(map: RotorMap, tail: TailTorque | null, radius: number, density: number, top: number): Surface | null {
  const area = Math.PI * radius * radius;
  const speeds = Float64Array.from(rungs, (rung) => speedOf(top + rung));
  const cells = new Float64Array(speeds.length * climbCount * steps * 8);
  const { shift, factor } = inflowOf(map, radius, density, speedOf(top));
  let steepest = 0;
  let lowest = 0;
  let highest = 0;
  for (const [j, speed] of speeds.entries()) {
    const tip = speed * radius;
    const force = density * area * tip * tip;
    let hover: readonly [Float64Array, Float64Array] | null = null;
    for (let c = 0; c < climbCount; c++) {
      const climb = c * climbStep;
      const angles: number[] = [];
      const thrusts: number[] = [];
      const rests: number[] = [];
      const row = rowOf(map, radius, top + rungs[j]!, c);
      for (const [i, collective] of row.collectives.entries()) {
        const thrust = row.thrust[i]! / force;
        if (c > 0 && thrust < -ownWake * climb * climb) continue;
        const torque = row.torque[i]! / (force * radius);
        const inflow = settled(thrust, climb);
        const angle = collective - shift * (climb + inflow);
        if (!Number.isFinite(thrust + torque) || angle <= (angles.at(-1) ?? -9)) return null;
        angles.push(angle);
        thrusts.push(thrust);
        rests.push(torque - (climb + factor * inflow) * thrust);
        // With the blade angle held, the inflow of a punch or a descent takes the torque some way past the steady ones.
        lowest = Math.min(lowest, torque - 0.15 * Math.abs(thrust));
        highest = Math.max(highest, torque + 0.15 * Math.abs(thrust));
      }
      if (angles.length < 3) return null;
      const even = (of: number[]) => evenly(Float64Array.from(angles), Float64Array.from(of), -reach, width, steps);
      const lift = even(thrusts);
      const rest = even(rests);
      if (hover) goOnBelow(angles[0]!, lift, rest, hover);
      else hover = [lift, rest];
      for (let i = 1; i <= steps; i++) steepest = Math.max(steepest, (lift[i]! - lift[i - 1]!) / width);
      const at = (j * climbCount + c) * steps * 8;
      writeCubics(lift, cells, at, 8);
      writeCubics(rest, cells, at + 4, 8);
    }
  }
  // A rotor without blades takes no torque at all: the table still needs a width.
  highest = Math.max(highest, lowest + 1e-9);
  const table = tailTable(tail, speeds, density * area * radius ** 3, lowest, highest);
  if (!table) return null;
  const tailCells = tailCellCount / (highest - lowest);
  return { speeds, cells, tail: table, tailFrom: lowest, tailCells, shift, inducedFactor: factor, steepest };
}

/** Below the angle at which a climb's table begins, the hover's goes on, moved to where that table ends. */
function goOnBelow(
  angle: number,
  lift: Float64Array,
  rest: Float64Array,
  hover: readonly [Float64Array, Float64Array],
): void {
  const first = Math.min(steps, Math.max(0, Math.ceil((angle + reach) / width)));
  for (let i = 0; i < first; i++) {
    lift[i] = hover[0][i]! + lift[first]! - hover[0][first]!;
    rest[i] = hover[1][i]! + rest[first]! - hover[1][first]!;
  }
}

/** Tail torque over main torque; where the tail can't hold, its torque goes on as steeply as before. Null: it never can. */
function tailTable(
  tail: TailTorque | null,
  speeds: Float64Array,
  scale: number,
  lowest: number,
  highest: number,
): Float64Array | null {
  const table = new Float64Array(speeds.length * tailCellCount * 4);
  if (!tail) return table;
  for (const [j, speed] of speeds.entries()) {
    const unit = scale * speed * speed;
    const values = Array.from({ length: tailCellCount + 1 }, (_, i) => {
      const main = lowest + ((highest - lowest) * i) / tailCellCount;
      return tail(main * unit, speed) / unit;
    });
    const first = values.findIndex(Number.isFinite);
    const last = values.findLastIndex(Number.isFinite);
    if (first < 0 || last - first < 2 || !values.slice(first, last).every(Number.isFinite)) return null;
    for (let i = last + 1; i <= tailCellCount; i++) values[i] = 2 * values[i - 1]! - values[i - 2]!;
    for (let i = first - 1; i >= 0; i--) values[i] = 2 * values[i + 1]! - values[i + 2]!;
    writeCubics(values, table, j * tailCellCount * 4, 4);
  }
  return table;
}
