import { expect, it } from "vitest";
import { fromCelsius, gravity, milliampereHour, molarGas, rpm, zeroCelsius } from "#model/constants";

it("are those of the standards", () => {
  expect(gravity).toBe(9.80665); // ISO 80000-3
  expect(zeroCelsius).toBe(273.15); // ISO 80000-5
  expect(molarGas).toBe(8.314472); // CODATA 2006, as CIPM-2007 has it
  expect(fromCelsius(15)).toBeCloseTo(288.15, 10); // ISO 2533
});

it("turn trade units into SI", () => {
  // OpenStax College Physics, example 10.9: 300 rpm is 31.4 rad/s.
  expect(300 * rpm).toBeCloseTo(31.4, 1);
  expect(5000 * milliampereHour).toBe(18000); // 5 A for an hour, by definition
});
