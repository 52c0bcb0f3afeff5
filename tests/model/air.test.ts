import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  airAt,
  densityAltitude,
  geopotential,
  soundSpeedIn,
  standardAir,
  standardPressure,
  viscosityOfAir,
} from "#model/air";
import { fromCelsius } from "#model/constants";

describe("the standard atmosphere", () => {
  // ISO 2533:1975, tables 5 and 6: H in m, T in K, p in Pa, rho in kg/m3, a in m/s, mu and nu.
  it.each([
    [-500, 291.4, 107478, 1.28489, 342.208, 1.805e-5, 1.4048e-5],
    [0, 288.15, 101325, 1.225, 340.294, 1.7894e-5, 1.4607e-5],
    [500, 284.9, 95460.8, 1.16727, 338.369, 1.7737e-5, 1.5195e-5],
    [1000, 281.65, 89874.6, 1.11164, 336.434, 1.7578e-5, 1.5813e-5],
    [2000, 275.15, 79495.2, 1.00649, 332.529, 1.726e-5, 1.7148e-5],
    [3000, 268.65, 70108.5, 0.909122, 328.578, 1.6937e-5, 1.863e-5],
    [4000, 262.15, 61640.2, 0.819129, 324.579, 1.6611e-5, 2.0279e-5],
    [5000, 255.65, 54019.9, 0.736116, 320.529, 1.6281e-5, 2.2118e-5],
  ])("at %i m geopotential", (h, t, p, rho, a, mu, nu) => {
    const air = standardAir(h);
    expect(Math.abs(air.temperature - t)).toBeLessThan(5e-4);
    expect(Math.abs(air.pressure - p)).toBeLessThan(0.6);
    expect(Math.abs(air.density - rho)).toBeLessThan(6e-6);
    expect(Math.abs(air.soundSpeed - a)).toBeLessThan(6e-4);
    expect(Math.abs(air.viscosity - mu)).toBeLessThan(6e-10);
    expect(Math.abs(air.viscosity / air.density - nu)).toBeLessThan(6e-10);
    expect(air.densityAltitude).toBe(h);
  });

  // ASHRAE Handbook Fundamentals 2017, ch. 1, table 1.
  it.each([
    [500, 95461, 1],
    [1000, 89875, 1],
    [4000, 61640, 5],
  ])("has the handbook's pressure at %i m", (h, p, within) => {
    expect(Math.abs(standardPressure(h) - p)).toBeLessThan(within);
  });

  // ISO 2533:1975, rows by geometric altitude: pressure in Pa.
  it.each([
    [1000, 89876.3],
    [3000, 70121.1],
    [5000, 54048.3],
  ])("is entered by height above sea level: %i m", (z, p) => {
    expect(Math.abs(standardPressure(geopotential(z)) - p)).toBeLessThan(0.6);
    expect(airAt({ elevation: z, temperature: 280, humidity: 0 }).pressure).toBe(standardPressure(geopotential(z)));
  });
});

describe("air at a place", () => {
  it("on a dry standard day at sea level has the standard density within the gas law's own 0.05 %", () => {
    // Ideal gas, R = 287.05: 1.2250 kg/m3; CIPM-2007 is 0.04 % above, because real air is a little denser.
    const { density } = airAt({ elevation: 0, temperature: fromCelsius(15), humidity: 0 });
    expect(density / 1.225).toBeGreaterThan(1.0002);
    expect(density / 1.225).toBeLessThan(1.0006);
  });

  it("with humidity follows the simplified equation of OIML R 111-1 (E.3-1)", () => {
    // (20 degC, 101325 Pa, 50 %): 1.19929 kg/m3, within 2e-4.
    const { density } = airAt({ elevation: 0, temperature: fromCelsius(20), humidity: 0.5 });
    expect(Math.abs(density / 1.19929430503 - 1)).toBeLessThan(2e-4);
  });

  it("has the viscosity of Incropera and DeWitt's table A.4 at 300 K (from memory)", () => {
    expect(Math.abs(viscosityOfAir(300) / 184.6e-7 - 1)).toBeLessThan(1e-3);
    const air = airAt({ elevation: 0, temperature: 300, humidity: 0.4 });
    expect(air.viscosity).toBe(viscosityOfAir(300));
  });

  it("carries sound faster when it is moist", () => {
    // Cramer, J. Acoust. Soc. Am. 93 (1993) 2510: 20 degC dry 343.37 m/s, saturated 344.4 to 344.6 (from memory).
    expect(soundSpeedIn(fromCelsius(20), 0)).toBeCloseTo(343.2, 1);
    const moist = airAt({ elevation: 0, temperature: fromCelsius(20), humidity: 1 });
    expect(moist.soundSpeed - 343.2).toBeGreaterThan(1.15);
    expect(moist.soundSpeed - 343.2).toBeLessThan(1.4);
  });

  it("gets thinner with height, heat and humidity", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(-500, 4900), number(255, 318), number(0, 0.9), (elevation, temperature, humidity) => {
        const here = airAt({ elevation, temperature, humidity });
        expect(airAt({ elevation: elevation + 50, temperature, humidity }).density).toBeLessThan(here.density);
        expect(airAt({ elevation, temperature: temperature + 2, humidity }).density).toBeLessThan(here.density);
        expect(airAt({ elevation, temperature, humidity: humidity + 0.1 }).density).toBeLessThan(here.density);
        expect(here.densityAltitude).toBe(densityAltitude({ density: here.density }));
      }),
    );
  });
});

describe("density altitude", () => {
  it("inverts the standard atmosphere", () => {
    // ISO 2533:1975, rows of 1000 and 3000 m.
    expect(Math.abs(densityAltitude({ density: 1.11164 }) - 1000)).toBeLessThan(0.3);
    expect(Math.abs(densityAltitude({ density: 0.909122 }) - 3000)).toBeLessThan(0.3);
  });

  it("of a hot day agrees with the rule of 120 ft per degree", () => {
    // FAA-H-8083-25 (from memory): 15 degC above standard at sea level is 548.64 m, within 6 %.
    const hot = airAt({ elevation: 0, temperature: fromCelsius(30), humidity: 0 });
    expect(Math.abs(hot.densityAltitude / 548.64 - 1)).toBeLessThan(0.06);
  });
});
