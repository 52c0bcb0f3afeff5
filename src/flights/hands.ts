/** What a governor's gains and its eyes come to on a machine: figures beside the flights. Trade units, named. */
import { figuresOf } from "#figures/figures";
import type { Machine } from "#machine/machine";
import { rpm } from "#model/constants";
import { commutationPeriod, proportionalDroop, readingStep } from "#model/loop";
import { clockStep, type FlightOptions } from "./machine.ts";

export interface GovernorFacts {
  /** How far the head would stay low at full pitch with the proportional part alone, rpm; null where full pitch can't be held, or no part is there. */
  readonly droopRpm: number | null;
  /** Smallest step of the speed that it can see, at the head, rpm; and what one step does to the duty by the proportional part, per cent. */
  readonly seesRpm: number;
  readonly jerkPercent: number;
  /** Age of its latest whole reading, and time between two looks, ms. */
  readonly agesMs: number;
  readonly looksMs: number;
}

/**
 * Figures of a machine's governor at the set speed of a mode, or as the options have it. Range: any machine of the record. Errors:
 * those of the steady figures. Source: the relations in `#model/loop`.
 */
export function governorFacts(machine: Machine, mode: number, options: FlightOptions = {}): GovernorFacts {
  const figures = figuresOf(machine);
  const { controller, motor, modes } = machine;
  const gain = options.proportionalGain ?? controller.proportionalGain;
  const headRpm = options.headRpm ?? modes[mode]?.headRpm ?? 0;
  const hover = figures.number("duty-hover", mode);
  const full = figures.number("duty-full-pitch", mode);
  const reference = figures.number("learned-head-speed");
  const motorSpeed = headRpm * figures.rig.ratio * rpm;
  const period = commutationPeriod({ motorSpeed, poles: options.poles ?? motor.poles });
  const step = readingStep({ clockStep, period });
  const held = hover !== null && full !== null && reference !== null && gain > 0;
  return {
    droopRpm: held ? proportionalDroop({ dutyChange: (full - hover) / 100, proportionalGain: gain, reference }) : null,
    seesRpm: headRpm * step,
    jerkPercent: reference === null || reference <= 0 ? 0 : 100 * gain * ((headRpm * step) / reference),
    agesMs: 500 * period,
    looksMs: 1000 / (options.loopHz ?? controller.loopHz),
  };
}
