/** What grows with the square and the cube of a speed, and how a change is written. Any units, as long as they are alike. */
import { relation } from "./relation.ts";

const before = { name: "value before", symbol: "y_1", unit: "" };
const from = { name: "speed or current before", symbol: "x_1", unit: "" };
const to = { name: "speed or current after", symbol: "x_2", unit: "" };

/** What a value becomes that grows with the square: pull and stored energy with speed, heat with current. */
export const squareLaw = relation({
  name: "value after",
  symbol: "y_2",
  unit: "",
  terms: { before, from, to },
  formula: (t) => `${t.before} \\times \\left(\\frac{${t.to}}{${t.from}}\\right)^2`,
  of: (v) => v.before * (v.to / v.from) ** 2,
  assumes: "Nothing else changes.",
  source: "F = m r ω², E = J ω²/2, P = I² R: OpenStax College Physics, sections 6.3, 10.4 and 20.4",
});

/** What a value becomes that grows with the cube: the power of the blades' own drag with speed. */
export const cubeLaw = relation({
  name: "value after",
  symbol: "y_2",
  unit: "",
  terms: { before, from, to },
  formula: (t) => `${t.before} \\times \\left(\\frac{${t.to}}{${t.from}}\\right)^3`,
  of: (v) => v.before * (v.to / v.from) ** 3,
  assumes: "The same blades in the same air, with a drag that doesn't depend on speed.",
  source: "profile power: J. G. Leishman, Principles of Helicopter Aerodynamics, ch. 2",
});

/** A change as a share of what was before. */
export const relativeChange = relation({
  name: "change",
  symbol: "\\delta",
  unit: "",
  terms: { before, after: { name: "value after", symbol: "y_2", unit: "" } },
  formula: (t) => `\\frac{${t.after}}{${t.before}} - 1`,
  of: (v) => v.after / v.before - 1,
  assumes: "The value before isn't zero.",
  source: "definition",
});

/** Two doubts that know nothing of each other, as shares of a product or quotient. */
export const combinedDoubt = relation({
  name: "doubt of the result",
  symbol: "u",
  unit: "",
  terms: {
    first: { name: "one doubt", symbol: "u_1", unit: "" },
    second: { name: "the other doubt", symbol: "u_2", unit: "" },
  },
  formula: (t) => `\\sqrt{${t.first}^2 + ${t.second}^2}`,
  of: (v) => Math.hypot(v.first, v.second),
  assumes: "The result is a product or quotient of the two, and neither error brings the other with it.",
  source: "Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, section 5.1.6",
});
