/**
 * Units of the trade and of two systems of display, all told against SI in one table. The record and the model never
 * change with the display: only what is written and typed does.
 */

/** One unit: `SI = value * factor + offset`, for quantities of one kind. */
interface Unit {
  readonly quantity: string;
  readonly factor: number;
  readonly offset?: number;
  /** What it is shown as in the imperial system, where that differs. */
  readonly imperial?: string;
}

// Exact: the international yard and pound (1959), and standard gravity; NIST SP 811 (2008), appendix B.
const inch = 0.0254;
const foot = 12 * inch;
const pound = 0.45359237;
const poundForce = pound * 9.80665;
const turnPerMinute = Math.PI / 30;

const table = {
  m: { quantity: "length", factor: 1, imperial: "ft" },
  mm: { quantity: "length", factor: 1e-3, imperial: "in" },
  in: { quantity: "length", factor: inch },
  ft: { quantity: "length", factor: foot },
  "m²": { quantity: "area", factor: 1, imperial: "ft²" },
  "ft²": { quantity: "area", factor: foot ** 2 },
  kg: { quantity: "mass", factor: 1, imperial: "lb" },
  g: { quantity: "mass", factor: 1e-3, imperial: "oz" },
  oz: { quantity: "mass", factor: pound / 16 },
  lb: { quantity: "mass", factor: pound },
  "kg/m³": { quantity: "density", factor: 1, imperial: "lb/ft³" },
  "lb/ft³": { quantity: "density", factor: pound / foot ** 3 },
  // What pilots compare a blade's tip with is the speed of a car, an aeroplane or sound: miles an hour, not feet a second.
  "m/s": { quantity: "speed", factor: 1, imperial: "mph" },
  "km/h": { quantity: "speed", factor: 1 / 3.6, imperial: "mph" },
  mph: { quantity: "speed", factor: (5280 * foot) / 3600 },
  N: { quantity: "force", factor: 1, imperial: "lbf" },
  lbf: { quantity: "force", factor: poundForce },
  J: { quantity: "energy", factor: 1, imperial: "ft lbf" },
  "ft lbf": { quantity: "energy", factor: foot * poundForce },
  K: { quantity: "temperature", factor: 1 },
  "°C": { quantity: "temperature", factor: 1, offset: 273.15, imperial: "°F" },
  "°F": { quantity: "temperature", factor: 5 / 9, offset: 459.67 * (5 / 9) },
  "N m": { quantity: "torque", factor: 1, imperial: "lbf ft" },
  "lbf ft": { quantity: "torque", factor: poundForce * foot },
  "rad/s": { quantity: "turning speed", factor: 1 },
  rpm: { quantity: "turning speed", factor: turnPerMinute },
  "rad/(V s)": { quantity: "speed constant", factor: 1 },
  "rpm/V": { quantity: "speed constant", factor: turnPerMinute },
  rad: { quantity: "angle", factor: 1 },
  "°": { quantity: "angle", factor: Math.PI / 180 },
  Ω: { quantity: "resistance", factor: 1 },
  mΩ: { quantity: "resistance", factor: 1e-3 },
  C: { quantity: "charge", factor: 1 },
  mAh: { quantity: "charge", factor: 3.6 },
  "kg m²": { quantity: "inertia", factor: 1, imperial: "lb ft²" },
  "lb ft²": { quantity: "inertia", factor: pound * foot ** 2 },
  "g cm²": { quantity: "inertia", factor: 1e-7 },
  s: { quantity: "time", factor: 1 },
  min: { quantity: "time", factor: 60 },
  "": { quantity: "share", factor: 1 },
  "%": { quantity: "share", factor: 0.01 },
} as const satisfies Record<string, Unit>;

/** A unit that the table knows. */
export type UnitName = keyof typeof table;

/** How lengths, masses, temperatures and the like are shown. */
export type UnitSystem = "metric" | "imperial";

let current: UnitSystem = "metric";

/** The system in which everything is said at present. Programs and the command line leave it as it is: metric. */
export const unitsNow = (): UnitSystem => current;

/** From now on everything is said in this system. */
export function sayIn(system: UnitSystem): void {
  current = system;
}

const units: Readonly<Record<string, Unit>> = table;
const unitOf = (name: string): Unit | null => (Object.hasOwn(units, name) ? (units[name] as Unit) : null);

/** A value in SI from one in a unit of the table (`mm` to m, `rpm` to rad/s, `°C` to K). By definition of the units. */
export function toSi(value: number, unit: UnitName): number {
  const { factor, offset = 0 }: Unit = table[unit];
  return value * factor + offset;
}

/** A value in a unit of the table from one in SI: the inverse of `toSi`. */
export function fromSi(value: number, unit: UnitName): number {
  const { factor, offset = 0 }: Unit = table[unit];
  return (value - offset) / factor;
}

/** A value in another unit of the same quantity; null where the two units measure different things. */
export function convert(value: number, from: UnitName, to: UnitName): number | null {
  if (table[from].quantity !== table[to].quantity) return null;
  return from === to ? value : fromSi(toSi(value, from), to);
}

/** The unit in which a system shows what is held in `unit`; the unit itself where there is no other. */
export function shownUnit(unit: string, system: UnitSystem): string {
  return system === "imperial" ? (unitOf(unit)?.imperial ?? unit) : unit;
}

/** A value that is held in `unit`, as a system shows it. */
export function shownValue(value: number, unit: string, system: UnitSystem): number {
  const other = shownUnit(unit, system);
  return other === unit ? value : fromSi(toSi(value, unit as UnitName), other as UnitName);
}

/** The value to hold in `unit` for one that was typed in a system's own unit: the inverse of `shownValue`. */
export function typedValue(value: number, unit: string, system: UnitSystem): number {
  const other = shownUnit(unit, system);
  return other === unit ? value : fromSi(toSi(value, other as UnitName), unit as UnitName);
}
