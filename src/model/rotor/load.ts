/** A blade-element rotor as its shaft sees it. */
import type { RotorLoad } from "../rotor-load.ts";
import { Rotor, type RotorAir, type RotorGeometry } from "./bemt.ts";
import { collectiveForThrust } from "./solve.ts";

/**
 * Stalls at speeds this close to each other differ, over the square of the speed, by less than the share beyond which a
 * thrust counts as out of reach: the greatest lift goes with Re^0.135 and falls with the square of the Mach number.
 */
const nearby = 0.1;
const beyond = 1.12;

/** Answers that a rotor remembers: as many as a machine's modes ask for, several times over. */
const kept = 24;

interface Answer {
  readonly speed: number;
  readonly thrust: number;
  readonly climb: number;
  /** Null where the blades stall below the thrust. */
  collective: number | null;
  torque: number | null;
}

/**
 * The blade-element rotor in the shape that the steady and the flight models take: thrust and torque at a collective, and
 * collective and torque for a thrust.
 *
 * @param geometry the rotor, m and rad
 * @param air density (kg/m3), viscosity (Pa s), speed of sound (m/s)
 * @returns thrust in N, torque in N m, collective in rad; null where the blades stall below the thrust asked for (ask
 * `collectiveForThrust` of the rotor why, and how much there is). Asked the same twice, it answers from memory.
 * Source: that of `hover`.
 */
export function rotorLoad(geometry: RotorGeometry, air: RotorAir): RotorLoad {
  const rotor = new Rotor(geometry, air);
  let [speedNow, climbNow, collectiveNow] = [Number.NaN, Number.NaN, Number.NaN];
  const answers: Answer[] = [];
  let next = 0;
  /** The last stall that was searched for: most thrust (N) at a speed, without climb. */
  let stall: { readonly speed: number; readonly most: number } | null = null;

  /** A thrust so far above a stall known at nearly this speed needs no search of its own: that would cost a hundred solves. */
  const hopeless = (speed: number, thrust: number, climb: number): boolean =>
    stall !== null &&
    climb === 0 &&
    Math.abs(speed / stall.speed - 1) < nearby &&
    thrust / stall.most > beyond * (speed / stall.speed) ** 2;

  const fly = (speed: number, climb: number): void => {
    if (speed === speedNow && climb === climbNow) return;
    rotor.fly(speed, climb);
    speedNow = speed;
    climbNow = climb;
    collectiveNow = Number.NaN;
  };
  const pitch = (speed: number, collective: number, climb: number): void => {
    fly(speed, climb);
    if (collective === collectiveNow) return;
    rotor.pitch(collective);
    collectiveNow = collective;
  };
  const solve = (speed: number, thrust: number, climb: number): Answer => {
    const known = answers.find((each) => each.speed === speed && each.thrust === thrust && each.climb === climb);
    if (known) return known;
    const answer: Answer = { speed, thrust, climb, collective: null, torque: null };
    if (!hopeless(speed, thrust, climb)) {
      fly(speed, climb);
      const found = collectiveForThrust(rotor, thrust);
      collectiveNow = found.ok ? found.collective : Number.NaN;
      if (found.ok) {
        answer.collective = found.collective;
        answer.torque = rotor.torque;
      } else if (thrust === 0 && speed === 0) {
        answer.collective = 0;
        answer.torque = 0;
      } else if (found.why === "stalled" && climb === 0) stall = { speed, most: found.most };
    }
    answers[next++ % kept] = answer;
    return answer;
  };
  return {
    thrustAt: ({ speed, collective, climb = 0 }) => {
      pitch(speed, collective, climb);
      return rotor.thrust;
    },
    torqueAt: ({ speed, collective, climb = 0 }) => {
      pitch(speed, collective, climb);
      return rotor.torque;
    },
    collectiveForThrust: ({ speed, thrust, climb = 0 }) => solve(speed, thrust, climb).collective,
    torqueForThrust: ({ speed, thrust, climb = 0 }) => solve(speed, thrust, climb).torque,
  };
}
