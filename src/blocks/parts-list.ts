/** Which inputs stand in which section of the parts panel, and the few words that a folded section shows of itself. */

import { withUnit } from "#inputs/typed";
import { type Field, fieldAt, fields } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { en } from "#view/words/en";

export type Section = keyof typeof en.panel.sections;

/** In the order of the machine's chain, from pack to place. */
export const sections: readonly Section[] = [
  "pack",
  "motor",
  "controller",
  "learned",
  "gears",
  "mainRotor",
  "tailRotor",
  "airframe",
  "place",
  "modes",
];

/** The inputs that are always within reach. */
export const mainFive: readonly string[] = [
  "motor.poles",
  "gears.pinionTeeth",
  "gears.mainTeeth",
  "pack.cells",
  "pack.voltage",
  "pack.chargePercent",
  "motor.kvRpmPerVolt",
];

/** The fields of a section that are plain inputs, in the order of the machine file. */
export function fieldsOf(section: Section): readonly Field[] {
  const elsewhere = /^controller\.learned\.|^gears\.secondStage\./;
  return fields.filter(({ part, path }) => part === section && !elsewhere.test(path) && !mainFive.includes(path));
}

const at = (path: string, value: number): string => withUnit(value, fieldAt(path));

/** What a folded section shows of itself; the machine's parts are never changed in place, so it depends on one of them. */
export const gists: Readonly<Record<Section, (machine: Machine) => string>> = {
  pack: ({ pack }) => {
    const chemistry = fieldAt("pack.chemistry").choices?.find(({ value }) => value === pack.chemistry)?.name ?? "";
    return `${chemistry}, ${at("pack.capacityMah", pack.capacityMah)}`;
  },
  motor: ({ motor }) => at("motor.resistanceMilliohm", motor.resistanceMilliohm),
  controller: ({ controller: c }) => en.gist.band(String(c.usableLowPercent), String(c.usableHighPercent)),
  learned: ({ controller: { learned } }) => {
    if (learned.motorRpm !== null) return at("controller.learned.motorRpm", learned.motorRpm);
    return learned.fittedWith ? en.gist.expected : en.gist.notYet;
  },
  gears: ({ gears }) => `${en.gist.module} ${at("gears.moduleMm", gears.moduleMm)}`,
  mainRotor: ({ mainRotor: r }) => `${en.learned.bladeCount(r.blades)}, ${at("mainRotor.diameterMm", r.diameterMm)}`,
  tailRotor: ({ tailRotor: r }) => `${en.learned.bladeCount(r.blades)}, ${at("tailRotor.diameterMm", r.diameterMm)}`,
  airframe: ({ airframe }) => at("airframe.massG", airframe.massG),
  place: ({ place }) => `${at("place.elevationM", place.elevationM)}, ${at("place.temperatureC", place.temperatureC)}`,
  modes: ({ modes }) =>
    `${modes.map(({ headRpm }) => withUnit(headRpm, { ...fieldAt("modes.0.headRpm"), unit: "" })).join(", ")} rpm`,
};
