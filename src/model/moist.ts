/** Moist air as a gas: vapour pressure, compressibility and density by the CIPM-2007 equation. */
import { molarGas, zeroCelsius } from "./constants.ts";
import { relation } from "./relation.ts";

/** Molar masses of dry air with 400 ppm of carbon dioxide, and of water, kg/mol. CIPM-2007. */
export const dryMolarMass = 28.96546e-3;
export const vapourMolarMass = 18.01528e-3;

/**
 * Saturation vapour pressure over water, p = exp(A T² + B T + C + D / T), Pa; within 0.02 % of the handbook tables from
 * 0 to 50 °C, carried on below freezing (over supercooled water).
 * Source: A. Picard, R. S. Davis, M. Gläser, K. Fujii, Metrologia 45 (2008) 149-155 (CIPM-2007), appendix A1.1.
 */
export const saturationPressure = (temperature: number): number =>
  Math.exp((1.2378847e-5 * temperature - 1.9121316e-2) * temperature + 33.93711047 - 6.3431645e3 / temperature);

/**
 * Mole fraction of water vapour x = h f p_sv / p, 1 = all vapour, with the enhancement factor f of real air.
 *
 * @param temperature K
 * @param pressure Pa
 * @param humidity relative humidity, 0 to 1
 *
 * Source: CIPM-2007, appendix A1.2 (Metrologia 45, 149).
 */
export function vapourFraction(temperature: number, pressure: number, humidity: number): number {
  const t = temperature - zeroCelsius;
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
  return (humidity * enhancement * saturationPressure(temperature)) / pressure;
}

/**
 * Compressibility factor Z of moist air, 1 = ideal gas: 0.9995 to 1 here.
 *
 * @param temperature K
 * @param pressure Pa
 * @param vapour mole fraction of water vapour, 0 to 1
 *
 * Source: CIPM-2007, appendix A1.4 (Metrologia 45, 149).
 */
export function compressibility(temperature: number, pressure: number, vapour: number): number {
  const t = temperature - zeroCelsius;
  const ratio = pressure / temperature;
  const first =
    1.58123e-6 +
    t * (-2.9331e-8 + 1.1043e-10 * t) +
    vapour * (5.707e-6 - 2.051e-8 * t + vapour * (1.9898e-4 - 2.376e-6 * t));
  return 1 - ratio * first + ratio * ratio * (1.83e-11 - 0.765e-8 * vapour * vapour);
}

/** Density of moist air. */
export const moistDensity = relation({
  name: "air density",
  symbol: "\\rho",
  unit: "kg/m³",
  terms: {
    pressure: { name: "pressure", symbol: "p", unit: "Pa" },
    temperature: { name: "temperature", symbol: "T", unit: "K" },
    vapourFraction: { name: "share of water vapour", symbol: "x_v", unit: "" },
    compressibility: { name: "departure from an ideal gas", symbol: "Z", unit: "" },
  },
  formula: (t) =>
    `\\frac{${t.pressure}\\,M_a}{${t.compressibility}\\,R\\,${t.temperature}}\\left[1 - ${t.vapourFraction}\\left(1 - \\frac{M_v}{M_a}\\right)\\right]`,
  of: (v) =>
    ((v.pressure * dryMolarMass) / (v.compressibility * molarGas * v.temperature)) *
    (1 - v.vapourFraction * (1 - vapourMolarMass / dryMolarMass)),
  assumes: "Clean air with 0.04 % carbon dioxide, M_a = 28.965 g/mol and M_v = 18.015 g/mol.",
  range: "0.02 % from 5 to 35 °C; 0.1 % from -20 to 50 °C",
  source: "CIPM-2007: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155",
});
