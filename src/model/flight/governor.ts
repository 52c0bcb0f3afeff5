/** The governor: proportional and integral, sampled, with a duty that ends at its limits and moves in steps. */

export type AntiWindup = "none" | "clamping" | "back-calculation";

export interface GovernorSettings {
  /** Output for each unit of error. */
  readonly proportionalGain: number;
  /** Output gained in a second for each unit of error, 1/s. */
  readonly integralGain: number;
  readonly antiWindup: AntiWindup;
  /** Back-calculation: error taken off for each unit of output beyond its limit. */
  readonly backGain: number;
  readonly lowest: number;
  readonly highest: number;
  /** Steps between output 0 and 1; 0: no steps. */
  readonly steps: number;
}

export interface Governor {
  /** [0] error in, [1] time since the last correction (s) in, [2] output, [3] integral, [4] output before its limits. */
  readonly port: Float64Array;
  /** One correction: reads the error and the time, writes the output. */
  readonly correct: () => void;
  /** Sets the integral so that the next correction begins from this output; 0: from nothing. */
  readonly preset: (output: number) => void;
}

export const ERROR = 0;
export const INTERVAL = 1;
export const OUTPUT = 2;
export const INTEGRAL = 3;
const WANTED = 4;

/**
 * A sampled PI controller: output u = limit(Kp e + z), then z grows by Ki e dt (e dimensionless, dt in s). Beyond a limit
 * - none: z grows on (it winds up);
 * - clamping: z stays while the error would drive it further out;
 * - back-calculation: z grows by Ki (e - Ka (v - u)) dt with v the output before the limit.
 * Steps round the limited output to the nearest of so many; the rounding is not fed back.
 *
 * Source: G. F. Franklin, J. D. Powell, A. Emami-Naeini, Feedback Control of Dynamic Systems, ch. 9 (integrator
 * anti-windup); clamping: K. J. Astrom and R. M. Murray, Feedback Systems, ch. 11 (from memory).
 */
export function createGovernor(settings: GovernorSettings): Governor {
  const { proportionalGain, integralGain, backGain, lowest, highest, steps } = settings;
  const kind = settings.antiWindup === "none" ? 0 : settings.antiWindup === "clamping" ? 1 : 2;
  const port = new Float64Array(5);
  const correct = (): void => {
    const error = port[ERROR]!;
    const wanted = proportionalGain * error + port[INTEGRAL]!;
    const limited = Math.min(highest, Math.max(lowest, wanted));
    let drive = error;
    if (kind === 1 && (wanted - limited) * error > 0) drive = 0;
    if (kind === 2) drive = error - backGain * (wanted - limited);
    port[INTEGRAL] = port[INTEGRAL]! + integralGain * drive * port[INTERVAL]!;
    port[WANTED] = wanted;
    port[OUTPUT] = steps > 0 ? Math.round(limited * steps) / steps : limited;
  };
  const preset = (output: number): void => {
    port[INTEGRAL] = output;
    port[OUTPUT] = output;
    port[WANTED] = output;
  };
  return { port, correct, preset };
}
