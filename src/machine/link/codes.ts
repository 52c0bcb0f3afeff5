/**
 * The two letters that stand for each field in a link. Links live for years in chats and on paper: a code is never
 * changed or used again for something else; a new field gets a new one.
 */

/** Code of each field, by its path with `*` for places in a list; and of the groups that may be null, and the modes. */
export const codes: Readonly<Record<string, string>> = {
  name: "NA",
  "pack.cells": "PN",
  "pack.chemistry": "PC",
  "pack.capacityMah": "PQ",
  "pack.cellResistanceMilliohm": "PR",
  "pack.leadResistanceMilliohm": "PL",
  "pack.chargePercent": "PS",
  "pack.temperatureC": "PT",
  "motor.kvRpmPerVolt": "MK",
  "motor.resistanceMilliohm": "MR",
  "motor.noLoadCurrentA": "MI",
  "motor.noLoadVoltageV": "MU",
  "motor.poles": "MP",
  "motor.ratedRpm": "MX",
  "motor.rotorInertiaGcm2": "MJ",
  "motor.windingTemperatureC": "MT",
  "controller.resistanceMilliohm": "CR",
  "controller.electricalRpmLimit": "CX",
  "controller.dutySteps": "CD",
  "controller.loopHz": "CF",
  "controller.proportionalGain": "CP",
  "controller.integralGain": "CI",
  "controller.startRampSeconds": "CS",
  "controller.usableLowPercent": "CL",
  "controller.usableHighPercent": "CH",
  "controller.learned.throttlePercent": "LT",
  "controller.learned.motorRpm": "LN",
  "controller.learned.fittedWith": "LF",
  "controller.learned.fittedWith.cells": "FN",
  "controller.learned.fittedWith.chemistry": "FC",
  "controller.learned.fittedWith.kvRpmPerVolt": "FK",
  "controller.learned.fittedWith.pinionTeeth": "FP",
  "controller.learned.fittedWith.mainTeeth": "FM",
  "controller.learned.fittedWith.bladeCount": "FB",
  "controller.learned.fittedWith.diameterMm": "FD",
  "controller.learned.fittedWith.chordMm": "FW",
  "gears.pinionTeeth": "GP",
  "gears.mainTeeth": "GM",
  "gears.moduleMm": "GL",
  "gears.meshEfficiency": "GE",
  "gears.secondStage": "GS",
  "gears.secondStage.driverTeeth": "GA",
  "gears.secondStage.drivenTeeth": "GB",
  "gears.tailRatio": "GT",
  "mainRotor.blades": "RB",
  "mainRotor.diameterMm": "RD",
  "mainRotor.chordMm": "RC",
  "mainRotor.rootCutoutMm": "RR",
  "mainRotor.bladeMassG": "RM",
  "mainRotor.bladeCentreMm": "RS",
  "mainRotor.ratedRpm": "RX",
  "mainRotor.bladeSection": "RT",
  "tailRotor.blades": "TB",
  "tailRotor.diameterMm": "TD",
  "tailRotor.chordMm": "TC",
  "tailRotor.armMm": "TL",
  "airframe.massG": "AM",
  "airframe.dragAreaM2": "AD",
  "place.elevationM": "HE",
  "place.temperatureC": "HT",
  "place.humidityPercent": "HH",
  modes: "VN",
  "modes.*.name": "VA",
  "modes.*.headRpm": "VH",
  "modes.*.collectiveMinDeg": "VL",
  "modes.*.collectiveMaxDeg": "VU",
};

/** Marks of the link itself: the what-if machine begins, the extras begin, the checksum begins. */
export const marks = { whatIf: "ZW", extras: "ZX", check: "ZC" } as const;

const paths = new Map(Object.entries(codes).map(([path, code]) => [code, path]));

/** The path that a code stands for, or null for one that this workbook doesn't know. */
export const pathOfCode = (code: string): string | null => paths.get(code) ?? null;
