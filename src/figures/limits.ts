/** Limits that parts bear on their makers' word, and what passes them. */
import type { Machine } from "#machine/machine";
import { electricalSpeed, motorSpeedLimit } from "#model/poles";
import type { Figures } from "./figures.ts";
import { rounding } from "./why.ts";
import type { TurningPart } from "./words.ts";

/** Beyond a limit, and not just by the last digit of a product. Any one unit. Source: definition. */
export const isOver = (value: number, limit: number): boolean => value > limit * (1 + rounding);

/** A part that turns faster than its maker allows, both in rpm. */
interface TooFast {
  readonly what: TurningPart;
  readonly value: number;
  readonly limit: number;
}

/**
 * The first of rotor, motor and motor's field that a head speed turns beyond its limit, all in rpm. Errors: null where none
 * is passed. Source: the makers' limits in the record.
 *
 * @param head head speed, rpm
 * @param ratio motor turns for one turn of the rotor
 */
export function tooFastAt({ mainRotor, motor, controller }: Machine, head: number, ratio: number): TooFast | null {
  const motorSpeed = head * ratio;
  const each: readonly [TurningPart, number, number | null][] = [
    ["rotor", head, mainRotor.ratedRpm],
    ["motor", motorSpeed, motor.ratedRpm],
    ["motor's field", electricalSpeed({ motorSpeed, poles: motor.poles }), controller.electricalRpmLimit],
  ];
  for (const [what, value, limit] of each) if (limit !== null && isOver(value, limit)) return { what, value, limit };
  return null;
}

/** The fastest head speed, rpm, that the limits of blades, motor and controller allow with a gear ratio. Source: as `tooFastAt`. */
export function fastestAllowed({ mainRotor, motor, controller }: Machine, ratio: number): number {
  const electrical = motorSpeedLimit({ electricalLimit: controller.electricalRpmLimit, poles: motor.poles });
  return Math.min(mainRotor.ratedRpm ?? Number.POSITIVE_INFINITY, motor.ratedRpm / ratio, electrical / ratio);
}

/** The first part that the learning run would turn too fast. Units, errors: as `tooFastAt`. Source: the speed to expect while it learns. */
export function learningOver(figures: Figures): TooFast | null {
  const head = figures.number("learning-head-speed");
  return head === null ? null : tooFastAt(figures.machine, head, figures.rig.ratio);
}

/** Current over capacity, 1/h, that most packs bear for some seconds: common practice, no source. */
export const currentRateLimit = 35;

/** Current, A, that most packs of this capacity bear for some seconds. Source: `currentRateLimit`. */
export const packCurrentLimit = ({ pack }: Machine): number => (currentRateLimit * pack.capacityMah) / 1000;

/** Tip Mach number above which drag climbs steeply on sections of 12 to 15 % at the lift of a hover: from memory. */
export const machLimit = 0.65;

/** Contact ratio below which a mesh runs rough: any gear handbook (from memory). */
export const contactLimit = 1.2;
