/**
 * How a figure comes about: the relation behind it, the reader's own numbers in it, and the inputs they came from.
 * The notation is the relation's own, so it can't drift from what is computed.
 */
import { fieldAt } from "#machine/fields";
import { bladePull, rotorEnergy, tipMach, tipSpeed } from "#model/blades";
import { gearRatio, tailSpeed, twoStageRatio } from "#model/gears";
import { moistDensity } from "#model/moist";
import { noLoadSpeed } from "#model/motor";
import { openVoltage, packResistance, resistanceFactor } from "#model/pack";
import { electricalSpeed } from "#model/poles";
import { learnedReference, setSpeed, throttleForSpeed, wholeThrottle } from "#model/reference";
import type { QuantityName } from "./catalogue.ts";
import type { Figures } from "./figures.ts";
import { type From, type Worked, worked } from "./notation.ts";
import {
  ceilingWork,
  currentWork,
  durationWork,
  dutyWork,
  headroomWork,
  motorCurrentWork,
  ratio,
  type Work,
} from "./worked-loads.ts";

const head = (figures: Figures, mode: number): From => [
  figures.number("set-head-speed", mode) ?? 0,
  "rpm",
  `modes.${mode}.headRpm`,
];
const turning = (figures: Figures, mode: number): From => [
  figures.rig.parts.modes[mode]?.headSpeed ?? 0,
  "rad/s",
  `modes.${mode}.headRpm`,
];
const reference = (figures: Figures): From => [
  figures.number("learned-motor-speed") ?? 0,
  "rpm",
  "learned-motor-speed",
];
const motor = (figures: Figures, mode: number): From => [
  figures.number("motor-speed", mode) ?? 0,
  "rpm",
  "motor-speed",
];

function teeth(name: QuantityName, figures: Figures): Worked {
  const { pinionTeeth, mainTeeth, secondStage } = figures.machine.gears;
  const pair: { pinionTeeth: From; mainTeeth: From } = {
    pinionTeeth: [pinionTeeth, "", "gears.pinionTeeth"],
    mainTeeth: [mainTeeth, "", "gears.mainTeeth"],
  };
  if (!secondStage) return worked(name, gearRatio, pair);
  return worked(name, twoStageRatio, {
    ...pair,
    driverTeeth: [secondStage.driverTeeth, "", "gears.secondStage.driverTeeth"],
    drivenTeeth: [secondStage.drivenTeeth, "", "gears.secondStage.drivenTeeth"],
  });
}

