/** How far off the rotor model may be, by how much the air sticks to the blades: their Reynolds number at the tip. */

/**
 * What we expect: tip Reynolds number, and the standard uncertainty as a share of the true value. Estimates, written down
 * before any test at so small a number.
 */
const expected = [
  [1e4, 0.3],
  [3e4, 0.15],
  [1e5, 0.06],
] as const;

/**
 * Error to expect of thrust at a pitch, or torque at a thrust, by tip Reynolds number: 6 % from 1e5 up, 15 % at 3e4, 30 % at
 * 1e4, straight between them in the logarithms of both, and on below. It is a standard uncertainty, the root of the mean
 * square of such errors, and no limit: of twenty rotors six or seven are farther off, and one by more than twice of it.
 * Where rotors were tested, at 2.7e5 and more, their torques at a thrust are off by 4.3 % in that sense; blades as wide as a
 * sixth of the radius get more thrust than this lets expect. Below 1e5 it is an estimate: no test so small is at hand.
 *
 * @param reynolds tip Reynolds number, above 0
 * @returns a share of the true value. Source: our own judgement of the section data.
 */
export function expectedError(reynolds: number): number {
  const [first, second, last] = expected;
  if (reynolds >= last[0]) return last[1];
  const [a, b] = reynolds < second[0] ? [first, second] : [second, last];
  const way = Math.log(reynolds / a[0]) / Math.log(b[0] / a[0]);
  return a[1] * (b[1] / a[1]) ** way;
}
