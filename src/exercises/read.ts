/** Reads a number as people type it: comma or point, thousands set apart, a true minus, a unit behind it. */

const rad = 60 / (2 * Math.PI);

/** Ways to write a unit, with the factor that brings a value in it to the unit asked for. Keys in lower case. */
const units: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  rpm: { rpm: 1, "1/min": 1, "/min": 1, "r/min": 1, "rad/s": rad, hz: 60 },
  "%": { "%": 1, percent: 1, "per cent": 1 },
  Hz: { hz: 1, "1/s": 1, khz: 1e3, rpm: 1 / 60 },
  V: { v: 1, volt: 1, volts: 1, mv: 1e-3 },
  A: { a: 1, amp: 1, amps: 1, ampere: 1, amperes: 1, ma: 1e-3 },
  mΩ: { mω: 1, mohm: 1, milliohm: 1, milliohms: 1, ω: 1e3, ohm: 1e3, ohms: 1e3 },
  W: { w: 1, watt: 1, watts: 1, kw: 1e3, hp: 745.7 },
  "m/s": { "m/s": 1, "km/h": 1 / 3.6, kmh: 1 / 3.6, mph: 0.44704, "ft/s": 0.3048 },
  N: { n: 1, newton: 1, newtons: 1, kn: 1e3, kgf: 9.80665, kg: 9.80665, lbf: 4.4482216 },
  J: { j: 1, joule: 1, joules: 1, kj: 1e3, wh: 3600, "ft lbf": 1.3558179, "ft lb": 1.3558179 },
  "N m": { "n m": 1, nm: 1, n·m: 1, "lbf ft": 1.3558179, "ft lbf": 1.3558179, "ft lb": 1.3558179 },
  min: { min: 1, minute: 1, minutes: 1, s: 1 / 60, sec: 1 / 60, seconds: 1 / 60, h: 60, hours: 60 },
  s: { s: 1, sec: 1, second: 1, seconds: 1, ms: 1e-3, min: 60 },
  µs: { µs: 1, μs: 1, us: 1, microseconds: 1, ms: 1e3, s: 1e6 },
  mm: { mm: 1, cm: 10, m: 1000, in: 25.4, inch: 25.4, inches: 25.4 },
  "m²": { "m²": 1, m2: 1, "cm²": 1e-4, cm2: 1e-4, "ft²": 0.09290304, ft2: 0.09290304 },
  teeth: { teeth: 1, tooth: 1, t: 1 },
  turns: { turns: 1, turn: 1 },
  "": { "": 1, ":1": 1, "to 1": 1, times: 1, x: 1, "×": 1 },
};

const same = (unit: string): string => unit.toLowerCase();

/** A typed answer: what its figure may mean, in the unit asked for; or a unit that doesn't fit; or no number at all. */
export type Reading =
  | { readonly kind: "number"; readonly values: readonly number[] }
  | { readonly kind: "other unit"; readonly unit: string }
  | { readonly kind: "none" };

/** Reads a typed answer to a question that asks for `unit`. Units: that one. Errors: 'none' where there is no number. */
export function readAnswer(text: string, unit: string): Reading {
  const tidy = text
    .normalize("NFKC")
    .replace(/[−–]/g, "-")
    .trim()
    .replace(/(?<=\d)[' ](?=\d{3}(?!\d))/g, "")
    .replace(/^(=|≈|~|about|ca\.?|roughly)\s*/i, "");
  const found = /^([+-]?\s?[\d.,]*\d[.,]?(?:e[+-]?\d+)?)\s*(.*)$/i.exec(tidy);
  if (!found) return { kind: "none" };
  const values = meanings(found[1]!.replace(" ", ""));
  if (values.length === 0) return { kind: "none" };
  const behind = found[2]!.trim().replace(/\s+/g, " ");
  if (behind === "" || same(behind) === same(unit.normalize("NFKC"))) return { kind: "number", values };
  const factor = factors(unit).get(same(behind));
  return factor === undefined
    ? { kind: "other unit", unit: behind }
    : { kind: "number", values: values.map((value) => value * factor) };
}

function factors(unit: string): Map<string, number> {
  const known = Object.entries(units[unit] ?? {});
  return new Map(known.map(([name, factor]) => [same(name.normalize("NFKC")), factor]));
}

/** Three digits behind a lone comma or point are thousands to some and decimals to others: then both are meant. */
function meanings(digits: string): number[] {
  const [, sign, plain, power] = /^([+-]?)([\d.,]+)(e[+-]?\d+)?$/i.exec(digits) ?? [];
  if (plain === undefined) return [];
  const last = plain.lastIndexOf(",") > plain.lastIndexOf(".") ? "," : ".";
  const other = last === "," ? "." : ",";
  const parts = plain.split(last);
  const grouped = parts.length > 1 && parts.slice(1).every((part) => part.length === 3) && /^\d{1,3}$/.test(parts[0]!);
  const texts: string[] = [];
  if (!plain.includes(other) && grouped) texts.push(parts.join(""));
  if (parts.length <= 2) texts.push(`${parts[0]!.replaceAll(other, "")}.${parts[1] ?? ""}`);
  // On these pages a comma sets thousands apart and a point begins the decimals: that meaning comes first.
  const values = texts.map((text) => Number(`${sign}${text}${power ?? ""}`)).filter(Number.isFinite);
  return last === "." ? values.reverse() : values;
}
