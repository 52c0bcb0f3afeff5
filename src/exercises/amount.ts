/** Amounts: a value with the unit that the reader sees, and the same in SI for the model's relations. */
import { milliampereHour, rpm } from "#model/constants";
import type { Relation, Term } from "#model/relation";

/** The SI value of one of each unit that exercises use. Counts have a name, so that the reader sees what is counted. */
const scale = {
  "": 1,
  teeth: 1,
  turns: 1,
  "%": 0.01,
  rpm,
  "rpm/V": rpm,
  "rad/s": 1,
  Hz: 1,
  V: 1,
  A: 1,
  Ω: 1,
  mΩ: 1e-3,
  mAh: milliampereHour,
  min: 60,
  s: 1,
  ms: 1e-3,
  µs: 1e-6,
  m: 1,
  mm: 1e-3,
  "m²": 1,
  kg: 1,
  g: 1e-3,
  "kg/m³": 1,
  "kg m²": 1,
  N: 1,
  "N m": 1,
  "N m/A": 1,
  W: 1,
  J: 1,
  "m/s": 1,
  "1/s": 1,
} as const;

export type Unit = keyof typeof scale;

export interface Amount {
  readonly unit: Unit;
  /** In that unit. */
  readonly value: number;
  readonly si: number;
}

/** An amount as it stands in a question. */
export const amount = (value: number, unit: Unit = ""): Amount => ({ unit, value, si: value * scale[unit] });

const fromSi = (si: number, unit: Unit): Amount => ({ unit, value: si / scale[unit], si });

const NO_BREAK = "\u00a0";
const cut = new Intl.NumberFormat("en-GB", { maximumSignificantDigits: 4 });
const whole = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 0 });

/** Four figures are plenty, and numbers that are drawn have no more; from a thousand up all digits of the whole. */
const figure = (value: number): string => (Math.abs(value) >= 1000 ? whole : cut).format(value).replace("-", "\u2212");

/** An amount in words: `2,310 rpm`, `12 teeth`, `9.8`. */
export const inWords = ({ value, unit }: Amount): string =>
  unit === "" ? figure(value) : `${figure(value)}${NO_BREAK}${unit}`;

/** A sentence with amounts in it. */
export const tell = (texts: TemplateStringsArray, ...parts: readonly (Amount | string)[]): string =>
  texts.reduce((all, text, i) => {
    const part = parts[i - 1];
    return `${all}${part === undefined ? "" : typeof part === "string" ? part : inWords(part)}${text}`;
  });

/** A formula in TeX: with its symbols, and with the numbers of this exercise. */
export interface Formula {
  readonly general: string;
  readonly numbers: string;
}

/** An amount that a relation gave, with the formula that shows how. */
export interface Worked extends Amount {
  readonly formula: Formula;
}

const asTex = (given: Amount): string => `\\text{${inWords(given).replace(/([%#$&_{}\\])/g, "\\$1")}}`;

type Terms = Readonly<Record<string, Term>>;

/** Puts amounts into a relation of the model: its result in a unit, and the formula with these numbers in it. */
export function work<T extends Terms>(
  relation: Relation<T>,
  given: { readonly [K in keyof T]: Amount },
  unit: Unit,
): Worked {
  const each = <V>(of: (part: Amount) => V) =>
    Object.fromEntries(Object.keys(relation.terms).map((key) => [key, of(given[key as keyof T])])) as {
      [K in keyof T]: V;
    };
  const result = fromSi(relation(each((part) => part.si)), unit);
  // A unit right before an exponent would read as if it alone were raised.
  const numbers = relation
    .formula(each(asTex), asTex(result))
    .replace(/(\\text\{[^{}]*\u00a0[^{}]*\})\^/g, "\\left($1\\right)^");
  return { ...result, formula: { general: relation.general, numbers } };
}
