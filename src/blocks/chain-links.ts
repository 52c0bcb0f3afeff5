/**
 * What follows from what in the chain of the machine: for each field, the part that it belongs to and the parts that
 * behave otherwise when it changes while the throttle stays where it is.
 */
import type { en } from "#view/words/en";

export type Part = keyof typeof en.chain.parts;

export const parts: readonly Part[] = ["throttle", "governor", "controller", "motor", "gears", "rotor", "tail", "pack"];

interface Link {
  readonly touched: Part | null;
  readonly follow: readonly Part[];
}

const link = (touched: Part | null, ...follow: Part[]): Link => ({ touched, follow });

/** By the beginning of a field's path; the longest beginning counts. */
const links: Readonly<Record<string, Link>> = {
  name: link(null),
  pack: link("pack", "controller", "rotor"),
  "pack.cells": link("pack", "governor", "controller", "motor", "rotor"),
  "pack.capacityMah": link("pack"),
  motor: link("motor", "controller", "rotor", "pack"),
  "motor.kvRpmPerVolt": link("motor", "governor", "controller", "gears", "rotor", "tail", "pack"),
  "motor.poles": link("motor", "controller"),
  "motor.ratedRpm": link("motor"),
  "motor.rotorInertiaGcm2": link("motor", "governor"),
  controller: link("controller", "motor", "pack"),
  "controller.electricalRpmLimit": link("controller"),
  "controller.loopHz": link("governor", "controller"),
  "controller.proportionalGain": link("governor", "controller"),
  "controller.integralGain": link("governor", "controller"),
  "controller.startRampSeconds": link("governor", "controller"),
  "controller.usableLowPercent": link("governor", "throttle"),
  "controller.usableHighPercent": link("governor", "throttle"),
  "controller.learned": link("governor", "controller", "motor", "gears", "rotor", "tail", "pack"),
  gears: link("gears", "controller", "rotor", "tail", "pack"),
  "gears.moduleMm": link("gears", "motor"),
  "gears.meshEfficiency": link("gears", "motor", "pack"),
  "gears.tailRatio": link("gears", "tail"),
  mainRotor: link("rotor", "controller", "motor", "tail", "pack"),
  "mainRotor.ratedRpm": link("rotor"),
  "mainRotor.bladeMassG": link("rotor", "governor"),
  "mainRotor.bladeCentreMm": link("rotor", "governor"),
  tailRotor: link("tail", "motor", "pack"),
  airframe: link("rotor", "controller", "motor", "tail", "pack"),
  place: link("rotor", "controller", "motor", "tail", "pack"),
  modes: link("throttle", "governor", "controller", "motor", "gears", "rotor", "tail", "pack"),
};
const modeLinks: Readonly<Record<string, Link>> = {
  name: link(null),
  collectiveMinDeg: link("rotor"),
  collectiveMaxDeg: link("rotor", "controller", "motor", "tail", "pack"),
};

function linkOf(path: string): Link {
  const own = modeLinks[/^modes\.\d+\.(\w+)$/.exec(path)?.[1] ?? ""];
  if (own) return own;
  for (let begin = path; begin !== ""; begin = begin.slice(0, Math.max(0, begin.lastIndexOf(".")))) {
    const found = links[begin];
    if (found) return found;
  }
  return link(null);
}

export type Light = "touched" | "follows" | "";

/** How each part of the chain is lit after a change of these fields. */
export function lightsFor(paths: readonly string[]): Readonly<Record<Part, Light>> {
  const lights = Object.fromEntries(parts.map((part) => [part, ""])) as Record<Part, Light>;
  const all = paths.map(linkOf);
  for (const { follow } of all) for (const part of follow) lights[part] = "follows";
  for (const { touched } of all) if (touched) lights[touched] = "touched";
  return lights;
}
