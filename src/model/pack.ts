/** The pack as a voltage behind a resistance, with a slow part. SI throughout. */
import { molarGas } from "./constants.ts";
import { relation } from "./relation.ts";

/** Temperature at which a cell's resistance is taken to be given: 25 °C, in K. Common practice, no source. */
const packReference = 298.15;

/**
 * Activation energy of a cell's resistance, J/mol: from memory, between the electrolyte's (about 17 kJ/mol) and the
 * electrodes' (about 50). With 12 to 28 kJ/mol a cell at 0 °C has 1.6 to 2.8 times its resistance at 25 °C; this gives 2.1.
 */
const resistanceActivation = 20_000;

/** Slow part of the sag: its resistance as a share of the series resistance, and its time constant in s. */
export const slowSag = {
  /** Chen and Rincon-Mora (2006), R_short / R_s of a polymer cell at 80 % charge. */
  share: 0.627,
  /** The same cell's R_short C_short. It has a slower pair as well, 223 s, which one RC pair leaves out. */
  time: 32.85,
} as const;

/**
 * Factor on a cell's resistance at a temperature: exp(E/R (1/T - 1/T25)), 1 at 25 °C; -10 to 60 °C.
 * Error: see `resistanceActivation`; near 25 °C it matters little. Unit: ratio. Source: Arrhenius form, E from memory.
 *
 * @param temperature K
 */
export const resistanceFactor = (temperature: number): number =>
  Math.exp((resistanceActivation / molarGas) * (1 / temperature - 1 / packReference));

/** Resistance of the whole pack with its leads. */
export const packResistance = relation({
  name: "pack resistance",
  symbol: "R_p",
  unit: "Ω",
  terms: {
    cells: { name: "cells in series", symbol: "N", unit: "" },
    cellResistance: { name: "resistance of a cell at 25 °C", symbol: "R_c", unit: "Ω" },
    temperatureFactor: { name: "factor for the pack's temperature", symbol: "f_T", unit: "" },
    leadResistance: { name: "resistance of leads and plugs", symbol: "R_l", unit: "Ω" },
  },
  formula: (t) => `${t.cells} \\times ${t.cellResistance} \\times ${t.temperatureFactor} + ${t.leadResistance}`,
  of: (v) => v.cells * v.cellResistance * v.temperatureFactor + v.leadResistance,
  assumes: "The quick part of the sag. After half a minute under load a cell sags by about six tenths more.",
  source: "definition; temperature factor from memory",
});

/** Voltage of the whole pack at rest. */
export const openVoltage = relation({
  name: "open voltage of the pack",
  symbol: "V_o",
  unit: "V",
  terms: {
    cells: { name: "cells in series", symbol: "N", unit: "" },
    cellVoltage: { name: "open voltage of a cell at this charge", symbol: "U", unit: "V" },
  },
  formula: (t) => `${t.cells} \\times ${t.cellVoltage}`,
  of: (v) => v.cells * v.cellVoltage,
  assumes: "All cells alike, and rested for some minutes.",
  source: "definition",
});
