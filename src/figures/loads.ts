/**
 * Loads that are asked for at many speeds: a table that fills itself. The torque of a rotor over the square of its speed
 * changes little and smoothly, so a curve through a few solved points gives all between them.
 */
import type { LoadTorque } from "#model/rotor-load";

/** Distance of the solved points in the logarithm of the speed: 2 %. */
const STEP = 0.02;

/**
 * The same load, torque in N m at a speed in rad/s, from solved points 2 % apart and Catmull and Rom's curve between them.
 * A point is solved when a speed beside it is asked for first. Null between two points of which one can't be solved: the
 * speed at which a rotor stalls is known to 2 %, and below it nothing is solved any more: less speed carries less. Errors: below 1e-5 of the torque, tested; beside the stall, where a
 * straight line has to do, 1e-3. Source: Catmull and Rom (1974).
 */
export function tabulated(load: LoadTorque): LoadTorque {
  const known = new Map<number, number | null>();
  // The slowest point that is carried so far, and the fastest below it that is not.
  let carried = Number.POSITIVE_INFINITY;
  let stalled = Number.NEGATIVE_INFINITY;
  const point = (i: number): number | null => {
    if (i <= stalled) return null;
    let value = known.get(i);
    if (value === undefined) {
      const speed = Math.exp(i * STEP);
      const torque = load(speed);
      value = torque === null ? null : torque / (speed * speed);
      known.set(i, value);
      if (value !== null) carried = Math.min(carried, i);
      else if (i < carried && carried < Number.POSITIVE_INFINITY) stalled = Math.max(stalled, i);
    }
    return value;
  };
  return (speed) => {
    if (!(speed > 0)) return load(speed);
    const at = Math.log(speed) / STEP;
    const i = Math.floor(at);
    const t = at - i;
    const b = point(i);
    const c = b === null ? null : point(i + 1);
    if (b === null || c === null) return null;
    const a = point(i - 1) ?? 2 * b - c;
    const d = point(i + 2) ?? 2 * c - b;
    const curve = b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
    return curve * speed * speed;
  };
}

/** Distance of the points at which two loads are compared, in the logarithm of the speed: 30 %. */
const APART = 0.3;

/**
 * A load that differs a little from one that is known: the known torque (N m at a speed in rad/s) times the ratio of both,
 * which is solved for at points 30 % apart and hardly changes between them. Where either has no answer the load itself is
 * asked. Errors: below 3e-4 of the torque for a change of a few per cent, tested; beside a stall 3e-3. Source: definition.
 */
export function beside(known: LoadTorque, load: LoadTorque): LoadTorque {
  const ratios = new Map<number, number | null>();
  const ratioAt = (i: number): number | null => {
    let ratio = ratios.get(i);
    if (ratio === undefined) {
      const speed = Math.exp(i * APART);
      const [mine, theirs] = [load(speed), known(speed)];
      ratio = mine === null || theirs === null || theirs === 0 ? null : mine / theirs;
      ratios.set(i, ratio);
    }
    return ratio;
  };
  return (speed) => {
    const torque = speed > 0 ? known(speed) : null;
    if (torque === null) return load(speed);
    const at = Math.log(speed) / APART;
    const i = Math.floor(at);
    const [low, high] = [ratioAt(i), ratioAt(i + 1)];
    return low === null || high === null ? load(speed) : torque * (low + (at - i) * (high - low));
  };
}
