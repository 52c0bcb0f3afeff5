/** Operating points in words: what a load is called, why it can't be held, and the nearest thing that would work. */
import { withUnit } from "#machine/words";
import { rpm } from "#model/constants";
import { mostMach, type SteadyLoad } from "./asked.ts";
import type { NotOperating, OperatingProblem } from "./operating.ts";

/** What each load is called inside a sentence. */
const loadNames: Readonly<Record<SteadyLoad, string>> = {
  flat: "flat pitch on the ground",
  hover: "hover",
  "full-pitch": "full pitch before the climb begins",
  climb: "a steady climb at full pitch",
  forward: "fast forward flight",
};

const problems: Readonly<Record<OperatingProblem, string>> = {
  "blades stall": "the blades stall before they carry the machine",
  "tips too fast": `the tips would pass Mach ${mostMach}, where this model ends`,
  "no climb": "full pitch is no more than the hover takes, so nothing is left to climb with",
  "past the stall": "at full pitch the blades are past their stall and carry less than the machine weighs",
  "retreating blades stall": "the blades that move with the wind of flight are too slow there, and stall",
  "not enough duty": "even full duty doesn't hold it",
  "not enough power": "it asks for more than this pack gives at any duty",
};

/** Rounded to the side on which it works. */
const down = (value: number, step: number, unit: string): string =>
  withUnit(value, unit, { round: (shown) => Number((Math.floor(shown / step + 1e-9) * step).toFixed(6)) });
const up = (value: number, step: number, unit: string): string =>
  withUnit(value, unit, { round: (shown) => Number((Math.ceil(shown / step - 1e-9) * step).toFixed(6)) });

/** Steps that a reader can set. */
const steps = { speed: 10, mass: 0.01, pitch: 0.1, charge: 1, airspeed: 0.1 } as const;

function nearestWords({ load, why, nearest }: NotOperating): string {
  switch (nearest.change) {
    case "head speed": {
      const headRpm = nearest.to / rpm;
      if (why === "blades stall") return `At ${up(headRpm, steps.speed, "rpm")} they would carry it.`;
      const below = down(headRpm, headRpm < 100 ? 1 : steps.speed, "rpm");
      return why === "tips too fast" ? `Up to ${below} they stay below that.` : `At ${below} it would be held.`;
    }
    case "airspeed": {
      if (nearest.to < steps.airspeed) return "Only hovering is left.";
      const below = down(nearest.to, steps.airspeed, "m/s");
      if (why === "tips too fast") return `Up to ${below} they stay below that.`;
      return why === "retreating blades stall" ? `Up to ${below} they don't.` : `At ${below} it would be held.`;
    }
    case "collective":
      return `More than ${up((nearest.to * 180) / Math.PI, steps.pitch, "°")} of pitch begins to climb.`;
    case "mass":
      return nearest.to >= steps.mass
        ? `These blades would carry ${down(nearest.to, steps.mass, "kg")} there.`
        : "These blades carry next to nothing there: more head speed is the way.";
    case "charge":
      return `With the pack at ${up(100 * nearest.to, steps.charge, "%")} it would be held.`;
    case "cells":
      return `A pack of ${nearest.to} cells would do it, if every maker's limit allows that.`;
    case "none":
      return load === "flat"
        ? "Neither another speed nor more cells would do it: this motor can't turn these blades."
        : "Neither another speed nor more cells would do it: ask for less pitch, or for less weight.";
  }
}

/** Why a load isn't held, and the nearest thing that would be: two sentences. Source: that of the operating point. */
export function notOperatingWords(asked: NotOperating): string {
  const name = loadNames[asked.load];
  const first = `There is no ${name.replace(/^a /, "")} here: ${problems[asked.why]}.`;
  return `${first} ${nearestWords(asked)}`;
}
