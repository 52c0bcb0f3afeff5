/** Sentences about figures: warnings, and why a figure has no value. One place, so that page, card and command agree. */
import { withUnit } from "#machine/words";

/** A number cut to so many decimals, with its unit. */
const cut = (value: number, decimals: number, unit = ""): string => withUnit(Number(value.toFixed(decimals)), unit);
const rpm = (value: number): string => cut(value, 0, "rpm");
const percent = (value: number): string => cut(value, 1, "%");

/** What would help a mode that cannot be held: each entry a clause of its own. */
export function helpWords(help: { slower: number | null; pinion: number | null; cells: number | null }): string {
  const ways = [
    help.slower === null ? "" : `ask for ${rpm(help.slower)} or less`,
    help.pinion === null ? "" : `fit a pinion of ${help.pinion} teeth and learn again`,
    help.cells === null ? "" : `fly ${help.cells} cells, within every maker's limits, and learn again`,
  ].filter(Boolean);
  if (ways.length === 0)
    return "No pinion that fits and no lower speed in the usable band would help: the rotor asks for more than this pack and motor give.";
  return `What would help: ${ways.join("; or ")}.`;
}

export const warningWords = {
  aboveBand: (mode: string, throttle: number, limit: number) =>
    `"${mode}" asks for ${percent(throttle)} of the reference; the usable band ends at ${percent(limit)}. That leaves the governor little to work with when the pack sinks. Ask for less, or gear faster and learn again.`,
  belowBand: (mode: string, throttle: number, limit: number) =>
    `"${mode}" asks for ${percent(throttle)} of the reference; the usable band begins at ${percent(limit)}. The controller then chops deeply and runs hot, and recovers slowly. Gear slower and learn again, or ask for more.`,
  noHeadroom: (mode: string, load: string, set: number, ceiling: number | null, help: string) =>
    ceiling === null
      ? `"${mode}" can't be held ${load}: with full duty this motor doesn't turn the rotor at all. ${help}`
      : `"${mode}" can't be held ${load}: it asks for ${rpm(set)}, and with full duty there is ${rpm(ceiling)}. It is ${rpm(set - ceiling)} short. ${help}`,
  stale: (parts: readonly string[], change: number) =>
    `The reference was learned with other parts (${parts.join(", ")}). ${
      Math.abs(change) < 0.05
        ? "The head speeds stay, but what the machine can hold has changed."
        : `Every throttle value now gives ${cut(Math.abs(change), 1, "%")} ${change > 0 ? "more" : "less"} head speed than it did.`
    } Learn again before you fly.`,
  bladeSpeed: (mode: string, set: number, limit: number) =>
    `"${mode}" asks for ${rpm(set)}; the maker of the blades prints ${rpm(limit)} as the limit. Don't fly it.`,
  motorSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the motor turns ${rpm(speed)}; it is rated for ${rpm(limit)}. Its magnets and bearings are not made for that.`,
  electricalSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the controller must follow ${rpm(speed)} electrical; its limit is ${rpm(limit)}. Beyond it, it may lose step and stop.`,
  tipMach: (mode: string, mach: number, limit: number) =>
    `In "${mode}" the tips reach Mach ${cut(mach, 2)}. Above about ${cut(limit, 2)} drag climbs steeply and noise with it; in fast flight the advancing blade is faster still.`,
  packCurrent: (mode: string, current: number, limit: number, rate: number) =>
    `Full pitch in "${mode}" draws ${cut(current, 0, "A")}. That is more than ${cut(rate, 0)} times the capacity in an hour (${cut(limit, 0, "A")}), more than most packs bear. The pack maker's own figure comes first.`,
  mesh: (ratio: number, limit: number, pinion: number) =>
    `With ${pinion} teeth on the pinion, ${cut(ratio, 2)} pairs of teeth share the load on average; below ${cut(limit, 1)} the mesh runs rough and wears.`,
  tailSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the tail rotor turns ${rpm(speed)}; above ${rpm(limit)} its tips come near the speed at which drag climbs steeply. Its maker's limit comes first.`,
} as const;

/** Why a figure has no value, by its name. */
const doesNotTurn = "with full duty the motor can't turn this rotor at all.";
const noReference = "the motor doesn't turn at the learning throttle, so there is no reference.";
const cannotHold = "even full duty doesn't hold this speed.";
const cannotHover = "at this speed the blades would stall before they carry the machine, or full duty doesn't hold it.";

export const whyNone: Readonly<Record<string, string>> & { readonly other: string } = {
  other: "there is no value for this machine.",
  "no-load-head-speed": "the pack can't even drive the motor's own no-load current.",
  "learning-head-speed": noReference,
  "learned-motor-speed": noReference,
  "learned-head-speed": noReference,
  "usable-low-head-speed": noReference,
  "usable-high-head-speed": noReference,
  throttle: noReference,
  "throttle-entered": noReference,
  "head-speed-entered": noReference,
  "stale-head-speed": noReference,
  "ceiling-hover": doesNotTurn,
  "ceiling-full-pitch": doesNotTurn,
  "speed-headroom-hover": doesNotTurn,
  "speed-headroom-full-pitch": doesNotTurn,
  "duty-hover": cannotHold,
  "duty-full-pitch": cannotHold,
  "hover-collective": cannotHover,
  "hover-power": cannotHover,
  "hover-motor-current": cannotHover,
  "hover-pack-current": cannotHover,
  "hover-duration": cannotHover,
  "full-pitch-power": "the tail can't hold the machine against this torque.",
  "full-pitch-pack-current": cannotHold,
  "lowest-charge": "not even a full pack holds this speed at full pitch.",
};
