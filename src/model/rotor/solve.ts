/** The questions that a rotor is asked the other way round: which pitch for a thrust, which speed for a power. */
import { bracketedRoot } from "../root.ts";
import { Rotor, type RotorAir, type RotorGeometry } from "./bemt.ts";

/** Pitch at which solvers stop looking, rad: well past the stall of any section. */
const farthest = 0.55;

/** Real over ideal inflow of the first guess. */
const guess = 1.2;

/** A collective that gives the thrust. */
export interface PitchFound {
  readonly ok: true;
  /** rad */
  readonly collective: number;
}

/** Why no collective gives it, and the nearest thing that would work. */
export interface PitchMissing {
  readonly ok: false;
  readonly why: "stalled" | "standing still";
  /** Most thrust in the direction asked for, N, and the collective that gives it, rad. */
  readonly most: number;
  readonly at: number;
  /** In a sentence. */
  readonly words: string;
}

const missing = (why: PitchMissing["why"], most: number, at: number): PitchMissing => ({
  ok: false,
  why,
  most,
  at,
  words:
    why === "standing still"
      ? "The rotor stands still: it gives no thrust at any pitch."
      : `The blades stall: most thrust is ${most.toPrecision(3)} N at ${((at * 180) / Math.PI).toFixed(1)} degrees.`,
});

/**
 * Collective for a thrust; leaves the rotor solved for it. Secant steps from a closed form, five solves as a rule; near
 * the stall a scan for the most thrust and a bracketed search below it.
 *
 * @param rotor a rotor whose `fly` has been called
 * @param thrust N, either sign
 * @returns the collective in rad, or why there is none and how much there is. Thrust is met to 1e-7 of itself.
 * Source: first step after Leishman, Principles of Helicopter Aerodynamics, ch. 3 (theta = 6 CT / (sigma a) + 1.5 lambda).
 */
export function collectiveForThrust(rotor: Rotor, thrust: number): PitchFound | PitchMissing {
  const { geometry, solidity, radius, count } = rotor.blade;
  const tip = rotor.speed * geometry.radius;
  if (!(rotor.speed > 0)) return missing("standing still", 0, 0);
  const unit = rotor.density * Math.PI * geometry.radius ** 2 * tip * tip;
  const tolerance = 1e-7 * Math.max(Math.abs(thrust), 1e-5 * solidity * unit);
  const slope = rotor.liftSlope;
  const ct = thrust / unit;
  const rise = rotor.climb / tip;
  const most = Math.sqrt(Math.abs(ct) / 2 + 1e-12);
  // Real over ideal inflow, a guess that the steps correct.
  const flow = ct === 0 ? 0 : Math.sign(ct) * (guess * most);
  const along = Math.sqrt((rise * rise) / 4 + flow * flow);
  const inflow = rise / 2 + (flow < 0 ? -along : along);
  let theta = (6 * ct) / (solidity * slope) + 1.5 * (flow === 0 ? rise : inflow);
  let pitchPerThrust = (6 / (solidity * slope) + (1.5 * guess * guess) / (4 * Math.max(along, 1e-3))) / unit;
  const stiffest = (4 * 6) / (solidity * slope * unit);
  let [before, thrustBefore] = [0, 0];
  for (let step = 0; step < 12; step++) {
    if (!(Math.abs(theta) < farthest)) break;
    const got = rotor.pitch(theta);
    const miss = thrust - got;
    if (Math.abs(miss) <= tolerance) return { ok: true, collective: theta };
    if (step > 0 && got !== thrustBefore) pitchPerThrust = (theta - before) / (got - thrustBefore);
    // Where more pitch hardly gives more thrust the stall is near: the careful way.
    if (!(pitchPerThrust > 0 && pitchPerThrust < stiffest + 1 / (unit * 0.01))) break;
    before = theta;
    thrustBefore = got;
    theta += miss * pitchPerThrust;
  }
  return carefully(rotor, thrust, Math.atan2(rotor.climb, rotor.speed * radius[count - 1]! * 0.75));
}

