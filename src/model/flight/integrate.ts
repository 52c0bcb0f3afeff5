/** Runge-Kutta steps of fixed length through equations of motion that live in typed arrays: no garbage. */

export interface Stepper {
  /** Takes the rates at the start of a step; the equations' outputs then are those of the start. */
  readonly begin: (y: Float64Array) => void;
  /** Advances the state by `length[0]` seconds, in place, from where `begin` was called. */
  readonly finish: (y: Float64Array) => void;
  /** [0]: length of the next step, s. */
  readonly length: Float64Array;
  /** [0]: time since the tick began, s; a step moves it through its stages and leaves it at its end. */
  readonly since: Float64Array;
  /** Rates of change of the state at the start of the last step. */
  readonly rates: Float64Array;
}

/**
 * The classical fourth-order Runge-Kutta step: y + h/6 (k1 + 2 k2 + 2 k3 + k4), h in s.
 * Error: fourth order in h; stable while |h lambda| < 2.78. Source: E. Hairer, S. Norsett, G. Wanner, Solving Ordinary
 * Differential Equations I, II.1.
 *
 * @param size length of the state
 * @param acting how many leading quantities act on the rates; the others only add up and need no stages of their own
 * @param derivative writes the rates of a state
 * @param since where the equations look for the time since the tick began, s
 * @param sinceAt place in it
 */
export function createStepper(
  size: number,
  acting: number,
  derivative: (y: Float64Array, dy: Float64Array) => void,
  since: Float64Array = new Float64Array(1),
  sinceAt = 0,
): Stepper {
  const length = new Float64Array(1);
  const rates = new Float64Array(size);
  const second = new Float64Array(size);
  const third = new Float64Array(size);
  const fourth = new Float64Array(size);
  const stage = new Float64Array(size);
  const begin = (y: Float64Array): void => derivative(y, rates);
  const finish = (y: Float64Array): void => {
    const h = length[0]!;
    const half = h / 2;
    const start = since[sinceAt]!;
    for (let i = 0; i < acting; i++) stage[i] = y[i]! + half * rates[i]!;
    since[sinceAt] = start + half;
    derivative(stage, second);
    for (let i = 0; i < acting; i++) stage[i] = y[i]! + half * second[i]!;
    derivative(stage, third);
    for (let i = 0; i < acting; i++) stage[i] = y[i]! + h * third[i]!;
    since[sinceAt] = start + h;
    derivative(stage, fourth);
    const sixth = h / 6;
    for (let i = 0; i < size; i++) y[i] = y[i]! + sixth * (rates[i]! + 2 * (second[i]! + third[i]!) + fourth[i]!);
  };
  return { begin, finish, length, since, rates };
}
