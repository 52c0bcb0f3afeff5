import { discArea, figureOfMerit, idealHoverPower } from "../momentum.ts";
import { annuli, type Blade, cutBlade, type RotorAir, type RotorGeometry, reynoldsNumber } from "./blade.ts";
import { inflowAngle, realWake } from "./inflow.ts";
import { dragAt, liftAt, sectionCoefficients, separatedShare } from "./section.ts";

import type { Annulus, RotorOptions, RotorResult, RotorState } from "./types.ts";

export type { RotorAir, RotorGeometry } from "./blade.ts";

export type { Annulus, RotorOptions, RotorResult, RotorState } from "./types.ts";

/**
 * A rotor in a given air that can be asked again and again without allocating: `fly` sets speed and climb, `pitch` solves
 * for a collective and leaves the sums in its fields.
 */
export class Rotor {
  readonly blade: Blade;
  /** Sums of the last `pitch`: N, N m, W, W, m/s, fraction. */
  thrust = 0;
  torque = 0;
  inducedPower = 0;
  profilePower = 0;
  inducedVelocity = 0;
  stalledShare = 0;
  speed = 0;
  climb = 0;
  collective = 0;
  private readonly flow: Float64Array;
  private readonly sin0: Float64Array;
  private readonly cos0: Float64Array;
  private readonly angle0: Float64Array;
  /** Per annulus of the last `pitch`: the added inflow angle, rad. */
  private readonly turned: Float64Array;
  private readonly air: RotorAir;

  private readonly wake: number;

  constructor(geometry: RotorGeometry, air: RotorAir, { count = annuli, wake = realWake }: RotorOptions = {}) {
    this.wake = wake;
    this.blade = cutBlade(geometry, count);
    this.air = air;
    this.flow = new Float64Array(count);
    this.sin0 = new Float64Array(count);
    this.cos0 = new Float64Array(count);
    this.angle0 = new Float64Array(count);
    this.turned = new Float64Array(count);
  }

  /** Of the air, kg/m3. */
  get density(): number {
    return this.air.density;
  }

  /** Lift slope of the section near the tip in the last `fly`, 1/rad. */
  get liftSlope(): number {
    return this.blade.coefficients[(this.blade.count - 2) * sectionCoefficients]!;
  }

  /** Sets speed (rad/s) and climb (m/s): the undisturbed flow and the section's coefficients at every annulus. */
  fly(speed: number, climb: number): this {
    const { radius, chord, count, coefficients, geometry } = this.blade;
    const { soundSpeed } = this.air;
    this.speed = speed;
    this.climb = climb;
    for (let i = 0; i < count; i++) {
      const across = speed * radius[i]!;
      const flow = Math.sqrt(across * across + climb * climb);
      this.flow[i] = flow;
      this.sin0[i] = flow > 0 ? climb / flow : 0;
      this.cos0[i] = flow > 0 ? across / flow : 1;
      this.angle0[i] = Math.atan2(climb, across);
      geometry.section.coefficients(
        reynoldsNumber(this.air, flow, chord[i]!),
        flow / soundSpeed,
        coefficients,
        i * sectionCoefficients,
      );
    }
    return this;
  }

  /** Solves every annulus for a collective in rad and sums up; needs `fly` first. Returns the thrust in N. */
  pitch(collective: number): number {
    const { radius, width, chord, twist, load, tip, root, count, coefficients, geometry } = this.blade;
    const half = 0.5 * this.air.density * geometry.blades;
    let thrust = 0;
    let torque = 0;
    let induced = 0;
    let profile = 0;
    let flux = 0;
    let stalled = 0;
    let area = 0;
    this.collective = collective;
    for (let i = 0; i < count; i++) {
      const at = i * sectionCoefficients;
      const sin0 = this.sin0[i]!;
      const cos0 = this.cos0[i]!;
      const attack0 = collective + twist[i]! - this.angle0[i]!;
      const e = inflowAngle(coefficients, at, load[i]!, tip[i]!, root[i]!, sin0, cos0, attack0, this.wake);
      this.turned[i] = e;
      const se = Math.sin(e);
      const ce = Math.cos(e);
      const sinPhi = sin0 * ce + cos0 * se;
      const cosPhi = cos0 * ce - sin0 * se;
      const sa = Math.sin(attack0 - e);
      const ca = Math.cos(attack0 - e);
      const w = this.flow[i]! * ce;
      const force = half * chord[i]! * width[i]! * w * w;
      const lift = force * liftAt(coefficients, at, sa, ca);
      const drag = force * dragAt(coefficients, at, sa, ca);
      const r = radius[i]!;
      thrust += lift * cosPhi - drag * sinPhi;
      torque += r * (lift * sinPhi + drag * cosPhi);
      induced += lift * this.flow[i]! * se;
      // Drag's own share of climb work is booked with the thrust, so it is taken out here.
      profile += drag * w;
      flux += this.flow[i]! * se * cosPhi * r * width[i]!;
      const weight = r * r * width[i]!;
      stalled += weight * separatedShare(coefficients, at, sa, ca);
      area += weight;
    }
    this.thrust = thrust;
    this.torque = torque;
    this.inducedPower = induced;
    this.profilePower = profile;
    this.inducedVelocity = (2 * flux) / geometry.radius ** 2;
    this.stalledShare = stalled / area;
    return thrust;
  }

