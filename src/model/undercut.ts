/** What undercut leaves of the contact of a small pinion. SI throughout. */
import { pressureAngle } from "./gears-mesh.ts";

/**
 * Contact ratio of an undercut standard pinion with any gear: only the flank above its base circle still makes contact,
 * eps = sqrt(ra² - rb²) / (pi m cos(alpha)) with ra = m (z + 2) / 2 and rb = m z cos(alpha) / 2; dimensionless.
 * 1.40 for 12 teeth, 1.12 for 8. Range: z below 2 / sin²(alpha). Error: a rack cutter takes a little more than this at the
 * root. Source: closed form, from the interference point of ISO 21771.
 *
 * @param teeth of the pinion
 * @param angle pressure angle, rad
 */
export function undercutContactRatio(teeth: number, angle: number = pressureAngle): number {
  const base = teeth * Math.cos(angle);
  return Math.sqrt((teeth + 2) ** 2 - base ** 2) / (2 * Math.PI * Math.cos(angle));
}
