import { withUnit } from "#inputs/typed";
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";

/** A machine in a line: gears, Kv, rotor. */
export function gistOf({ gears, motor, mainRotor }: Machine): string {
  const kv = withUnit(motor.kvRpmPerVolt, fieldAt("motor.kvRpmPerVolt"));
  const rotor = withUnit(mainRotor.diameterMm, fieldAt("mainRotor.diameterMm"));
  return `${gears.pinionTeeth}\u202f:\u202f${gears.mainTeeth} \u2002${kv} \u2002${rotor}`;
}