/** The figures that can be opened, by name. */
const works: Partial<Record<QuantityName, Work>> = {
  "gear-ratio": (figures) => teeth("gear-ratio", figures),
  "pack-open-voltage": ({ rig }) =>
    worked("pack-open-voltage", openVoltage, {
      cells: [rig.parts.pack.cells, "", "pack.cells"],
      cellVoltage: [rig.train.openVoltage / rig.parts.pack.cells, "V", "pack.chargePercent"],
    }),
  "pack-resistance": ({ rig, machine }) =>
    worked("pack-resistance", packResistance, {
      cells: [rig.parts.pack.cells, "", "pack.cells"],
      cellResistance: [machine.pack.cellResistanceMilliohm, "mΩ", "pack.cellResistanceMilliohm"],
      temperatureFactor: [resistanceFactor(rig.parts.pack.temperature), "", "pack.temperatureC"],
      leadResistance: [machine.pack.leadResistanceMilliohm, "mΩ", "pack.leadResistanceMilliohm"],
    }),
  "air-density": ({ rig: { air } }) =>
    worked("air-density", moistDensity, {
      pressure: [air.pressure, "Pa", "place.elevationM"],
      temperature: [air.temperature, "K", "place.temperatureC"],
      vapourFraction: [air.vapourFraction, "", "place.humidityPercent"],
      compressibility: [air.compressibility, ""],
    }),
  "no-load-head-speed": (figures) => {
    const { train } = figures.rig;
    return worked("no-load-head-speed", noLoadSpeed, {
      speedConstant: [figures.machine.motor.kvRpmPerVolt, "rpm/V", "motor.kvRpmPerVolt"],
      openVoltage: [train.openVoltage, "V", "pack-open-voltage"],
      noLoadCurrent: [train.noLoadCurrent, "A", "motor.noLoadCurrentA"],
      resistance: [train.motorResistance + train.controllerResistance + train.packResistance, "ohm"],
      gearRatio: ratio(figures),
    });
  },
  "learned-motor-speed": (figures) => {
    const { throttlePercent, motorRpm } = figures.machine.controller.learned;
    const speed = figures.number("learned-motor-speed");
    if (speed === null) return null;
    return worked("learned-motor-speed", learnedReference, {
      motorSpeed: [motorRpm ?? (speed * throttlePercent) / 100, "rpm", "controller.learned.motorRpm"],
      throttle: [throttlePercent, "percent", "controller.learned.throttlePercent"],
    });
  },
  "learned-head-speed": (figures) => atThrottle("learned-head-speed", figures, [100, "percent"]),
  "usable-low-head-speed": (figures) =>
    atThrottle("usable-low-head-speed", figures, [
      figures.machine.controller.usableLowPercent,
      "percent",
      "controller.usableLowPercent",
    ]),
  "usable-high-head-speed": (figures) =>
    atThrottle("usable-high-head-speed", figures, [
      figures.machine.controller.usableHighPercent,
      "percent",
      "controller.usableHighPercent",
    ]),
  throttle: (figures, mode) => throttleWork("throttle", throttleForSpeed, figures, mode),
  "throttle-entered": (figures, mode) => throttleWork("throttle-entered", wholeThrottle, figures, mode),
  "head-speed-entered": (figures, mode) =>
    atThrottle("head-speed-entered", figures, [
      figures.number("throttle-entered", mode) ?? 0,
      "percent",
      "throttle-entered",
    ]),
  "ceiling-hover": ceilingWork("ceiling-hover", "hover"),
  "ceiling-full-pitch": ceilingWork("ceiling-full-pitch", "full-pitch"),
  "speed-headroom-hover": headroomWork("speed-headroom-hover", "hover"),
  "speed-headroom-full-pitch": headroomWork("speed-headroom-full-pitch", "full-pitch"),
  "duty-hover": dutyWork("duty-hover", "hover"),
  "duty-full-pitch": dutyWork("duty-full-pitch", "full-pitch"),
  "hover-motor-current": motorCurrentWork("hover-motor-current", "hover"),
  "full-pitch-motor-current": motorCurrentWork("full-pitch-motor-current", "full-pitch"),
  "hover-pack-current": currentWork("hover-pack-current", "hover"),
  "full-pitch-pack-current": currentWork("full-pitch-pack-current", "full-pitch"),
  "electrical-speed": (figures, mode) =>
    worked("electrical-speed", electricalSpeed, {
      motorSpeed: motor(figures, mode),
      poles: [figures.machine.motor.poles, "", "motor.poles"],
    }),
  "tail-rotor-speed": (figures, mode) =>
    worked("tail-rotor-speed", tailSpeed, {
      headSpeed: head(figures, mode),
      tailRatio: [figures.machine.gears.tailRatio, "", "gears.tailRatio"],
    }),
  "tip-speed": (figures, mode) =>
    worked("tip-speed", tipSpeed, {
      speed: turning(figures, mode),
      radius: [figures.rig.parts.mainRotor.radius, "m", "mainRotor.diameterMm"],
    }),
  "tip-mach": (figures, mode) =>
    worked("tip-mach", tipMach, {
      tipSpeed: [figures.number("tip-speed", mode) ?? 0, "m/s", "tip-speed"],
      soundSpeed: [figures.rig.air.soundSpeed, "m/s", "place.temperatureC"],
    }),
  "blade-pull": (figures, mode) =>
    worked("blade-pull", bladePull, {
      mass: [figures.rig.parts.mainRotor.bladeMass, "kg", "mainRotor.bladeMassG"],
      centre: [figures.rig.parts.mainRotor.bladeCentre, "m", "mainRotor.bladeCentreMm"],
      speed: turning(figures, mode),
    }),
  "rotor-energy": (figures, mode) =>
    worked("rotor-energy", rotorEnergy, {
      blades: [figures.machine.mainRotor.blades, "", "mainRotor.blades"],
      inertia: [figures.rig.bladeInertia ?? 0, "kg m²", "mainRotor.bladeMassG"],
      speed: turning(figures, mode),
    }),
  "hover-duration": durationWork("hover-duration", "hover"),
  "full-pitch-duration": durationWork("full-pitch-duration", "full-pitch"),
};

function atThrottle(name: QuantityName, figures: Figures, throttle: From): Worked | null {
  if (figures.number("learned-motor-speed") === null) return null;
  return worked(name, setSpeed, { throttle, reference: reference(figures), gearRatio: ratio(figures) });
}

function throttleWork(
  name: QuantityName,
  relation: typeof throttleForSpeed,
  figures: Figures,
  mode: number,
): Worked | null {
  if (figures.number("learned-motor-speed") === null) return null;
  return worked(name, relation, {
    headSpeed: head(figures, mode),
    reference: reference(figures),
    gearRatio: ratio(figures),
  });
}

/** What stands behind a figure; null where no single relation does. Units: each term says its own. Source: the relation's. */
export function workedOf(figures: Figures, name: QuantityName, mode = 0): Worked | null {
  return works[name]?.(figures, mode) ?? null;
}

/** The name of the field behind a term, for its link. Units: none. Source: definition. */
export const fieldName = (path: string): string => fieldAt(path).name;