/** Scan from no lift outwards to the first peak of thrust, then a bracketed search below it. */
function carefully(rotor: Rotor, thrust: number, from: number): PitchFound | PitchMissing {
  const up = thrust >= rotor.pitch(from) ? 1 : -1;
  const steps = 28;
  const width = (up * farthest - from) / steps;
  let inner = from;
  let best = from;
  let bestThrust = rotor.thrust;
  let outer = from;
  for (let i = 1; i <= steps; i++) {
    const theta = from + i * width;
    const got = rotor.pitch(theta);
    outer = theta;
    if (up * (got - thrust) >= 0) return between(rotor, thrust, i === 1 ? from : theta - width, theta);
    if (up * (got - bestThrust) > 0) {
      inner = best;
      best = theta;
      bestThrust = got;
    } else if (i > 2) break;
  }
  // Golden section between the points on either side of the best one: to 1e-5 rad, where thrust is flat to 1e-8.
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [inner, outer];
  let [x, y] = [b - golden * (b - a), a + golden * (b - a)];
  let [atX, atY] = [up * rotor.pitch(x), up * rotor.pitch(y)];
  while (Math.abs(b - a) > 1e-5) {
    if (atX > atY) {
      [b, y, atY] = [y, x, atX];
      x = b - golden * (b - a);
      atX = up * rotor.pitch(x);
    } else {
      [a, x, atX] = [x, y, atY];
      y = a + golden * (b - a);
      atY = up * rotor.pitch(y);
    }
  }
  const peak = (a + b) / 2;
  const got = rotor.pitch(peak);
  if (up * (got - thrust) >= 0) return between(rotor, thrust, inner, peak);
  return up * (got - bestThrust) > 0 ? missing("stalled", got, peak) : missing("stalled", bestThrust, best);
}

function between(rotor: Rotor, thrust: number, low: number, high: number): PitchFound | PitchMissing {
  const theta = bracketedRoot((x) => rotor.pitch(x) - thrust, low, high, 1e-12);
  if (theta === null) return missing("stalled", rotor.pitch(high), high);
  rotor.pitch(theta);
  return { ok: true, collective: theta };
}

/** A speed that takes the power, or why there is none. */
export type SpeedFound = { readonly ok: true; readonly speed: number } | { readonly ok: false; readonly words: string };

/** Tip Mach number beyond which no speed is looked for. */
const fastest = 0.95;

/**
 * Speed at which a rotor at a fixed collective takes a shaft power.
 *
 * @param geometry the rotor, m and rad
 * @param air density (kg/m3), viscosity (Pa s), speed of sound (m/s)
 * @param task power (W), collective (rad), climb (m/s, default 0)
 * @returns speed in rad/s, or in words why there is none: no power, or tips past Mach 0.95.
 * Source: definition (power = torque times speed).
 */
export function speedForPower(
  geometry: RotorGeometry,
  air: RotorAir,
  task: { readonly power: number; readonly collective: number; readonly climb?: number },
): SpeedFound {
  const { power, collective, climb = 0 } = task;
  const rotor = new Rotor(geometry, air);
  const powerAt = (speed: number): number => {
    rotor.fly(speed, climb).pitch(collective);
    return rotor.torque * speed;
  };
  if (!(power > 0)) return { ok: false, words: "Without power the rotor does not turn." };
  const top = (fastest * air.soundSpeed) / geometry.radius;
  const least = powerAt(top);
  if (least < power) {
    return {
      ok: false,
      words: `At Mach ${fastest} the tips take ${least.toPrecision(3)} W: this rotor can't take more.`,
    };
  }
  const log = bracketedRoot((x) => powerAt(Math.exp(x)) - power, Math.log(top) - 14, Math.log(top), 1e-13);
  return log === null
    ? { ok: false, words: "At that rate of descent the air turns the rotor: it takes no power." }
    : { ok: true, speed: Math.exp(log) };
}
