import psychrolib from "psychrolib";
import { describe, expect, it } from "vitest";
import { fromCelsius } from "#model/constants";
import {
  compressibility,
  dryMolarMass,
  moistDensity,
  saturationPressure,
  vapourFraction,
  vapourMolarMass,
} from "#model/moist";

function density(celsius: number, pressure: number, vapour: number): number {
  const temperature = fromCelsius(celsius);
  const z = compressibility(temperature, pressure, vapour);
  return moistDensity({ pressure, temperature, vapourFraction: vapour, compressibility: z });
}

const humid = (celsius: number, pressure: number, humidity: number) =>
  density(celsius, pressure, vapourFraction(fromCelsius(celsius), pressure, humidity));

/** Mole fraction of vapour from a humidity ratio (kg/kg of dry air). */
const fromRatio = (w: number) => w / (vapourMolarMass / dryMolarMass + w);

describe("saturation pressure", () => {
  // ASHRAE Handbook Fundamentals 2017, ch. 1, table 3.
  it.each([
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
  ])("at %i degC", (t, p) => {
    expect(Math.abs(saturationPressure(fromCelsius(t)) / p - 1)).toBeLessThan(3e-4);
  });
});

describe("moist air", () => {
  // OIML R 111-1:2004, equation E.3-1, with its own tolerance of 2e-4: degC, Pa, humidity, kg/m3.
  it.each([
    [20, 101325, 0.5, 1.19929430503, 2e-4],
    [10, 100000, 0.2, 1.22955579145, 2.5e-4],
    [30, 95000, 0.7, 1.07909830581, 2.5e-4],
  ])("at %i degC, %i Pa, %f agrees with the weighing standard", (t, p, h, rho, within) => {
    expect(Math.abs(humid(t, p, h) / rho - 1)).toBeLessThan(within);
  });

  it("from a humidity ratio has the handbook's density and volume", () => {
    // ASHRAE 2017 ch. 1 eq. 26, as computed in the PsychroLib test-suite: 30 degC, W = 0.02, 95461 Pa.
    // That equation is of an ideal gas, so Z is 1 here.
    const [pressure, temperature] = [95461, fromCelsius(30)];
    const rho = moistDensity({ pressure, temperature, vapourFraction: fromRatio(0.02), compressibility: 1 });
    expect(Math.abs(rho / 1.08411986348 - 1)).toBeLessThan(3e-4);
    expect(Math.abs(1.02 / rho / 0.940855374353 - 1)).toBeLessThan(3e-4);
  });

  it("of the handbook's first example: 40 degC, 14 % humid", () => {
    // ASHRAE 2017 ch. 1, example 1: W = 0.0065 kg/kg, v = 0.896 m3/kg.
    const x = vapourFraction(fromCelsius(40), 101325, 0.14);
    const w = ((vapourMolarMass / dryMolarMass) * x) / (1 - x);
    expect(Math.abs(w - 0.0065)).toBeLessThan(1e-4);
    expect(Math.abs((1 + w) / density(40, 101325, x) / 0.896 - 1)).toBeLessThan(0.01);
  });

  // Density of Moist Air (classical handbook table, CRC form): dew point 10 degC, 760 mmHg, g/l.
  it.each([
    [0, 1.287],
    [10, 1.241],
    [20, 1.199],
    [40, 1.122],
  ])("at %i degC with a dew point of 10 degC", (t, rho) => {
    const vapour = saturationPressure(fromCelsius(10)) / 101325;
    expect(Math.abs(density(t, 101325, vapour) - rho)).toBeLessThan(1.1e-3);
  });

  it.each([
    [20, 0.5, 101325, 1e-3],
    [35, 0.8, 95000, 1.5e-3],
    [0, 0.3, 84556, 1e-3],
  ])(
    "at %i degC, %f, %i Pa agrees with a psychrometric library, which leaves out Z and enhancement",
    (t, h, p, within) => {
      psychrolib.SetUnitSystem(psychrolib.SI);
      const library = psychrolib.GetMoistAirDensity(t, psychrolib.GetHumRatioFromRelHum(t, h, p), p);
      expect(Math.abs(humid(t, p, h) / library - 1)).toBeLessThan(within);
      // Real air is the denser of the two.
      expect(humid(t, p, h)).toBeGreaterThan(library);
    },
  );

  it("departs from an ideal gas by less than a thousandth", () => {
    const z = compressibility(fromCelsius(20), 101325, 0.0117);
    // CIPM-2007: Z is 0.9996 at 20 degC, 101325 Pa, 50 % (from memory).
    expect(z).toBeCloseTo(0.9996, 4);
  });
});
