/** Sentences about figures: warnings, and why a figure has no value. One place, so that page, card and command agree. */
import { withUnit } from "#machine/words";
import { reserveCharge } from "#model/endurance";
import type { Help, Lasting } from "./help.ts";

/** A number cut to so many decimals, with its unit. */
const cut = (value: number, decimals: number, unit = ""): string =>
  withUnit(value, unit, { round: (shown) => Number(shown.toFixed(decimals)) });
const rpm = (value: number): string => cut(value, 0, "rpm");
/** A speed that the model gives and by how much it falls short, to tens: its doubt is larger. Less than ten is told as it is. */
const shortBy = (set: number, most: number): readonly [string, string] => {
  const step = set - most < 10 ? 1 : 10;
  return [rpm(step * Math.round(most / step)), rpm(step * Math.round((set - most) / step))];
};

/** A figure and its limit with as many decimals as it takes to tell them apart, up to four. */
function apart(value: number, limit: number, decimals: number, unit = ""): readonly [string, string] {
  const [one, other] = [cut(value, decimals, unit), cut(limit, decimals, unit)];
  return one !== other || decimals >= 4 ? [one, other] : apart(value, limit, decimals + 1, unit);
}

/** The same of figures that may be small: at least two figures of each that count. */
function apartSmall(value: number, limit: number, unit: string, digits = 2): readonly [string, string] {
  const round = (shown: number) =>
    Number(Math.abs(shown) >= 10 ** (digits - 1) ? shown.toFixed(digits - 1) : shown.toPrecision(digits));
  const [one, other] = [withUnit(value, unit, { round }), withUnit(limit, unit, { round })];
  return one !== other || digits >= 5 ? [one, other] : apartSmall(value, limit, unit, digits + 1);
}

/** What a load of a mode draws from the pack, A. */
interface Draws {
  readonly load: "hover" | "full-pitch";
  readonly current: number;
  readonly fullDuty: boolean;
}

/** Clauses as a sentence. */
const sentence = (clauses: string): string => `${clauses.charAt(0).toUpperCase()}${clauses.slice(1)}.`;

interface WaysUp {
  readonly smaller: boolean;
  readonly more: boolean;
}

/** How long a full pitch holds, as the end of a clause. */
function holding(lasts: Lasting): string {
  if (typeof lasts === "number") return `for ${cut(lasts, 0, "s")}`;
  return lasts === "on this charge" ? lasts : `down to ${cut(100 * reserveCharge, 0, "%")} of charge`;
}

/** What is to be done after other parts are fitted. */
const anew = "learn again and enter the new throttle";

/**
 * What would help a mode that can't be held: each entry a clause of its own. `parts` says whether other parts were looked at:
 * no part is named that leads to a speed which a maker forbids.
 */
export function helpWords(help: Help, parts: boolean): string {
  const { charge, slower, pinion, cells } = help;
  const ways = [
    charge === null
      ? ""
      : `charge the pack full, and full pitch holds ${holding(charge.lasts)}, down to ${cut(charge.to, 0, "%")}`,
    slower === null ? "" : `ask for ${rpm(slower.to)} or less, and full pitch holds ${holding(slower.lasts)}`,
    pinion === null ? "" : `fit a pinion of ${pinion} teeth, ${anew}`,
    cells === null ? "" : `fly ${cells} cells, within every maker's limits, ${anew}`,
  ].filter(Boolean);
  if (ways.length > 0) return `What would help: ${ways.join("; or ")}.`;
  return parts
    ? "Neither a lower speed in the usable band, nor a few teeth more, nor two cells more would hold it with a reserve and within the makers' limits. Less pitch or less weight would help."
    : "No lower speed in the usable band would hold it within the makers' limits either. Less pitch or less weight would help.";
}

/** What would help a rotor that can't carry the machine at any speed that its motor reaches. */
export const carryWords = "What would help: less weight, larger blades, or a motor and a pack that turn them faster.";

/** What would help a rotor that turns too slowly for its load. */
export const fasterWords = (faster: boolean): string =>
  `What would help: ${faster ? "ask for more head speed, or " : ""}less weight and pitch.`;