  /** The last state in full. */
  result(): RotorResult {
    const { geometry, solidity } = this.blade;
    const { density, soundSpeed } = this.air;
    const tipSpeed = this.speed * geometry.radius;
    const area = discArea(geometry);
    const scale = density * area * tipSpeed ** 2;
    const power = this.torque * this.speed;
    const idealPower = idealHoverPower({ thrust: Math.abs(this.thrust), density, area });
    const tipChord = geometry.chordAt?.(1) ?? geometry.chordTip;
    return {
      thrust: this.thrust,
      torque: this.torque,
      power,
      climbPower: this.thrust * this.climb,
      inducedPower: this.inducedPower,
      profilePower: this.profilePower,
      inducedVelocity: this.inducedVelocity,
      figureOfMerit: this.climb === 0 && power > 0 && idealPower > 0 ? figureOfMerit({ idealPower, power }) : null,
      thrustCoefficient: scale > 0 ? this.thrust / scale : 0,
      torqueCoefficient: scale > 0 ? this.torque / (scale * geometry.radius) : 0,
      solidity,
      tipSpeed,
      tipMach: tipSpeed / soundSpeed,
      tipReynolds: reynoldsNumber(this.air, tipSpeed, tipChord),
      stalledShare: this.stalledShare,
    };
  }

  /** The last state annulus by annulus, root first. */
  annuli(): Annulus[] {
    const { radius, chord, twist, count, coefficients, geometry } = this.blade;
    const { density, soundSpeed } = this.air;
    return Array.from({ length: count }, (_, i) => {
      const at = i * sectionCoefficients;
      const e = this.turned[i]!;
      const inflow = this.angle0[i]! + e;
      const pitch = this.collective + twist[i]!;
      const attack = pitch - inflow;
      const [sa, ca] = [Math.sin(attack), Math.cos(attack)];
      const lift = liftAt(coefficients, at, sa, ca);
      const drag = dragAt(coefficients, at, sa, ca);
      const w = this.flow[i]! * Math.cos(e);
      const v = this.flow[i]! * Math.sin(e);
      const force = 0.5 * density * geometry.blades * chord[i]! * w * w;
      return {
        radius: radius[i]!,
        chord: chord[i]!,
        pitch,
        inflow,
        attack,
        lift,
        drag,
        reynolds: reynoldsNumber(this.air, w, chord[i]!),
        mach: w / soundSpeed,
        inducedVelocity: v * Math.cos(inflow),
        swirlVelocity: v * Math.sin(inflow),
        thrustPerMetre: force * (lift * Math.cos(inflow) - drag * Math.sin(inflow)),
        torquePerMetre: force * radius[i]! * (lift * Math.sin(inflow) + drag * Math.cos(inflow)),
        separated: separatedShare(coefficients, at, sa, ca),
      };
    });
  }
}

/**
 * Thrust, torque and power of a rotor in hover, climb or descent along its axis: blade element momentum theory, annulus by
 * annulus, with Prandtl's tip and root loss, swirl, and section data at each annulus's own Reynolds and Mach number.
 *
 * @param geometry the rotor, m and rad
 * @param air density (kg/m3), viscosity (Pa s) and speed of sound (m/s)
 * @param state speed (rad/s, 0 or more), collective (rad, within 0.5 either way), climb (m/s)
 * @returns thrust (N), torque (N m), power (W) and the rest. Always finite; positive and negative pitch through zero.
 * Errors, medians against published rotors (`npm run -s validate`): thrust at a pitch 2 to 6 %, torque at a thrust 1 to 4 %,
 * where CT is above 0.0012. Blades as wide as a sixth of the radius (TM-81232) get a quarter too much thrust. What to expect
 * at small Reynolds numbers, where no test is at hand, is `expectedError`.
 * Descent: trust it to half the hover's induced velocity; from there to twice of it within 15 % of measured inflow, which
 * itself scatters as much; a blade that stalls there may jump between two flows.
 * Not in it: the spread of lift over the chord (a vortex lattice takes 3 % of thrust off at a chord of R/15, 6 % at R/6);
 * the tip vortex that passes close under the next blade; blades that bend or twist, ground, wind. For the blades of
 * TM-81232 even a lattice with Landgrebe's wake keeps 7 to 13 % too much thrust at tip Mach 0.44, 17 to 35 % at 0.79.
 * Source: Glauert, in Durand, Aerodynamic Theory IV (1935); Leishman, Principles of Helicopter Aerodynamics, ch. 3.
 */
export function hover(
  geometry: RotorGeometry,
  air: RotorAir,
  state: RotorState,
  options: RotorOptions = {},
): RotorResult {
  const rotor = new Rotor(geometry, air, options).fly(state.speed, state.climb ?? 0);
  rotor.pitch(state.collective);
  return rotor.result();
}
