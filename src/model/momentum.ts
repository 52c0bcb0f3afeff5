/** Momentum theory of a rotor: the flow that a thrust drives through the disc, and the power it takes at least. SI. */
import { relation } from "./relation.ts";

/** Quartic of the vortex-ring range at its lower end, climb = -2 vh, where the windmill branch has 1. */
const quartic = (x: number): number => 1 + x * (-1.125 + x * (-1.372 + x * (-1.718 - 0.655 * x)));
const gap = quartic(-2) - 1;

/** Induced over hover velocity in the vortex-ring range, -2 < x < 0, made to meet the windmill branch at -2. */
function ringFlow(x: number): number {
  if (x > -1.5) return quartic(x);
  const u = (-1.5 - x) * 2;
  return quartic(x) - gap * u * u * (3 - 2 * u);
}

/**
 * Induced velocity in the disc of a rotor that moves along its axis, m/s; it has the sign of the thrust.
 * With vh = sqrt(T / 2 rho A): climb -V/2 + sqrt(V²/4 + vh²); fast descent -V/2 - sqrt(V²/4 - vh²) below -2 vh; between
 * them, where there is no steady flow, a quartic through measured points (good to 15 %).
 * Any thrust, zero and negative included. Source: J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2 (quartic from memory).
 *
 * @param thrust N
 * @param climb m/s, up is positive
 * @param density kg/m3
 * @param area of the disc, m2
 */
export function inducedVelocity(thrust: number, climb: number, density: number, area: number): number {
  if (thrust < 0) return -inducedVelocity(-thrust, -climb, density, area);
  const square = thrust / (2 * density * area);
  if (square === 0) return 0;
  // Written so that no two large numbers are subtracted when the rotor climbs fast.
  if (climb >= 0) return square / (climb / 2 + Math.sqrt((climb * climb) / 4 + square));
  const hover = Math.sqrt(square);
  if (climb <= -2 * hover) return square / (-climb / 2 + Math.sqrt((climb * climb) / 4 - square));
  return hover * ringFlow(climb / hover);
}

const thrustTerm = { name: "thrust", symbol: "T", unit: "N" };

/** Least power that any rotor of this size needs to hover. */
export const idealHoverPower = relation({
  name: "ideal hover power",
  symbol: "P_i",
  unit: "W",
  terms: {
    thrust: thrustTerm,
    density: { name: "air density", symbol: "\\rho", unit: "kg/m³" },
    area: { name: "area of the disc", symbol: "A", unit: "m²" },
  },
  formula: (t) => `${t.thrust}\\,\\sqrt{\\frac{${t.thrust}}{2 \\times ${t.density} \\times ${t.area}}}`,
  of: (v) => v.thrust * Math.sqrt(v.thrust / (2 * v.density * v.area)),
  assumes: "A disc that pushes the air down evenly, without drag or swirl. Real rotors need 1.3 to 2 times as much.",
  source: "momentum theory: J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2",
});

/** Area of the disc swept. */
export const discArea = relation({
  name: "area of the disc",
  symbol: "A",
  unit: "m²",
  terms: { radius: { name: "radius of the rotor", symbol: "R", unit: "m" } },
  formula: (t) => `\\pi \\times ${t.radius}^2`,
  of: ({ radius }) => Math.PI * radius * radius,
  assumes: "The whole circle, the hub included.",
  source: "definition",
});

/** Ideal over real power in hover. */
export const figureOfMerit = relation({
  name: "figure of merit",
  symbol: "M",
  unit: "",
  terms: {
    idealPower: { name: "ideal hover power", symbol: "P_i", unit: "W" },
    power: { name: "power of the rotor", symbol: "P", unit: "W" },
  },
  formula: (t) => `\\frac{${t.idealPower}}{${t.power}}`,
  of: (v) => v.idealPower / v.power,
  assumes: "Hovering.",
  source: "definition: J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2",
});
