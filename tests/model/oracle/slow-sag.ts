/**
 * Voltage across a slow RC pair with a constant current: v = I R + (v0 - I R) exp(-t / tau), V. Exact.
 * Source: G. L. Plett, Battery Management Systems, vol. 1 (2015), section 2.
 *
 * @param start voltage across the pair at the beginning, V
 * @param current pack current, A (0: relaxation)
 * @param resistance resistance of the pair, ohm
 * @param timeConstant R C, s
 * @param time how long, s
 */
export function slowSagAfter(
  start: number,
  current: number,
  resistance: number,
  timeConstant: number,
  time: number,
): number {
  const settled = current * resistance;
  return settled + (start - settled) * Math.exp(-time / timeConstant);
}
