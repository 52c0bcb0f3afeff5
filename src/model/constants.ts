/** Constants that more than one relation needs, in SI. */

/** Standard acceleration of free fall, m/s2. ISO 80000-3. */
export const gravity = 9.80665;

/** One revolution per minute, rad/s. Multiply to get rad/s, divide to get rpm. By definition. */
export const rpm = (2 * Math.PI) / 60;

/** Zero degrees Celsius, K. ISO 80000-5. */
export const zeroCelsius = 273.15;

/** Molar gas constant, J/(mol K): CODATA 2006, the value that goes with CIPM-2007. */
export const molarGas = 8.314472;

/** One milliampere hour, C. By definition. */
export const milliampereHour = 3.6;

/** A temperature in K from one in °C, by definition. */
export const fromCelsius = (celsius: number): number => celsius + zeroCelsius;
