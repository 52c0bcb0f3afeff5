/** A blade-element rotor as its shaft sees it. */
import type { RotorLoad } from "../rotor-load.ts";
import { Rotor, type RotorAir, type RotorGeometry } from "./bemt.ts";
import { collectiveForThrust } from "./solve.ts";

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
  let [speedNow, climbNow, collectiveNow, thrustAsked] = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];
  let found: number | null = null;

  const fly = (speed: number, climb: number): void => {
    if (speed === speedNow && climb === climbNow) return;
    rotor.fly(speed, climb);
    speedNow = speed;
    climbNow = climb;
    collectiveNow = Number.NaN;
    thrustAsked = Number.NaN;
  };
  const pitch = (speed: number, collective: number, climb: number): void => {
    fly(speed, climb);
    if (collective === collectiveNow) return;
    rotor.pitch(collective);
    collectiveNow = collective;
  };
  const solve = (speed: number, thrust: number, climb: number): number | null => {
    fly(speed, climb);
    if (thrust !== thrustAsked) {
      const answer = collectiveForThrust(rotor, thrust);
      thrustAsked = thrust;
      found = answer.ok ? answer.collective : thrust === 0 && speed === 0 ? 0 : null;
      collectiveNow = answer.ok ? answer.collective : Number.NaN;
    }
    return found;
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
    collectiveForThrust: ({ speed, thrust, climb = 0 }) => solve(speed, thrust, climb),
    torqueForThrust: ({ speed, thrust, climb = 0 }) => {
      const collective = solve(speed, thrust, climb);
      if (collective === null) return null;
      pitch(speed, collective, climb);
      return rotor.torque;
    },
  };
}
