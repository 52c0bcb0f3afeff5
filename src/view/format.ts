/**
 * Numbers as they stand on a page: rounded to what they are worth, grouped, with a true minus sign and their unit.
 * One place for all of it, so that a figure reads the same in prose, on a plot, in a table, in speech and in print.
 */
import { shownUnit, shownValue, type UnitSystem } from "#machine/units";
import { unitsNow } from "./units.ts";

const NO_BREAK = "\u00a0";
const MINUS = "\u2212";

/** What stands for a value that does not exist: most often a head speed that nothing can hold. */
export const NO_VALUE = "cannot be held";

/** How a unit of the record or of a quantity is written, and the decimals it deserves when nothing better is known. */
interface Written {
  readonly text: string;
  readonly decimals: number;
  /** Shown value = value x factor: ohms read better as milliohms. */
  readonly factor?: number;
  /** The sign sits close to the figure. */
  readonly close?: boolean;
}

const UNITS: Readonly<Record<string, Written>> = {
  "1": { text: "", decimals: 2 },
  "": { text: "", decimals: 2 },
  percent: { text: "%", decimals: 1 },
  "%": { text: "%", decimals: 1 },
  deg: { text: "°", decimals: 1, close: true },
  "°": { text: "°", decimals: 1, close: true },
  "°C": { text: "°C", decimals: 0 },
  "°F": { text: "°F", decimals: 0 },
  ohm: { text: "mΩ", decimals: 1, factor: 1000 },
  Ω: { text: "mΩ", decimals: 1, factor: 1000 },
  mΩ: { text: "mΩ", decimals: 1 },
  rpm: { text: "rpm", decimals: 0 },
  "rpm/V": { text: "rpm/V", decimals: 0 },
  V: { text: "V", decimals: 1 },
  A: { text: "A", decimals: 1 },
  W: { text: "W", decimals: 0 },
  N: { text: "N", decimals: 0 },
  J: { text: "J", decimals: 0 },
  min: { text: "min", decimals: 1 },
  s: { text: "s", decimals: 1 },
  mm: { text: "mm", decimals: 1 },
  m: { text: "m", decimals: 0 },
  m2: { text: "m²", decimals: 3 },
  "m²": { text: "m²", decimals: 3 },
  kg: { text: "kg", decimals: 1 },
  g: { text: "g", decimals: 0 },
  "g cm2": { text: "g cm²", decimals: 0 },
  mAh: { text: "mAh", decimals: 0 },
  "m/s": { text: "m/s", decimals: 1 },
  "kg/m3": { text: "kg/m³", decimals: 3 },
  "kg/m³": { text: "kg/m³", decimals: 3 },
  "lb/ft³": { text: "lb/ft³", decimals: 4 },
  in: { text: "in", decimals: 2 },
  ft: { text: "ft", decimals: 0 },
  "ft²": { text: "ft²", decimals: 3 },
  oz: { text: "oz", decimals: 1 },
  lb: { text: "lb", decimals: 2 },
  mph: { text: "mph", decimals: 0 },
  "1/s": { text: "per s", decimals: 1 },
  lbf: { text: "lbf", decimals: 0 },
  "ft lbf": { text: "ft lbf", decimals: 0 },
  "N m": { text: "N m", decimals: 2 },
  "lbf ft": { text: "lbf ft", decimals: 2 },
};

const unitOf = (unit: string): Written => UNITS[unit] ?? { text: unit, decimals: 1 };

export interface FormatOptions {
  /** Standard uncertainty in the value's own unit: the last digit shown is the last that it leaves standing. */
  readonly uncertainty?: number;
  /** Decimals, where the reader has to see an exact value: an entry, a tick. Wins over the uncertainty. */
  readonly decimals?: number;
  /** Shows a plus sign too: for differences, which have no zero of their own (10 °C warmer is 18 °F warmer). */
  readonly signed?: boolean;
  /** The words for a value that does not exist. */
  readonly none?: string;
  /** The system of units to show it in, the reader's where left out; the value and its uncertainty stay in `unit`. */
  readonly units?: UnitSystem;
}

/**
 * Decimals that a value of this uncertainty is worth: two figures of the uncertainty while they lie below 30, one above;
 * negative for tens, hundreds. 60 gives -1, 14 gives 0, 0.25 gives 2.
 */
export function decimalsFor(uncertainty: number): number {
  const exponent = Math.floor(Math.log10(uncertainty) + 1e-12);
  const leading = uncertainty / 10 ** exponent;
  return leading < 2.95 ? 1 - exponent : -exponent;
}

/** A bare number: grouped by threes, true minus, fixed decimals (negative ones round to tens, hundreds ...). */
export function formatNumber(value: number, decimals = 0, signed = false): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const places = Math.min(Math.max(decimals, -12), 12);
  const coarse = 10 ** -Math.min(places, 0);
  const size = Math.abs(coarse > 1 ? Math.round(value / coarse) * coarse : value).toFixed(Math.max(places, 0));
  const point = size.indexOf(".");
  let whole = point < 0 ? size : size.slice(0, point);
  for (let i = whole.length - 3; i > 0; i -= 3) whole = `${whole.slice(0, i)},${whole.slice(i)}`;
  const text = point < 0 ? whole : whole + size.slice(point);
  const sign = /^[0.,]*$/.test(size) ? "" : value < 0 ? MINUS : signed ? "+" : "";
  return sign + text;
}

