/** The words in which a machine's record says what is wrong with it. Kept together so that they can be translated. */
import type { Choice, ListShape, Shape } from "./shape.ts";
import { shownUnit, shownValue, type UnitSystem, unitsNow } from "./units.ts";

const number = new Intl.NumberFormat("en-GB", { maximumSignificantDigits: 12 });

const short = (text: string, most = 40): string => {
  const characters = [...text];
  return characters.length <= most ? text : `${characters.slice(0, most).join("")}…`;
};

const said = (value: number, unit: string): string =>
  `${number.format(value).replace("-", "−")}${unit === "" ? "" : unit === "°" ? unit : ` ${unit}`}`;

/**
 * A number as people write it, with its unit, in the reader's units: `1,120 rpm/V`. With `round` it is rounded as it is
 * shown; else a converted one has five figures, so that a limit can be told from what lies just beyond it.
 */
export function withUnit(
  value: number,
  unit: string,
  { round, units = unitsNow() }: { round?: (shown: number) => number; units?: UnitSystem } = {},
): string {
  const other = shownUnit(unit, units);
  const shown = shownValue(value, unit, units);
  return said(round ? round(shown) : other === unit ? shown : Number(shown.toPrecision(5)), other);
}

/** The system in which a field is said: gears are named by their module in millimetres everywhere. */
const systemOf = (shape: Shape): UnitSystem => ("sameForAll" in shape && shape.sameForAll ? "metric" : unitsNow());

/** A name within a sentence: `Motor Kv` is `motor Kv`. Units: none. Errors: none. Source: spelling. */
export const inSentence = (name: string): string => `${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/** What a value is, in words: for a message about a value that can't be used. Control characters are left out. */
export function holds(value: unknown, unit = "", units = unitsNow()): string {
  if (value === undefined || value === null || value === "") return "nothing";
  if (typeof value === "number") {
    if (!Number.isFinite(value)) return "no usable number";
    return Math.abs(value) >= 1e12 || (value !== 0 && Math.abs(value) < 1e-6)
      ? String(value)
      : withUnit(value, unit, { units });
  }
  if (typeof value === "string") return `the text “${short(value.replace(/[\p{Cc}\p{Cs}\p{Cf}\u2028\u2029]/gu, "·"))}”`;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return Array.isArray(value) ? "a list" : "a group of fields";
}

const round = (value: number): number => Math.round(value * 100) / 100;

const listed = (choices: readonly Choice[]): string => choices.map((choice) => choice.value).join(", ");

/** What a field, group or list may hold, in words. */
export function allowed(shape: Shape): string {
  switch (shape.kind) {
    case "text":
      return `text of at most ${shape.max} characters, on one line`;
    case "choice":
      return `one of ${listed(shape.choices)}`;
    case "group":
      return shape.nullMeans === null ? "a group of fields" : "all its fields, or none of them";
    case "list":
      return `${shape.fewest} to ${shape.most} of them`;
    default: {
      const what = shape.kind === "integer" ? (shape.wholeEven ? "an even number" : "a whole number") : "a number";
      const units = systemOf(shape);
      const low = withUnit(shape.min, shape.unit, { units }).replace(/[^\d]+$/, "");
      const range = `from ${low} to ${withUnit(shape.max, shape.unit, { units })}`;
      return `${what} ${range}${shape.kind === "nullable number" ? ", or nothing" : ""}`;
    }
  }
}

/** Sentences about a record that can't be used as it is. */
export const sentences = {
  bad: (name: string, value: unknown, shape: Shape): string =>
    `${name}: holds ${holds(value, "unit" in shape ? shape.unit : "", systemOf(shape))}. Allowed: ${allowed(shape)}.`,
  missing: (name: string, shape: Shape): string => `${name}: missing. Allowed: ${allowed(shape)}.`,
  count: (name: string, length: number, shape: ListShape): string =>
    `${name}: there are ${length}. Allowed: ${allowed(shape)}.`,
  unknown: (path: string): string => `A machine has no field “${short(path, 80)}”. It was left out.`,
  moreUnknown: (count: number): string => `${count} more fields that a machine does not have were left out.`,
  noSuchField: (path: string): string => `A machine has no field “${short(path, 80)}”.`,
  noSuchMode: (place: number, count: number): string => `There is no flight mode ${place}. This machine has ${count}.`,
  groupIsOff: (name: string): string => `${name}: can't be set alone. Set all fields of its group at once.`,
  notAMachine: (value: unknown): string =>
    `This is no machine: it holds ${holds(value)} where a group of fields is needed.`,
  noVersion: (version: number): string => `Version of the record: missing. Allowed: ${version}.`,
  badVersion: (value: unknown, version: number): string =>
    `Version of the record: holds ${holds(value)}. Allowed: a whole number from 1 to ${version}.`,
  newerVersion: (value: number, version: number): string =>
    `This machine was written by a newer workbook: its record is version ${value}, and this workbook reads up to ${version}. Open it with the newer one.`,
  voltage: (value: unknown, empty: number, full: number): string =>
    `Resting voltage of the pack: holds ${holds(value, "V")}. Allowed for these cells: a number from ${withUnit(round(empty), "")} to ${withUnit(round(full), "V")}.`,
  linkCut: (): string =>
    "This link was cut on its way. What could be read of it is here; the rest is as in the demo machine it started from.",
  linkDamaged: (): string =>
    "This link was changed on its way. What could be read of it is here; check every value, or ask for the link again.",
  linkStrangers: (count: number): string =>
    `${count === 1 ? "One part" : `${count} parts`} of this link could not be read and ${count === 1 ? "was" : "were"} left out.`,
  linkExtras: (): string => "What this link says about the state of the page could not be read and was left out.",
  linkAlien: (): string =>
    "This link is not one of this workbook's, or only the beginning of one. Nothing was taken from it.",
  linkNewer: (): string => "This link was made by a newer workbook than this one. Nothing was taken from it.",
  linkTooLong: (): string => "This link is too long to be one of this workbook's. Nothing was taken from it.",
  storeForbidden: (): string =>
    "This browser keeps nothing for this page. You can work on, but the machine is gone when you leave; a link or a file keeps it.",
  storeFull: (): string =>
    "This browser has no room left to keep the machine. You can work on; a link or a file keeps it. What was kept before is still there.",
  storeAside: (): string =>
    "The machine kept in this browser could not be read in full. What was good in it is here, and the record itself was put aside, not lost.",
  storeLocked: (): string =>
    "The machine kept in this browser could not be read in full, and there is no room to put it aside. It stays as it is; what you do now is not kept. A link or a file keeps it.",
  noWhatIf: (): string => "There is no what-if machine on the bench. Start one first.",
  tooLong: (what: string): string => `${what} is too long to be a machine: more than a million characters.`,
  notJson: (what: string): string => `${what} can't be read: it is no JSON, or only a part of it.`,
};

/** Sentences about fields that don't go together. */
export const together = {
  below: (name: string, value: string, other: string, limit: string): string =>
    `${name}: holds ${value}. Allowed: less than ${other}, ${limit}.`,
  above: (name: string, value: string, other: string, limit: string): string =>
    `${name}: holds ${value}. Allowed: more than ${other}, ${limit}.`,
};
