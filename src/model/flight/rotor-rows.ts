/**
 * What the tables of a flight ask of a steady rotor: thrust and torque over the collective, at speeds and climbs that are the
 * same ones again and again. A real rotor is dear to ask, so its answers are kept as long as its map.
 */
import type { RotorMap, TailTorque } from "./rotor-map.ts";

/** Speeds lie on a ladder with this ratio: a rotor that another motor turns, or other gears, is asked for the same ones again. */
const ladder = 1.2;
/** Rungs of the tables' speeds from that of the reference: Reynolds and Mach number move slowly between them. */
export const rungs = [-10, -7, -4, -2, -1, 0, 1, 3] as const;

/** Speed of a rung, rad/s. Source: definition. */
export const speedOf = (rung: number): number => ladder ** rung;

/** Rung next to a speed, rad/s. Source: definition. */
export const rungOf = (speed: number): number => Math.round(Math.log(speed) / Math.log(ladder));

/** Climbs of the tables, as shares of the tip speed: even steps from hover on. */
export const climbCount = 7;
export const climbStep = 0.025;

/** Collectives at which the map is asked, rad: beyond them the blade angle is past its table. */
const asked = 121;
const furthest = 0.62;
/** Lowest of them in a climb, rad: a rotor that pushes down while it climbs works in its own wake. */
const lowestClimbing = -0.03;

const hovering = Array.from({ length: asked }, (_, i) => furthest * ((2 * i) / (asked - 1) - 1));
const climbing = hovering.filter((collective) => collective >= lowestClimbing);

/** What a map gives at one speed and climb: N and N m for each collective, rad. */
interface Row {
  readonly collectives: readonly number[];
  readonly thrust: readonly number[];
  readonly torque: readonly number[];
}

const kept = new WeakMap<RotorMap, Map<string, Row>>();

function rowsOf(map: RotorMap): Map<string, Row> {
  const known = kept.get(map) ?? new Map<string, Row>();
  kept.set(map, known);
  return known;
}

const keyOf = (radius: number, rung: number, climb: number): string => `${radius} ${rung} ${climb}`;

/** The row of a rung and of a climb by its place in the tables; `radius` in m. Units, errors: those of the map. Source: the map's. */
export function rowOf(map: RotorMap, radius: number, rung: number, climb: number): Row {
  const known = rowsOf(map);
  const key = keyOf(radius, rung, climb);
  const found = known.get(key);
  if (found) return found;
  const speed = speedOf(rung);
  const rise = climb * climbStep * speed * radius;
  const collectives = climb > 0 ? climbing : hovering;
  const thrust: number[] = [];
  const torque: number[] = [];
  for (const collective of collectives) {
    // One after the other: a rotor that has just been asked for its thrust has the torque at hand.
    thrust.push(map.thrust(speed, collective, rise));
    torque.push(map.torque(speed, collective, rise));
  }
  const row = { collectives, thrust, torque };
  known.set(key, row);
  return row;
}

/** So many rungs to either side of the reference are asked for ahead: gears, motor and pack lead no farther. */
const ahead = 10;

/**
 * The work of asking main and tail rotor for what tables about other references need, one row a piece, the nearest first;
 * what is known doesn't come. Speeds in rad/s, radius in m. Errors: none. Source: definition.
 */
export function* rowsAhead(
  map: RotorMap,
  tail: TailTorque | null,
  radius: number,
  reference: number,
): Generator<() => void> {
  const middle = rungOf(reference);
  for (let away = 0; away <= ahead; away++) {
    for (const top of away === 0 ? [middle] : [middle + away, middle - away]) {
      for (const rung of rungs.map((each) => top + each)) {
        for (let climb = 0; climb < climbCount; climb++) {
          if (rowsOf(map).has(keyOf(radius, rung, climb))) continue;
          yield () => {
            rowOf(map, radius, rung, climb);
            // The tail's curve at a speed is made when it is first asked for.
            if (climb === 0) tail?.(0, speedOf(rung));
          };
        }
      }
    }
  }
}
