/** The rotors of a machine as loads on its shaft. The one place that says which rotor model stands behind the figures. */
import type { Parts } from "#machine/parts";
import type { Air } from "#model/air";
import { closedRotor } from "#model/closed-rotor";
import type { RotorLoad, Tail } from "#model/rotor-load";

/** Main and tail rotor of a machine in the air of its place. Units: SI. Errors: none. Source: that of the rotor model. */
export function rotorsOf(parts: Parts, air: Air): { main: RotorLoad; tail: Tail } {
  const { mainRotor, tailRotor, gears } = parts;
  return {
    main: closedRotor({ ...mainRotor, density: air.density }),
    tail: {
      rotor: closedRotor({ ...tailRotor, rootCutout: 0.2 * tailRotor.radius, density: air.density }),
      arm: tailRotor.arm,
      ratio: gears.tailRatio,
    },
  };
}
