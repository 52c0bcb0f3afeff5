/**
 * Reads what people type for a number: a decimal point or comma, thousands set apart, a unit behind it, imperial where
 * that is chosen; and writes a field's value into a box so that nothing of it is lost.
 */
import type { Field } from "#machine/fields";
import { convert, shownUnit, shownValue, typedValue, type UnitName, type UnitSystem } from "#machine/units";
import { formatNumber, unitText } from "#view/format";
import { unitsNow } from "#view/units";

const systemFor = ({ sameForAll }: Field): UnitSystem => (sameForAll ? "metric" : unitsNow());

/** What people write behind a number, and the unit that they mean. */
const meant: Readonly<Record<string, UnitName>> = {
  mm: "mm",
  m: "m",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  "″": "in",
  ft: "ft",
  feet: "ft",
  m2: "m²",
  sqft: "ft²",
  ft2: "ft²",
  "ft²": "ft²",
  g: "g",
  kg: "kg",
  oz: "oz",
  lb: "lb",
  lbs: "lb",
  c: "°C",
  "°c": "°C",
  f: "°F",
  "°f": "°F",
  deg: "°",
  degrees: "°",
  kv: "rpm/V",
  ω: "Ω",
  ohm: "Ω",
  mω: "mΩ",
  mohm: "mΩ",
  milliohm: "mΩ",
  percent: "%",
  min: "min",
};

/** The same for what is only counted, or has no second unit. */
const counted: Readonly<Record<string, readonly string[]>> = {
  teeth: ["t", "tooth"],
  V: ["volt", "volts"],
  "pack.cells": ["s", "cell", "cells"],
  "motor.poles": ["pole", "poles", "magnet", "magnets"],
  "mainRotor.blades": ["blade", "blades"],
  "tailRotor.blades": ["blade", "blades"],
};

const blanks = /[\s\u00a0\u2009\u202f]/g;

/** A bare figure as people write it; null when it is none, or when its separators contradict each other. */
export function readFigure(text: string): number | null {
  const tidy = text.replace(/[\u2212\u2013]/g, "-").replace(/(\d)[\s\u00a0\u2009\u202f'’](?=\d{3}(?!\d))/g, "$1");
  const parts = /^([+-]?)([\d.,]+)(e[+-]?\d+)?$/i.exec(tidy.replace(blanks, (gap) => (gap === " " ? "?" : "")));
  const digits = plainDigits(parts?.[2] ?? "");
  if (!parts || digits === null) return null;
  const value = Number(`${parts[1]}${digits}${parts[3] ?? ""}`);
  return Number.isFinite(value) ? value : null;
}

/** The digits with one decimal point and nothing between thousands. */
function plainDigits(digits: string): string | null {
  const grouped = (mark: string) => new RegExp(`^\\d{1,3}(\\${mark}\\d{3})+$`);
  const last = digits.lastIndexOf(",") > digits.lastIndexOf(".") ? "," : ".";
  const first = last === "," ? "." : ",";
  const [whole = "", ...rest] = digits.split(last);
  let plain: string;
  if (digits.includes(first)) {
    if (rest.length !== 1 || !grouped(first).test(whole)) return null;
    plain = `${whole.replaceAll(first, "")}.${rest[0]}`;
  } else if (rest.length > 1 || (last === "," && grouped(",").test(digits) && whole !== "0")) {
    // A single comma before exactly three digits sets thousands apart, as on these pages: 1,120.
    if (!grouped(last).test(digits)) return null;
    plain = digits.replaceAll(last, "");
  } else plain = rest.length === 1 ? `${whole}.${rest[0]}` : whole;
  return /^(\d+\.?\d*|\.\d+)$/.test(plain) ? plain : null;
}

/** What was typed as a value in the field's own unit; null when it is no number, or has a unit that doesn't fit. */
export function readTyped(text: string, field: Field): number | null {
  const trimmed = text.trim();
  const figure = /^[-+\u2212\u2013]?[\d.,'’\s\u00a0\u2009\u202f]*[\d.,](e[+-]?\d+)?/i.exec(trimmed)?.[0] ?? "";
  const value = readFigure(figure.trim());
  if (value === null) return null;
  const suffix = trimmed.slice(figure.length).replace(blanks, "").toLowerCase();
  if (suffix === "") return tidied(typedValue(value, field.unit, systemFor(field)));
  const plain = [
    field.unit.toLowerCase().replace(blanks, ""),
    ...(counted[field.unit] ?? []),
    ...(counted[field.path] ?? []),
  ];
  if (plain.includes(suffix)) return value;
  const unit = Object.hasOwn(meant, suffix) ? meant[suffix] : undefined;
  const converted = unit && isUnit(field.unit) ? convert(value, unit, field.unit) : null;
  return converted === null ? null : tidied(converted);
}

/** The units of the fields that are in the table of units; counts and volts stand outside it. */
const isUnit = (unit: string): unit is UnitName => Object.values<string>(meant).includes(unit);

/** Takes the last bits of arithmetic off: 38.1, not 38.099999999999994. */
export const tidied = (value: number): number => Number(value.toPrecision(12));

const decimalsOf = (step: number): number => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));

/** A value as its box shows it, without its unit: exact when it was typed, rounded to the field's step when it follows. */
export function boxText(value: number, field: Field): string {
  const text = figureText(value, field);
  // Four digits are read, and copied, more easily without a gap.
  return text.replace(/^(-?\d),(\d{3})(?!,)/, "$1$2");
}

/** The same with its thousands set apart, as figures stand in the text. */
export function figureText(value: number, field: Field): string {
  const system = systemFor(field);
  const shown = shownValue(value, field.unit, system);
  const same = shownUnit(field.unit, system) === field.unit;
  // A value with a few decimals was set by somebody; one with many was computed.
  const exact = same && Math.abs(shown * 1e6 - Math.round(shown * 1e6)) < 1e-4;
  const step = shownValue(field.step, field.unit, system) - shownValue(0, field.unit, system);
  const decimals = Math.max(1, decimalsOf(step) + (same ? 0 : 1));
  const text = exact ? formatNumber(shown, 6) : formatNumber(shown, decimals);
  return (text.includes(".") ? text.replace(/\.?0+$/, "") : text).replace("\u2212", "-");
}

/** The unit beside a field's box, as chosen by the reader. */
export const unitBeside = (field: Field): string => unitText(field.unit, systemFor(field));

/** A value with its unit, for speech and for sentences: `13 teeth`, `25.2 V`. */
export function withUnit(value: number, field: Field): string {
  const unit = unitBeside(field);
  const text = figureText(value, field);
  if (unit === "") return text;
  return unit === "°" ? `${text}°` : `${text}\u00a0${unit}`;
}
