/** Times and steps of a governor's loop: how finely it doses, how often it looks, how long it takes to wind up. SI. */
import { electricalFrequency } from "./poles.ts";
import { relation } from "./relation.ts";

/** Head speed that one step of the duty is worth. */
export const dutyStepSpeed = relation({
  name: "head speed of one duty step",
  symbol: "\\Delta n",
  unit: "rad/s",
  terms: {
    fullSpeed: { name: "no-load head speed at full duty", symbol: "n_0", unit: "rad/s" },
    steps: { name: "steps from no duty to full", symbol: "N", unit: "" },
  },
  formula: (t) => `\\frac{${t.fullSpeed}}{${t.steps}}`,
  of: (v) => v.fullSpeed / v.steps,
  assumes: "Without load, where speed goes with duty. Any unit of speed will do.",
  source: "definition",
});

/** Time of one electrical turn: how old the controller's latest whole reading of the speed is. */
export const commutationPeriod = relation({
  name: "time of one electrical turn",
  symbol: "T",
  unit: "s",
  terms: {
    motorSpeed: { name: "motor speed", symbol: "\\omega", unit: "rad/s" },
    poles: { name: "magnet poles", symbol: "p", unit: "" },
  },
  formula: (t) => `\\frac{4\\pi}{${t.motorSpeed} \\times ${t.poles}}`,
  of: (v) => 1 / electricalFrequency(v.motorSpeed, v.poles),
  assumes: "A steady speed. Poles are magnets, two for each electrical turn.",
  source: "f = n p / 120: any text on synchronous machines",
});

/** Time in which the integral part alone brings the duty from one value to another. */
export const integralTime = relation({
  name: "time of the integral part",
  symbol: "t",
  unit: "s",
  terms: {
    dutyChange: { name: "change of duty", symbol: "\\Delta D", unit: "" },
    integralGain: { name: "integral gain", symbol: "K_i", unit: "1/s" },
    error: { name: "speed error as a share of the reference", symbol: "e", unit: "" },
  },
  formula: (t) => `\\frac{${t.dutyChange}}{${t.integralGain} \\times ${t.error}}`,
  of: (v) => v.dutyChange / (v.integralGain * v.error),
  assumes: "The error stays the same all the while, and the proportional part is left out.",
  source: "integral of a constant; K. J. Åström and R. M. Murray, Feedback Systems, ch. 11",
});

/** How far the speed stays low when the proportional part alone has to bring more duty. */
export const proportionalDroop = relation({
  name: "droop with the proportional part alone",
  symbol: "\\Delta \\omega",
  unit: "rad/s",
  terms: {
    dutyChange: { name: "change of duty", symbol: "\\Delta D", unit: "" },
    proportionalGain: { name: "proportional gain", symbol: "K_p", unit: "" },
    reference: { name: "speed that counts as 100 %", symbol: "\\omega_{ref}", unit: "rad/s" },
  },
  formula: (t) => `\\frac{${t.dutyChange}}{${t.proportionalGain}} \\times ${t.reference}`,
  of: (v) => (v.dutyChange / v.proportionalGain) * v.reference,
  assumes: "A steady load, a duty below its limit, no integral part. Any unit of speed will do.",
  source: "steady-state error of proportional control; K. J. Åström and R. M. Murray, Feedback Systems, ch. 11",
});

/** Smallest step that a reading by commutation time can make, as a share of the speed. */
export const readingStep = relation({
  name: "smallest step of the reading",
  symbol: "\\delta",
  unit: "",
  terms: {
    clockStep: { name: "step of the clock", symbol: "\\tau", unit: "s" },
    period: { name: "time of one electrical turn", symbol: "T", unit: "s" },
  },
  formula: (t) => `\\frac{${t.clockStep}}{${t.period}}`,
  of: (v) => v.clockStep / v.period,
  assumes: "One electrical turn is counted in whole steps of the clock.",
  source: "definition of a period counter",
});

/** How often the governor corrects in one turn of the rotor. */
export const correctionsPerTurn = relation({
  name: "corrections in one turn of the rotor",
  symbol: "N",
  unit: "",
  terms: {
    loopRate: { name: "corrections in a second", symbol: "f", unit: "Hz" },
    headSpeed: { name: "head speed", symbol: "\\omega", unit: "rad/s" },
  },
  formula: (t) => `\\frac{2\\pi \\times ${t.loopRate}}{${t.headSpeed}}`,
  of: (v) => (2 * Math.PI * v.loopRate) / v.headSpeed,
  assumes: "Both steady.",
  source: "definition",
});
