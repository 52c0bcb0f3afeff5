/** Blades as turning masses: tip speed, pull at the bolt, stored energy. SI throughout. */
import { relation } from "./relation.ts";

const speed = { name: "speed of the rotor", symbol: "\\omega", unit: "rad/s" };
const mass = { name: "mass of one blade", symbol: "m", unit: "kg" };

/** Speed of the blade tip. */
export const tipSpeed = relation({
  name: "tip speed",
  symbol: "v_t",
  unit: "m/s",
  terms: { speed, radius: { name: "radius of the rotor", symbol: "R", unit: "m" } },
  formula: (t) => `${t.speed} \\times ${t.radius}`,
  of: (v) => v.speed * v.radius,
  assumes: "Hovering: forward flight adds its own speed on the advancing side.",
  source: "definition",
});

/** Tip speed as a share of the speed of sound. */
export const tipMach = relation({
  name: "tip Mach number",
  symbol: "M_t",
  unit: "",
  terms: {
    tipSpeed: { name: "tip speed", symbol: "v_t", unit: "m/s" },
    soundSpeed: { name: "speed of sound", symbol: "a", unit: "m/s" },
  },
  formula: (t) => `\\frac{${t.tipSpeed}}{${t.soundSpeed}}`,
  of: (v) => v.tipSpeed / v.soundSpeed,
  assumes: "Hovering, at the temperature of the place.",
  source: "definition",
});

/** Pull of one turning blade at its bolt. */
export const bladePull = relation({
  name: "pull at the blade bolt",
  symbol: "F",
  unit: "N",
  terms: { mass, centre: { name: "its centre of mass from the shaft", symbol: "r", unit: "m" }, speed },
  formula: (t) => `${t.mass} \\times ${t.centre} \\times ${t.speed}^2`,
  of: (v) => v.mass * v.centre * v.speed * v.speed,
  assumes: "The pull of the blade itself; grip and bolt add their own.",
  source: "F = m r ω²: OpenStax College Physics, section 6.3",
});

/** Kinetic energy of all blades. */
export const rotorEnergy = relation({
  name: "energy stored in the blades",
  symbol: "E",
  unit: "J",
  terms: {
    blades: { name: "blades", symbol: "N_b", unit: "" },
    inertia: { name: "moment of inertia of one blade", symbol: "J_b", unit: "kg m²" },
    speed,
  },
  formula: (t) => `\\frac{1}{2} \\times ${t.blades} \\times ${t.inertia} \\times ${t.speed}^2`,
  of: (v) => 0.5 * v.blades * v.inertia * v.speed * v.speed,
  assumes: "Blades only: hub, shaft and main gear add a few per cent.",
  source: "E = J ω²/2: OpenStax College Physics, section 10.4",
});

/** One blade, lengths from the axis of the rotor. */
export interface BladeMass {
  /** kg */
  readonly mass: number;
  /** Where the blade begins, m. */
  readonly root: number;
  /** Tip radius, m. */
  readonly tip: number;
  /** Centre of mass, m; left out: a uniform blade. */
  readonly centre?: number;
}

/** Distance of a uniform blade's centre of mass from the axis, (r0 + R) / 2, in m. Source: definition. */
export const uniformCentre = (root: number, tip: number): number => (root + tip) / 2;

/**
 * Moment of inertia of one blade about the shaft: J = m (rc² + s²), kg m².
 *
 * s² is the spread of the mass along the blade of length l. A uniform blade has l²/12. A centre of mass d away from the
 * middle says that the mass per length rises evenly towards one end: s² = l²/12 - d². Beyond d = l/6 that would need
 * negative mass at the other end; then the mass is taken as a wedge at the heavy end, s² = (l/2 - d)² / 2, which joins
 * smoothly at d = l/6. The true s² is unknown; a wrong guess by a third moves J by 3 to 8 %.
 *
 * Null when the centre lies outside the blade, or the blade has no length or mass. Source: definition (parallel axes);
 * a uniform blade gives m (R² + R r0 + r0²) / 3.
 */
export function bladeInertia({ mass, root, tip, centre = uniformCentre(root, tip) }: BladeMass): number | null {
  const length = tip - root;
  const offset = Math.abs(centre - uniformCentre(root, tip));
  if (!(mass > 0 && length > 0 && offset <= length / 2)) return null;
  const spread = offset <= length / 6 ? length ** 2 / 12 - offset ** 2 : (length / 2 - offset) ** 2 / 2;
  return mass * (centre ** 2 + spread);
}
