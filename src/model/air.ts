/** Air at a flying field: density, pressure, viscosity, speed of sound, density altitude. SI throughout. */
import { compressibility, dryMolarMass, moistDensity, vapourFraction, vapourMolarMass } from "./moist.ts";
import { relation } from "./relation.ts";

/** ISO 2533 constants: sea level values, lapse rate of the lowest layer, gas constant and ratio of heats of dry air. */
const standard = {
  temperature: 288.15,
  pressure: 101325,
  density: 1.225,
  lapse: 0.0065,
  gravity: 9.80665,
  gasConstant: 287.05287,
  heatRatio: 1.4,
  /** Nominal radius of the earth, m. */
  earthRadius: 6356766,
} as const;

/** g / (R L): the exponent of pressure against temperature in the lowest layer, 5.25588. */
const exponent = standard.gravity / (standard.gasConstant * standard.lapse);

/** State of the air at a place. */
export interface Air {
  /** K */
  readonly temperature: number;
  /** Pa */
  readonly pressure: number;
  /** kg/m3 */
  readonly density: number;
  /** Pa s */
  readonly viscosity: number;
  /** m/s */
  readonly soundSpeed: number;
  /** m: where the standard atmosphere has this density */
  readonly densityAltitude: number;
  /** Mole fraction of water vapour and factor Z of the gas law, for the worked density. */
  readonly vapourFraction: number;
  readonly compressibility: number;
}

/** Where the air is asked for. */
export interface Place {
  /** Height above mean sea level, m; -500 to 5000. */
  readonly elevation: number;
  /** K; the density is good to 0.02 % between 5 and 35 degC, to 0.1 % between -20 and 50 degC. */
  readonly temperature: number;
  /** Relative humidity over water, 0 to 1. */
  readonly humidity: number;
}

/**
 * Geopotential altitude H = r z / (r + z) of a height above sea level, m: 4 m less at 5000 m.
 * Source: ISO 2533:1975, section 2.
 */
export const geopotential = (elevation: number): number =>
  (standard.earthRadius * elevation) / (standard.earthRadius + elevation);

/**
 * Standard pressure at a geopotential altitude: p = p0 (1 - L H / T0)^(g / (R L)), Pa; -500 to 11000 m.
 * The weather moves the true pressure by up to 3 %. Source: ISO 2533:1975.
 */
export const standardPressure = (altitude: number): number =>
  standard.pressure * (1 - (standard.lapse * altitude) / standard.temperature) ** exponent;

/** Standard temperature at a geopotential altitude, T = T0 - L H, in K; -500 to 11000 m. Source: ISO 2533:1975. */
const standardTemperature = (altitude: number): number => standard.temperature - standard.lapse * altitude;

/**
 * Viscosity of dry air, mu = 1.458e-6 T^1.5 / (T + 110.4), Pa s; 100 to 1500 K. Moist air at 30 degC has up to 1 % less,
 * which is left out. Source: Sutherland's law with the constants of ISO 2533:1975.
 */
export const viscosityOfAir = (temperature: number): number =>
  (1.458e-6 * temperature * Math.sqrt(temperature)) / (temperature + 110.4);

/**
 * Speed of sound of an ideal mixture of dry air and vapour, a = sqrt(gamma R T / M), m/s. Within 0.1 % of the measured
 * one below 40 degC (from memory). Source: ISO 2533:1975 for dry air; heat capacities 7/2 R and 4 R for air and vapour.
 *
 * @param temperature K
 * @param vapour mole fraction of water vapour, 1 = all vapour
 */
export function soundSpeedIn(temperature: number, vapour: number): number {
  const heat = 3.5 + 0.5 * vapour;
  const gamma = heat / (heat - 1);
  const lighter = 1 - vapour * (1 - vapourMolarMass / dryMolarMass);
  return Math.sqrt((gamma * standard.gasConstant * temperature) / lighter);
}

/** Density altitude: the altitude at which the standard atmosphere has the density given. */
export const densityAltitude = relation({
  name: "density altitude",
  symbol: "H_\\rho",
  unit: "m",
  terms: { density: { name: "air density", symbol: "\\rho", unit: "kg/m³" } },
  formula: (t) => `\\frac{T_0}{L}\\left[1 - \\left(\\frac{${t.density}}{\\rho_0}\\right)^{1/4.25588}\\right]`,
  of: ({ density }) =>
    (standard.temperature / standard.lapse) * (1 - (density / standard.density) ** (1 / (exponent - 1))),
  assumes: "T₀ = 288.15 K, ρ₀ = 1.225 kg/m³ and L = 6.5 K/km: the lowest layer of the standard atmosphere.",
  range: "densities from 0.36 to 1.29 kg/m³",
  source: "ISO 2533:1975, solved for the altitude",
});

/**
 * The air at a place, with its weather: pressure of the standard atmosphere there, temperature and humidity as given.
 * Range: -500 to 5000 m. Units: SI. Error of the density: 0.02 % from the gas law, up to 3 % from the pressure of
 * the day. Source: ISO 2533:1975 (pressure, viscosity, speed of sound), CIPM-2007 (density).
 */
export function airAt({ elevation, temperature, humidity }: Place): Air {
  const pressure = standardPressure(geopotential(elevation));
  const vapour = vapourFraction(temperature, pressure, humidity);
  const z = compressibility(temperature, pressure, vapour);
  const density = moistDensity({ pressure, temperature, vapourFraction: vapour, compressibility: z });
  return {
    temperature,
    pressure,
    density,
    viscosity: viscosityOfAir(temperature),
    soundSpeed: soundSpeedIn(temperature, vapour),
    densityAltitude: densityAltitude({ density }),
    vapourFraction: vapour,
    compressibility: z,
  };
}

/**
 * The standard atmosphere itself: dry, an ideal gas, at a geopotential altitude of -500 to 11000 m. SI units. No page asks for
 * it: it is what `airAt` departs from by the day's temperature and humidity, and what the printed tables are held against.
 * Source: ISO 2533:1975.
 */
export function standardAir(altitude: number): Air {
  const temperature = standardTemperature(altitude);
  const pressure = standardPressure(altitude);
  return {
    temperature,
    pressure,
    density: pressure / (standard.gasConstant * temperature),
    viscosity: viscosityOfAir(temperature),
    soundSpeed: soundSpeedIn(temperature, 0),
    densityAltitude: altitude,
    vapourFraction: 0,
    compressibility: 1,
  };
}
