/** Whether the tail can push as hard as full pitch asks of it. */
import { tailThrust } from "#model/rotor-load";
import type { Figures } from "./figures.ts";
import { keeper } from "./kept.ts";
import { modeName } from "./mode-name.ts";
import type { Found } from "./warning.ts";
import { warningWords } from "./words.ts";

/** What the tail needs and has at a full pitch, N; `most` is null where it has enough. Kept: it takes two rotors to say. */
const tailPushes = keeper<{ readonly needed: number; readonly most: number | null }>(24);

/** Pitches of the tail among which its greatest thrust is looked for, rad: 6 to 20 degrees. */
const tailPitches = Array.from({ length: 15 }, (_, i) => ((6 + i) * Math.PI) / 180);

/** Thrust that the tail needs at full pitch, against what its blades can give there. Units: N. Errors: none. Source: `tailThrust`. */
export function tailShort({ rig, machine }: Figures, mode: number): Found {
  const asked = rig.parts.modes[mode];
  if (!asked) return null;
  const { rotor, arm, ratio } = rig.tail;
  const { headSpeed, collectiveMax } = asked;
  const { needed, most } = tailPushes([rig.main, rotor, arm, ratio, headSpeed, collectiveMax], () => {
    const speed = headSpeed * ratio;
    const thrust = tailThrust(rig.main.torqueAt({ speed: headSpeed, collective: collectiveMax }), arm);
    const holds = rotor.collectiveForThrust({ speed, thrust }) !== null;
    return {
      needed: thrust,
      most: holds ? null : Math.max(...tailPitches.map((collective) => rotor.thrustAt({ speed, collective }))),
    };
  });
  if (most === null) return null;
  const words = warningWords.tailThrust(modeName(machine, mode), needed, most);
  return { name: "tail-thrust-short", value: needed, limit: most, unit: "N", words };
}
