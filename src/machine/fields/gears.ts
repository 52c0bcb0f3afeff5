/**
 * Gears: the fields between motor and main shaft. Tolerances, sensible ranges and defaults are common practice, no
 * source.
 */
import { group, groupOrNull, real, whole } from "../shape.ts";

export const pinionTeeth = whole({
  name: "Pinion",
  symbol: "z_1",
  unit: "teeth",
  low: 8,
  high: 30,
  min: 5,
  max: 80,
  step: 1,
  default: 13,
  read: "Count the teeth of the small gear on the motor's shaft; often stamped on its face.",
  tolerance: {},
});

export const mainTeeth = whole({
  name: "Main gear",
  symbol: "z_2",
  unit: "teeth",
  low: 40,
  high: 200,
  min: 10,
  max: 500,
  step: 1,
  default: 120,
  read: "Count the teeth of the large gear; often moulded into it.",
  tolerance: {},
});

const stageTeeth = { unit: "teeth", min: 5, max: 300, step: 1, tolerance: {} };

export const gears = group("Gears", {
  pinionTeeth,
  mainTeeth,
  moduleMm: real({
    name: "Module",
    symbol: "m",
    unit: "mm",
    sameForAll: true,
    low: 0.3,
    high: 1.5,
    min: 0.1,
    max: 5,
    step: 0.05,
    default: 0.7,
    read: "Printed on the gear's packet; or caliper: outside diameter divided by two more than the number of teeth.",
    tolerance: {},
  }),
  meshEfficiency: real({
    name: "Efficiency of one mesh",
    symbol: "\\eta_g",
    unit: "",
    low: 0.9,
    high: 1,
    min: 0.5,
    max: 1,
    step: 0.005,
    default: 0.965,
    read: "Not printed: about 0.97 for clean straight teeth, less for a tight or dirty mesh.",
    tolerance: { absolute: 0.01 },
  }),
  secondStage: groupOrNull("Second stage", "none: the pinion drives the main gear", {
    driverTeeth: whole({
      ...stageTeeth,
      name: "Driving gear of the second stage",
      symbol: "z_3",
      low: 8,
      high: 60,
      default: 20,
      read: "Count the teeth of the gear or pulley that turns with the first stage's large gear.",
    }),
    drivenTeeth: whole({
      ...stageTeeth,
      name: "Driven gear of the second stage",
      symbol: "z_4",
      low: 8,
      high: 120,
      default: 40,
      read: "Count the teeth of the gear or pulley that turns with the main shaft.",
    }),
  }),
  tailRatio: real({
    name: "Tail ratio",
    symbol: "G_t",
    unit: "",
    low: 2.5,
    high: 7,
    min: 0.5,
    max: 15,
    step: 0.05,
    default: 4.6,
    read: "Turn the main rotor once by hand, with the motor out of mesh, and count the turns of the tail rotor.",
    tolerance: { relative: 0.01 },
  }),
});
