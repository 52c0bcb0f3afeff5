/** Limits that parts bear on their makers' word, and what passes them. */
import type { Figures } from "./figures.ts";
import { rounding } from "./why.ts";
import type { LearningLimit } from "./words.ts";

/** Beyond a limit, and not just by the last digit of a product. Any one unit. Source: definition. */
export const isOver = (value: number, limit: number): boolean => value > limit * (1 + rounding);

/**
 * The first of rotor, motor and motor's field that the learning run would turn beyond its limit, both in rpm. Errors: null
 * where none is passed or nothing turns. Source: the speed to expect while it learns; the makers' limits in the record.
 */
export function learningOver(
  figures: Figures,
): { readonly what: LearningLimit; readonly value: number; readonly limit: number } | null {
  const { machine, rig } = figures;
  const rotor = figures.number("learning-head-speed");
  if (rotor === null) return null;
  const motor = rotor * rig.ratio;
  const each: readonly [LearningLimit, number, number | null][] = [
    ["rotor", rotor, machine.mainRotor.ratedRpm],
    ["motor", motor, machine.motor.ratedRpm],
    ["motor's field", (motor * machine.motor.poles) / 2, machine.controller.electricalRpmLimit],
  ];
  for (const [what, value, limit] of each) if (limit !== null && isOver(value, limit)) return { what, value, limit };
  return null;
}
