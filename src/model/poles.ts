/** Magnet poles: they change how often the controller must switch and what a display shows, never the rotor's speed. */
import { relation } from "./relation.ts";

/** Electrical speed: one electrical turn for each pair of magnets. */
export const electricalSpeed = relation({
  name: "electrical speed",
  symbol: "n_e",
  unit: "rad/s",
  terms: {
    motorSpeed: { name: "motor speed", symbol: "n_m", unit: "rad/s" },
    poles: { name: "magnet poles", symbol: "p", unit: "" },
  },
  formula: (t) => `${t.motorSpeed} \\times \\frac{${t.poles}}{2}`,
  of: (v) => (v.motorSpeed * v.poles) / 2,
  assumes: "Poles are magnets, counted on the rotor of the motor; their number is even. Any unit of speed will do.",
  source: "f = n p / 120: any text on synchronous machines",
});

/**
 * Electrical frequency of a motor, f = w p / (4 pi), Hz. Source: f = n p / 120, any text on synchronous machines.
 *
 * @param motorSpeed rad/s
 * @param poles magnets, even
 */
export const electricalFrequency = (motorSpeed: number, poles: number): number => (motorSpeed * poles) / (4 * Math.PI);

/** Motor speed that a controller with an electrical limit allows. */
export const motorSpeedLimit = relation({
  name: "highest motor speed",
  symbol: "n_m",
  unit: "rad/s",
  terms: {
    electricalLimit: { name: "highest electrical speed", symbol: "n_e", unit: "rad/s" },
    poles: { name: "magnet poles", symbol: "p", unit: "" },
  },
  formula: (t) => `${t.electricalLimit} \\times \\frac{2}{${t.poles}}`,
  of: (v) => (v.electricalLimit * 2) / v.poles,
  assumes: "The limit is given as an electrical speed. Any unit of speed will do.",
  source: "n = 120 f / p: any text on synchronous machines",
});

/** Speed that a display shows when it was told another number of poles. */
export const shownSpeed = relation({
  name: "speed on the display",
  symbol: "n_d",
  unit: "rad/s",
  terms: {
    speed: { name: "true speed", symbol: "n", unit: "rad/s" },
    poles: { name: "magnet poles", symbol: "p", unit: "" },
    polesSet: { name: "poles that the display was told", symbol: "p_d", unit: "" },
  },
  formula: (t) => `${t.speed} \\times \\frac{${t.poles}}{${t.polesSet}}`,
  of: (v) => (v.speed * v.poles) / v.polesSet,
  assumes: "The display counts electrical turns and divides by the pairs of magnets it was told.",
  source: "f = n p / 120: any text on synchronous machines",
});
