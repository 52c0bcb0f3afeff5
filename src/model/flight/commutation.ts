/**
 * How a controller knows its motor's speed: it has no sensor but times the commutation, one electrical turn after the
 * other, with a clock of finite steps. More poles or speed: shorter turns, so a fresher but coarser figure.
 */

export interface SpeedMeter {
  /** [0] time (s) in, [1] motor angle (rad) in, [2] motor speed (rad/s) in, [3] measured speed (rad/s) out. */
  readonly port: Float64Array;
  /** Takes a reading. */
  readonly read: () => void;
  /** Begins with a motor at this time and speed. */
  readonly reset: (time: number, speed: number) => void;
}

export const TIME = 0;
export const ANGLE = 1;
export const SPEED = 2;
export const MEASURED = 3;

/** An electrical turn that takes longer than this counts as standing still, s. Our choice. */
const longest = 0.1;

/**
 * A meter that reads the last whole electrical turn: angle 4 pi / poles over the clock's count of its time.
 * Resolution (relative): clock step x electrical frequency; age: half a turn plus what has passed of the next one; both
 * in s and rad/s. Within a turn the speed is taken to change evenly. Source: definition of a period counter.
 *
 * @param poles magnets of the motor
 * @param clockStep s; 0 for a clock without steps
 */
export function createSpeedMeter(poles: number, clockStep: number): SpeedMeter {
  const turn = (4 * Math.PI) / poles;
  const port = new Float64Array(4);
  // [0] time and [1] speed at the last reading.
  const last = new Float64Array(2);
  const reset = (time: number, speed: number): void => {
    last[0] = time;
    last[1] = speed;
    port[MEASURED] = speed;
  };
  const read = (): void => {
    const time = port[TIME]!;
    const speed = port[SPEED]!;
    const angle = port[ANGLE]!;
    const passed = time - last[0]!;
    const rate = passed > 0 ? (speed - last[1]!) / passed : 0;
    last[0] = time;
    last[1] = speed;
    const over = angle - Math.floor(angle / turn) * turn;
    if (!(speed * longest > turn)) {
      port[MEASURED] = 0;
      return;
    }
    const since = over / speed;
    // Mean speed of the last whole turn; a speed that has just begun to rise can't have been below nothing.
    const mean = speed - rate * (since + turn / (2 * speed));
    if (!(mean * longest > turn)) {
      port[MEASURED] = 0;
      return;
    }
    const period = turn / mean;
    if (clockStep > 0) {
      const end = Math.floor((time - since) / clockStep);
      const start = Math.floor((time - since - period) / clockStep);
      const counted = (end - start) * clockStep;
      port[MEASURED] = counted > 0 ? turn / counted : speed;
    } else port[MEASURED] = mean;
  };
  return { port, read, reset };
}
