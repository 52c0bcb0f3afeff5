/** A rotor in closed form: uniform inflow, straight untwisted blades, one mean drag. SI throughout. */
import { inducedVelocity } from "#model/momentum";
import { bracketedRoot } from "#model/root";
import type { RotorLoad } from "#model/rotor-load";

/** Constants of the closed form. */
export const closedForm = {
  /** Real over ideal induced power: Leishman, Principles of Helicopter Aerodynamics, ch. 2. */
  inducedFactor: 1.15,
  /**
   * Mean section drag. NACA TN 626 (1937) has 0.0102 to 0.0113 for an unlifted section at a Reynolds number of 242,000;
   * SAND80-2114 has 0.0157 at 8 degrees and 360,000. The rotors here work between the two.
   */
  drag: 0.013,
  /** Lift slope of a section, 1/rad: 5.7 to 5.9 measured in NACA TN 626. */
  liftSlope: 5.73,
  /** Mean lift coefficient beyond which the blades are taken to stall: from memory, symmetric sections, small Reynolds numbers. */
  meanLiftLimit: 1,
} as const;

/** A rotor's shape and the air it turns in. */
export interface ClosedRotorParts {
  readonly blades: number;
  readonly radius: number;
  readonly chord: number;
  /** Where the blades begin, m from the axis. */
  readonly rootCutout: number;
  /** Of the air, kg/m3. */
  readonly density: number;
  readonly inducedFactor?: number;
  readonly drag?: number;
  readonly liftSlope?: number;
}

/** The closed-form rotor: a `RotorLoad`, and what it is made of. */
export interface ClosedRotor extends RotorLoad {
  readonly area: number;
  /** Blade area over disc area, N c / (pi R). */
  readonly solidity: number;
  /** Power of the blades' drag at a speed, W. */
  readonly profilePower: (speed: number) => number;
  /** Mean lift coefficient of the blades, 6 CT / sigma. */
  readonly meanLift: (speed: number, thrust: number) => number;
}

/**
 * A rotor in closed form. SI units.
 *
 * CT = (sigma a / 2) (theta A - lambda B) with A = (1 - x³) / 3, B = (1 - x²) / 2 for a root cut-out x; lambda by momentum
 * theory; P = kappa T vi + T Vc + rho A (Omega R)³ sigma cd (1 - x⁴) / 8. Positive, zero and negative collective.
 *
 * Error: power up to 16 % too low, thrust at a collective 10 to 15 % too high (no tip loss); above a mean lift coefficient of about 0.8
 * the drag is too low. `thrustAt` knows no stall; the two that are given a thrust return null beyond the mean lift limit.
 * Source: J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2 and 3.
 */
export function closedRotor(parts: ClosedRotorParts): ClosedRotor {
  const { blades, radius, chord, rootCutout, density } = parts;
  const { inducedFactor = closedForm.inducedFactor, drag = closedForm.drag, liftSlope = closedForm.liftSlope } = parts;
  const area = Math.PI * radius * radius;
  const solidity = (blades * chord) / (Math.PI * radius);
  const x = rootCutout / radius;
  const pitchPart = (1 - x ** 3) / 3;
  const flowPart = (1 - x ** 2) / 2;
  const lift = (solidity * liftSlope) / 2;
  const dragPart = (density * area * solidity * drag * (1 - x ** 4)) / 8;

  const profilePower = (speed: number): number => dragPart * (speed * radius) ** 3;
  const meanLift = (speed: number, thrust: number): number =>
    (6 * thrust) / (density * area * (speed * radius) ** 2 * solidity);
  const carries = (speed: number, thrust: number): boolean =>
    thrust === 0 || (speed > 0 && Math.abs(meanLift(speed, thrust)) <= closedForm.meanLiftLimit);

  const thrust = (speed: number, collective: number, climb: number): number => {
    if (!(speed > 0)) return 0;
    const tip = speed * radius;
    const unit = density * area * tip * tip;
    const rise = climb / tip;
    // Thrust coefficient over `lift` if there were no induced flow; its sign is that of the thrust.
    const free = pitchPart * collective - flowPart * rise;
    if (free === 0) return 0;
    const sign = free > 0 ? 1 : -1;
    const climbing = sign * rise;
    const most = lift * Math.abs(free);
    if (climbing >= 0) {
      // 2 l² + b l = lift * |free| with the induced part l, in the form that keeps its digits near zero.
      const b = 2 * climbing + lift * flowPart;
      const induced = (2 * most) / (b + Math.sqrt(b * b + 8 * most));
      return sign * unit * 2 * induced * (induced + climbing);
    }
    // Sinking into the flow that it makes itself: the branches of momentum theory have no common closed form.
    // Solved for the hover flow u = sqrt(CT / 2), because near zero thrust the flow is what counts.
    const excess = (u: number) =>
      most - (lift * flowPart * inducedVelocity(2 * u * u * unit, climbing * tip, density, area)) / tip - 2 * u * u;
    const hover = bracketedRoot(excess, 0, Math.sqrt(most / 2), 1e-15) ?? 0;
    return sign * unit * 2 * hover * hover;
  };

  const power = (speed: number, force: number, climb: number): number =>
    force * (inducedFactor * inducedVelocity(force, climb, density, area) + climb) + profilePower(speed);

  return {
    area,
    solidity,
    profilePower,
    meanLift,
    thrustAt: ({ speed, collective, climb = 0 }) => thrust(speed, collective, climb),
    torqueAt: ({ speed, collective, climb = 0 }) =>
      speed > 0 ? power(speed, thrust(speed, collective, climb), climb) / speed : 0,
    collectiveForThrust: ({ speed, thrust: force, climb = 0 }) => {
      if (!(speed > 0 && carries(speed, force))) return null;
      const tip = speed * radius;
      const ct = force / (density * area * tip * tip);
      const flow = (inducedVelocity(force, climb, density, area) + climb) / tip;
      return (ct / lift + flowPart * flow) / pitchPart;
    },
    torqueForThrust: ({ speed, thrust: force, climb = 0 }) => {
      if (!carries(speed, force)) return null;
      return speed > 0 ? power(speed, force, climb) / speed : 0;
    },
  };
}
