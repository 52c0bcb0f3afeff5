/** What a current does on its way: the voltage it costs, the heat it leaves, the charge it takes. SI throughout. */
import { relation } from "./relation.ts";

const current = { name: "current", symbol: "I", unit: "A" };
const resistance = { name: "resistance", symbol: "R", unit: "Ω" };

/** Voltage left at the plug while a current flows. */
export const loadedVoltage = relation({
  name: "voltage under load",
  symbol: "V",
  unit: "V",
  terms: { openVoltage: { name: "open voltage of the pack", symbol: "V_o", unit: "V" }, current, resistance },
  formula: (t) => `${t.openVoltage} - ${t.current} \\times ${t.resistance}`,
  of: (v) => v.openVoltage - v.current * v.resistance,
  assumes: "The quick part of the sag: over half a minute a cell sags further.",
  source: "Ohm's law: OpenStax College Physics, section 21.2",
});

/** Heat that a current leaves in a resistance. */
export const resistiveHeat = relation({
  name: "heat",
  symbol: "P",
  unit: "W",
  terms: { current, resistance },
  formula: (t) => `${t.current}^2 \\times ${t.resistance}`,
  of: (v) => v.current * v.current * v.resistance,
  assumes: "A steady current; a chopped one leaves more.",
  source: "P = I² R: OpenStax College Physics, section 20.4",
});

/** Current that carries a power at a voltage. */
export const currentForPower = relation({
  name: "current",
  symbol: "I",
  unit: "A",
  terms: {
    power: { name: "electrical power", symbol: "P", unit: "W" },
    voltage: { name: "voltage at the plug", symbol: "V", unit: "V" },
  },
  formula: (t) => `\\frac{${t.power}}{${t.voltage}}`,
  of: (v) => v.power / v.voltage,
  assumes: "The voltage is the one under load.",
  source: "P = I V: OpenStax College Physics, section 20.4",
});

/** Share of a full pack that a current takes in a time. */
export const chargeUsed = relation({
  name: "share of the charge used",
  symbol: "\\Delta c",
  unit: "",
  terms: {
    current: { name: "mean pack current", symbol: "I", unit: "A" },
    time: { name: "time", symbol: "t", unit: "s" },
    capacity: { name: "charge of the full pack", symbol: "C", unit: "C" },
  },
  formula: (t) => `\\frac{${t.current} \\times ${t.time}}{${t.capacity}}`,
  of: (v) => (v.current * v.time) / v.capacity,
  assumes: "The pack gives its printed capacity.",
  source: "charge count, by definition",
});

/** Ripple that the capacitor at a chopper's input carries: the pulses drawn from it less the pack's even current. */
export const bufferCurrent = relation({
  name: "current in the controller's capacitor",
  symbol: "I_c",
  unit: "A",
  terms: { current, duty: { name: "duty", symbol: "D", unit: "" } },
  formula: (t) => `${t.current} \\times \\sqrt{${t.duty}\\,(1 - ${t.duty})}`,
  of: (v) => v.current * Math.sqrt(Math.max(0, v.duty * (1 - v.duty))),
  assumes: "An ideal chopper: the motor's current is even within a pulse, the pack's throughout. A root mean square.",
  source: "rms of a pulse less its mean, by definition; as given for step-down converters' input capacitors everywhere",
});
