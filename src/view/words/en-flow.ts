/** The words of the picture of where the power goes. */
export const enFlow = {
  title: "Where the power goes",
  load: "Looked at",
  /** What each load is called as an option. */
  loads: {
    hover: "hover",
    "full-pitch": "full pitch, no climb yet",
    climb: "steady climb",
    forward: "fast forward",
    flat: "flat pitch, on the ground",
  },
  source: "out of the cells",
  shaft: "main shaft",
  groups: { heat: "stays on board as heat", air: "goes into the air", gain: "is raised" },
  parts: {
    pack: "cells",
    lead: "leads and plugs",
    controller: "controller",
    copper: "motor's winding",
    noLoad: "iron and bearings",
    gears: "gears",
    profile: "blades' own drag",
    induced: "pushing air down",
    tail: "tail rotor",
    airframe: "airframe's drag",
    raising: "the weight itself",
  },
  nothing: "–",
  impossible: "can't be had",
  /** First sentences: the figure that surprises most. */
  first: {
    flat: (power: string, share: string) =>
      `Flat on the ground it takes ${power} and lifts nothing: ${share} of a hover.`,
    flatAlone: (power: string) => `Flat on the ground it takes ${power} and lifts nothing.`,
    hover: (share: string) => `Of every 100 watts out of the cells, ${share} carry the machine.`,
    fullPitch: (times: string, thrust: string) =>
      `Full pitch takes ${times} times the power of a hover for ${thrust} times its thrust.`,
    fullPitchAlone: (power: string) => `Full pitch takes ${power} before the machine begins to climb.`,
    climb: (share: string, rate: string) =>
      `Of every 100 watts out of the cells, ${share} raise the machine, at ${rate}.`,
    less: (climb: string, full: string) =>
      `Once it climbs it takes ${climb}; before that, the same pitch took ${full}.`,
    forward: (speed: string, airframe: string, induced: string) =>
      `At ${speed}, ${airframe} of every 100 watts fight the airframe's drag, and only ${induced} push air down.`,
  },
  board: (heat: string, share: string, most: string, mostHeat: string) =>
    `${heat} (${share}) never reach the main shaft; most of that stays in the ${most}: ${mostHeat}.`,
  most: {
    pack: "cells",
    lead: "leads and plugs",
    controller: "controller",
    copper: "motor's winding",
    noLoad: "motor's iron and bearings",
    gears: "gears",
  },
  draws: (power: string, pack: string, motor: string, duty: string) =>
    `The pack gives ${power} at ${pack}, the motor takes ${motor}, duty is ${duty}.`,
  lasts: (minutes: string) => `Held like this it would last ${minutes}.`,
  tail: "The tail can't hold the machine straight there: it is counted as stalled.",
  whatIf: (power: string) => `The what-if takes ${power}.`,
  whatIfNone: "The what-if can't do it.",
  table: {
    summary: "The same in numbers",
    columns: ["", "now", "of 100 W", "what if"],
    rows: {
      source: "out of the cells",
      shaft: "at the main shaft",
      packCurrent: "pack current",
      motorCurrent: "motor current",
      packVoltage: "voltage at the plug",
      duty: "duty",
      ceiling: "ceiling in this load",
      lasts: "lasts",
      thrust: "thrust of the main rotor",
      chain: "efficiency, cells to main shaft",
      motor: "efficiency of the motor",
      merit: "figure of merit of the main rotor",
    },
    none: "–",
  },
} as const;
