/** What a turning rotor can pay from its own spin, and what it takes up. SI. */
import { relation } from "./relation.ts";

const stored = { name: "energy stored at the first speed", symbol: "E", unit: "J" };
const from = { name: "head speed before", symbol: "n_1", unit: "rad/s" };

/** Energy that a rotor gives while it slows down. */
export const spinGiven = relation({
  name: "energy given by slowing",
  symbol: "\\Delta E",
  unit: "J",
  terms: { stored, from, to: { name: "head speed after", symbol: "n_2", unit: "rad/s" } },
  formula: (t) => `${t.stored} \\times \\left(1 - \\left(\\frac{${t.to}}{${t.from}}\\right)^2\\right)`,
  of: (v) => v.stored * (1 - (v.to / v.from) ** 2),
  assumes: "Energy goes with the square of the speed. Any unit of speed will do.",
  source: "E = J ω²/2: OpenStax College Physics, section 10.4",
});

/** How long an energy covers a missing power. */
export const spinTime = relation({
  name: "time that the spin pays for",
  symbol: "t",
  unit: "s",
  terms: {
    energy: { name: "energy at hand", symbol: "\\Delta E", unit: "J" },
    power: { name: "missing power", symbol: "P", unit: "W" },
  },
  formula: (t) => `\\frac{${t.energy}}{${t.power}}`,
  of: (v) => v.energy / v.power,
  assumes: "The power stays the same all the while.",
  source: "P = E / t: OpenStax College Physics, section 7.7",
});

/** Head speed after a surplus of power has gone into the rotor. */
export const speedAfterSurplus = relation({
  name: "head speed after the surplus",
  symbol: "n_2",
  unit: "rad/s",
  terms: {
    from,
    stored,
    power: { name: "surplus of power", symbol: "P", unit: "W" },
    time: { name: "how long it lasts", symbol: "t", unit: "s" },
  },
  formula: (t) => `${t.from} \\times \\sqrt{1 + \\frac{${t.power} \\times ${t.time}}{${t.stored}}}`,
  of: (v) => v.from * Math.sqrt(1 + (v.power * v.time) / v.stored),
  assumes: "All of the surplus goes into the spin. Any unit of speed will do.",
  source: "work-energy theorem for rotation: OpenStax College Physics, section 10.4",
});