/** The decimals shown for a value in a unit when no uncertainty is known: three figures are plenty. */
function usualDecimals(shown: number, usual: number): number {
  if (usual <= 0) return usual;
  const whole = Math.floor(Math.log10(Math.max(Math.abs(shown), 1))) + 1;
  return Math.max(Math.min(usual, Math.max(3, usual + 1) - whole), 0);
}

/** How a unit is shown in another system; null where it is shown as it is. */
function otherUnit(unit: string, units: UnitSystem = unitsNow()) {
  if (units === "metric") return null;
  const from = unitOf(unit).factor === undefined ? unitOf(unit).text : unit;
  const to = shownUnit(from, units);
  if (to === from) return null;
  const value = (given: number) => shownValue(given, from, units);
  return { unit: to, value, spread: (given: number) => value(given) - value(0) };
}

/**
 * A figure with its unit: `2,310 rpm`, `−140 rpm`, `42.3 mΩ`, `11.2°`. A value that does not exist becomes words.
 * Units are those of the record and of the quantities (`percent`, `ohm`, `kg/m3` ...); an unknown one is shown as it is.
 */
export function formatValue(value: number | null, unit: string, options: FormatOptions = {}): string {
  if (value === null || !Number.isFinite(value)) return options.none ?? NO_VALUE;
  const other = otherUnit(unit, options.units);
  if (other) {
    const { units, uncertainty = 0, decimals: _, ...same } = options;
    const uncertain = { uncertainty: other.spread(uncertainty) };
    const shown = options.signed ? other.spread(value) : other.value(value);
    return formatValue(shown, other.unit, { ...same, ...uncertain, units: "metric" });
  }
  const { text, decimals, factor = 1, close } = unitOf(unit);
  const shown = value * factor;
  const spread = (options.uncertainty ?? 0) * factor;
  const known = spread > 0 && Number.isFinite(spread);
  const places = options.decimals ?? (known ? decimalsFor(spread) : usualDecimals(shown, decimals));
  const figure = formatNumber(shown, places, options.signed);
  if (text === "") return figure;
  return close ? figure + text : `${figure}${NO_BREAK}${text}`;
}

/**
 * A speed in rpm that the model gives. Its doubt is some per cent, so three figures are all that it is worth, and so is no
 * unit of a difference of two such speeds, unless it is all that there is.
 */
export function formatModelled(speed: number | null, options: Pick<FormatOptions, "none"> = {}): string {
  const figures = Math.floor(Math.log10(Math.max(1, Math.abs(speed ?? 0)))) + 1;
  return formatValue(speed, "rpm", { ...options, decimals: figures === 1 ? 0 : -Math.max(1, figures - 3) });
}

/** A figure with its uncertainty, both cut at the same digit: `2,170 ± 60 rpm`. Without one, as `formatValue`. */
export function formatBand(
  value: number | null,
  uncertainty: number,
  unit: string,
  options: Pick<FormatOptions, "none" | "units"> = {},
): string {
  if (value === null || !(uncertainty > 0) || !Number.isFinite(value + uncertainty)) {
    return formatValue(value, unit, options);
  }
  const other = otherUnit(unit, options.units);
  if (other) return formatBand(other.value(value), other.spread(uncertainty), other.unit, { units: "metric" });
  const { text, factor = 1, close } = unitOf(unit);
  const spread = uncertainty * factor;
  const places = decimalsFor(spread);
  const figures = `${formatNumber(value * factor, places)}${NO_BREAK}±${NO_BREAK}${formatNumber(spread, places)}`;
  if (text === "") return figures;
  return close ? `${figures}${text}` : `${figures}${NO_BREAK}${text}`;
}

/** A unit as it is written beside a figure: `percent` is `%`, `ohm` is `mΩ`, `1` is nothing; the reader's, where there is another. */
export function unitText(unit: string, units: UnitSystem = unitsNow()): string {
  return unitOf(otherUnit(unit, units)?.unit ?? unit).text;
}

const measured = /(\d[\d.,]*)[ \u00a0](°C|cm|mm|m|kg|g)(?![\p{L}\d²³])( (?:hotter|warmer|colder|cooler))?/gu;

/** A sentence that was written once, its measures in the reader's units: to two figures, or as many as stand there. */
export function inReadersUnits(sentence: string): string {
  if (unitsNow() === "metric") return sentence;
  return sentence.replace(measured, (_, figure: string, unit: string, than = "") => {
    const written = Number(figure.replaceAll(",", ""));
    const [value, held] = unit === "cm" ? [10 * written, "mm"] : [written, unit];
    const other = otherUnit(held);
    if (!other) return _;
    const shown = than ? other.spread(value) : other.value(value);
    const figures = Math.max(2, figure.replace(/\D/g, "").length);
    return `${formatNumber(shown, figures - 1 - Math.floor(Math.log10(Math.abs(shown))))}${NO_BREAK}${unitOf(other.unit).text}${than}`;
  });
}
