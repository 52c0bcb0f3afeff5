/**
 * The rotor while its inflow hasn't settled. A steady map says what the rotor does once the inflow fits the thrust; in a
 * punch the collective has moved and the inflow has not. To blade element theory the two act through one angle,
 * collective less about 3/2 of the inflow ratio, so the steady hover at every collective gives the unsteady rotor as well:
 * hover itself is exact; how inflow counts is taken from the map's own climb.
 */
import { bracketedRoot } from "../root.ts";
import type { RotorMap, TailTorque } from "./rotor-map.ts";

/** Range of the blade angle that the tables cover, rad, and their steps. Past the ends the rotor is stalled: the end holds. */
const reach = 0.42;
const steps = 168;
const width = (2 * reach) / steps;
/** Rotor speeds of the tables, as shares of the reference: Reynolds and Mach number move slowly between them. */
const shares = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1.05, 1.2, 1.4, 1.7] as const;
/** Collectives at which the map is asked, rad: beyond them the blade angle is past its table. */
const asked = 161;
const furthest = 0.62;

/** Coefficients of the tables: for each speed and cell, four of the lift cubic, four of the drag cubic. */
export interface Surface {
  /** Lowest speed of the tables and the others, rad/s. */
  readonly speeds: Float64Array;
  /** Thrust / (rho A (Omega R)^2) and torque / (rho A R (Omega R)^2) less induced ratio x factor x thrust coefficient. */
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

/** Values at the even steps of the table, by cubics through unevenly spaced points; beyond their ends the end holds. */
function evenly(angles: Float64Array, values: Float64Array): number[] {
  const last = angles.length - 1;
  const slope = (i: number): number => {
    if (i === 0 || i === last) return 0;
    const [a, b] = [angles[i]! - angles[i - 1]!, angles[i + 1]! - angles[i]!];
    return ((values[i]! - values[i - 1]!) * (b / a) + (values[i + 1]! - values[i]!) * (a / b)) / (a + b);
  };
  let i = 0;
  return Array.from({ length: steps + 1 }, (_, n) => {
    const angle = -reach + n * width;
    while (i < last - 1 && angle > angles[i + 1]!) i++;
    const h = angles[i + 1]! - angles[i]!;
    const t = Math.min(1, Math.max(0, (angle - angles[i]!) / h));
    const [y0, y1, s0, s1] = [values[i]!, values[i + 1]!, slope(i) * h, slope(i + 1) * h];
    return y0 + t * (s0 + t * (3 * (y1 - y0) - 2 * s0 - s1 + t * (2 * (y0 - y1) + s0 + s1)));
  });
}

/** Writes the cubics through equally spaced values (slopes by central differences) into `into`, `stride` apart. */
function writeCubics(values: readonly number[], into: Float64Array, from: number, stride: number): void {
  const last = values.length - 1;
  const slope = (i: number): number => {
    if (i === 0) return values[1]! - values[0]!;
    if (i === last) return values[last]! - values[last - 1]!;
    return (values[i + 1]! - values[i - 1]!) / 2;
  };
  for (let i = 0; i < last; i++) {
    const [a, b] = [values[i]!, values[i + 1]!];
    const [p, q] = [slope(i), slope(i + 1)];
    into.set([a, p, 3 * (b - a) - 2 * p - q, 2 * (a - b) + p + q], from + i * stride);
  }
}

/** Inflow ratio that fits a thrust coefficient in hover: momentum theory. */
const settled = (thrustCoefficient: number): number =>
  Math.sign(thrustCoefficient) * Math.sqrt(Math.abs(thrustCoefficient) / 2);

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

const built = new WeakMap<RotorMap, { key: string; tail: TailTorque | null; surface: Surface | null }[]>();

/**
 * Tables of the unsteady rotor from a steady map's hover: thrust coefficient C_T(x) and the share of the torque
 * coefficient that isn't induced, over the blade angle x = theta - s lambda (rad, s about 3/2), dimensionless, at ten rotor speeds (rad/s).
 * Null when the map gives no number somewhere in its range. The last few are kept, and the speeds lie on a fixed ladder, so
 * that a flight with other gains, gears or motor needs no new tables.
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
  const rung = 1.2 ** Math.round(Math.log(reference) / Math.log(1.2));
  const key = `${radius} ${density} ${rung}`;
  const found = known.find((one) => one.key === key && one.tail === tail);
  if (found) return found.surface;
  const surface = build(map, tail, radius, density, rung);
  built.set(map, [{ key, tail, surface }, ...known].slice(0, 4));
  return surface;
}

function build(
  map: RotorMap,
  tail: TailTorque | null,
  radius: number,
  density: number,
  reference: number,
): Surface | null {
  const area = Math.PI * radius * radius;
  const speeds = Float64Array.from(shares, (share) => share * reference);
  const cells = new Float64Array(speeds.length * steps * 8);
  const { shift, factor } = inflowOf(map, radius, density, reference);
  let steepest = 0;
  let lowest = 0;
  let highest = 0;
  const angles = new Float64Array(asked);
  const thrusts = new Float64Array(asked);
  const rests = new Float64Array(asked);
  for (const [j, speed] of speeds.entries()) {
    const force = density * area * (speed * radius) ** 2;
    for (let i = 0; i < asked; i++) {
      const collective = furthest * ((2 * i) / (asked - 1) - 1);
      const thrust = map.thrust(speed, collective, 0) / force;
      const torque = map.torque(speed, collective, 0) / (force * radius);
      angles[i] = collective - shift * settled(thrust);
      if (!Number.isFinite(thrust + torque) || (i > 0 && !(angles[i]! > angles[i - 1]!))) return null;
      thrusts[i] = thrust;
      rests[i] = torque - factor * settled(thrust) * thrust;
      // With the blade angle held, the inflow of a punch or a descent takes the torque some way past the steady ones.
      lowest = Math.min(lowest, torque - 0.15 * Math.abs(thrust));
      highest = Math.max(highest, torque + 0.15 * Math.abs(thrust));
    }
    const even = evenly(angles, thrusts);
    for (let i = 1; i <= steps; i++) steepest = Math.max(steepest, (even[i]! - even[i - 1]!) / width);
    writeCubics(even, cells, j * steps * 8, 8);
    writeCubics(evenly(angles, rests), cells, j * steps * 8 + 4, 8);
  }
  // A rotor without blades takes no torque at all: the table still needs a width.
  highest = Math.max(highest, lowest + 1e-9);
  const table = tailTable(tail, speeds, density * area * radius ** 3, lowest, highest);
  if (!table) return null;
  const tailCells = tailCellCount / (highest - lowest);
  return { speeds, cells, tail: table, tailFrom: lowest, tailCells, shift, inducedFactor: factor, steepest };
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