export const warningWords = {
  loads: { hover: "in hover", "full-pitch": "at full pitch" },
  aboveBand: (mode: string, throttle: number, limit: number, pinion: boolean) => {
    const [asked, end] = apart(throttle, limit, 1, "%");
    const why =
      throttle > 100
        ? "No transmitter asks for more than 100\u00a0%."
        : "That leaves the governor little to work with when the pack sinks.";
    return `"${mode}" asks for ${asked} of the reference; the usable band ends at ${end}. ${why} Ask for less${pinion ? `, or fit a bigger pinion, ${anew}` : ""}.`;
  },
  belowBand: (mode: string, throttle: number, limit: number, { smaller, more }: WaysUp) => {
    const [asked, end] = apart(throttle, limit, 1, "%");
    const ways = [smaller ? `fit a smaller pinion, ${anew}` : "", more ? "ask for more" : ""].filter(Boolean);
    return `"${mode}" asks for ${asked} of the reference; the usable band begins at ${end}. The controller carries more current there than the pack shows, and the gains may fit less well.${ways.length === 0 ? "" : ` ${sentence(ways.join(", or "))}`}`;
  },
  short: (mode: string, load: string, set: number, ceiling: number, help: string) => {
    const [most, short] = shortBy(set, ceiling);
    return `"${mode}" can't be held ${load}: it asks for ${rpm(set)}, and with full duty there is ${most}. It is ${short} short. ${help}`;
  },
  noHold: (mode: string, load: string, why: Obstacle, help: string) =>
    `"${mode}" can't be held ${load}: ${obstacleWords[why]} ${help}`,
  stale: (parts: readonly string[], change: number) =>
    `The reference was learned with other parts (${parts.join(", ")}). ${
      Math.abs(change) < 0.05
        ? "The head speeds stay, but what the machine can hold has changed."
        : `Every throttle value now gives ${cut(Math.abs(change), 1, "%")} ${change > 0 ? "more" : "less"} head speed than it did.`
    } Learn again, and enter the new throttle values before you fly.`,
  bladeSpeed: (mode: string, set: number, limit: number) =>
    `"${mode}" asks for ${apart(set, limit, 0, "rpm").join("; the maker of the blades prints ")} as the limit. Don't fly it.`,
  motorSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the motor turns ${apart(speed, limit, 0, "rpm").join("; it is rated for ")}. Its magnets and bearings are not made for that.`,
  electricalSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the controller must follow ${apart(speed, limit, 0, "rpm").join(" electrical; its limit is ")}. Beyond it, it may lose step and stop.`,
  /** What a mode's old throttle does under a stale reference. */
  staleSpeeds: {
    bladeSpeed: (mode: string, speed: number, limit: number) =>
      `In "${mode}" the rotor turns ${apart(speed, limit, 0, "rpm").join(" with the old throttle; the maker of the blades prints ")} as the limit. Don't fly it.`,
    motorSpeed: (mode: string, speed: number, limit: number) =>
      `In "${mode}" the motor turns ${apart(speed, limit, 0, "rpm").join(" with the old throttle; it is rated for ")}. Don't fly it.`,
    electricalSpeed: (mode: string, speed: number, limit: number) =>
      `In "${mode}" the controller must follow ${apart(speed, limit, 0, "rpm").join(" electrical with the old throttle; its limit is ")}. Beyond it, it may lose step and stop.`,
  },
  tipMach: (mode: string, mach: number, limit: number) =>
    `In "${mode}" the tips reach Mach ${apart(mach, limit, 2).join(". Above about ")} drag climbs steeply and noise with it; in fast flight the advancing blade is faster still.`,
  packCurrent: (mode: string, { load, current, fullDuty }: Draws, limit: number, rate: number) => {
    const [drawn, most] = apart(current, limit, 0, "A");
    const what = `${load === "hover" ? "Hover" : "Full pitch"} in "${mode}" draws ${drawn}${fullDuty ? " at full duty" : ""}`;
    return `${what}. That is more than ${cut(rate, 0)} C (${most}), which most packs don't bear. The pack maker's own figure comes first.`;
  },
  hoverLost: (mode: string, end: number, reserve: number) =>
    `"${mode}" is held in hover only down to ${apart(end, reserve, 0, "%").join(" of charge: the time counts to there, not to ")}.`,
  learningRun: (what: TurningPart, speed: number, limit: number) =>
    `The learning run would turn the ${what} at ${apart(speed, limit, 0, "rpm").join("; its limit is ")}. Don't learn with these parts. ${what === "rotor" ? "Fit a smaller pinion" : "Fly fewer cells"}, or learn at less throttle if your controller takes that.`,
  hoverPitch: (mode: string, needed: number, most: number, faster: boolean) =>
    `To hover in "${mode}" the blades need ${apart(needed, most, 1, "°").join(" of pitch; the mode gives at most ")}. It won't lift off. Allow more pitch${faster ? ", more head speed" : ""} or less weight.`,
  mesh: (ratio: number, limit: number, pinion: number) =>
    `With ${pinion} teeth on the pinion, ${apart(ratio, limit, 2).join(" pairs of teeth share the load on average; below ")} the mesh runs rough and wears.`,
  tailThrust: (mode: string, needed: number, most: number) =>
    `At full pitch in "${mode}" the tail must push with ${apartSmall(needed, most, "N").join("; its blades give ")} at most there, by this model. The machine will turn away until you ease the pitch. A faster tail, longer tail blades or less pitch would help.`,
  tailSpeed: (mode: string, speed: number, limit: number) =>
    `In "${mode}" the tail rotor turns ${apart(speed, limit, 0, "rpm").join("; above ")} its tips come near the speed at which drag climbs steeply. Its maker's limit comes first.`,
} as const;

/** What can turn too fast for its maker. */
export type TurningPart = "rotor" | "motor" | "motor's field";

/** What can keep a mode's speed from being held, or a figure from having a value. */
export type Obstacle =
  | "motor does not turn"
  | "load too heavy"
  | "rotor cannot carry it"
  | "too fast"
  | "too slow"
  | "blades stall";

/** The same as clauses. */
export const obstacleWords: Readonly<Record<Obstacle, string>> = {
  "motor does not turn": "the pack can't even drive the motor's own no-load current.",
  "load too heavy": "with full duty this motor doesn't turn the rotor against that load at all.",
  "rotor cannot carry it": "at no speed that this motor reaches can the rotors carry that load.",
  "too fast": "even full duty doesn't hold this speed.",
  "too slow": "at so low a speed the rotor takes more torque than full duty gives.",
  "blades stall": "at this speed the blades would stall before they carry the machine.",
};

export const noValueWords = {
  noReference: "the motor doesn't turn at the learning throttle, so there is no reference.",
  lowestCharge: "not even a full pack holds this speed at full pitch.",
  other: "there is no value for this machine.",
} as const;
