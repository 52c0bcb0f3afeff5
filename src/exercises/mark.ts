/**
 * Marking: a typed answer against the true one. It knows tolerance, unit and the typical slips, and gives the one hint
 * that helps. Pure: no page, no machine.
 */

/** A wrong way to the answer that people really take: the value it leads to, and the hint that helps. */
export interface Slip {
  readonly name: string;
  readonly value: number;
  readonly hint: string;
}

export type Verdict =
  | { readonly kind: "right" }
  | { readonly kind: "slip"; readonly slip: string; readonly hint: string }
  | { readonly kind: "near"; readonly hint: string }
  | { readonly kind: "off"; readonly hint: string }
  | { readonly kind: "unreadable"; readonly hint: string };

export interface Target {
  readonly value: number;
  readonly unit: string;
  /** Share of the true value that still counts as right; rounding to three figures is always within it. */
  readonly relative: number;
  /** Smallest gap that still counts as right, in the unit: for values near zero. */
  readonly absolute: number;
  readonly slips: readonly Slip[];
}

/** Other ways to write a unit, with the factor that brings a value in it to the unit asked for. */
const UNITS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  rpm: { rpm: 1, "1/min": 1, "/min": 1, "rad/s": 60 / (2 * Math.PI), hz: 60 },
  "%": { "%": 1, percent: 1, "per cent": 1 },
  V: { v: 1, volt: 1, volts: 1, mv: 1e-3 },
  A: { a: 1, amp: 1, amps: 1, ma: 1e-3 },
  W: { w: 1, watt: 1, watts: 1, kw: 1e3 },
  "m/s": { "m/s": 1, "km/h": 1 / 3.6, mph: 0.44704, "ft/s": 0.3048 },
  N: { n: 1, kn: 1e3, kgf: 9.80665, kg: 9.80665 },
  J: { j: 1, kj: 1e3, wh: 3600 },
  min: { min: 1, minutes: 1, s: 1 / 60, h: 60 },
  mm: { mm: 1, cm: 10, m: 1000, in: 25.4 },
  "": { "": 1, ":1": 1, times: 1 },
};

/** Reads a number as people type it: comma or point, thousands separators, a true minus, a unit behind it. Null where none can be read. */
export function readAnswer(text: string, unit: string): { value: number; unit: string | null } | null {
  const found = /^([+-]?[\d.,' \u2009\u00a0]*\d)\s*(.*)$/.exec(text.trim().replace(/[−–]/g, "-"));
  if (!found) return null;
  const value = readNumber(found[1]!);
  if (value === null) return null;
  const behind = found[2]!.trim().toLowerCase();
  if (behind === "") return { value, unit: null };
  const factor = UNITS[unit]?.[behind];
  return factor === undefined ? { value, unit: behind } : { value: value * factor, unit };
}

function readNumber(text: string): number | null {
  const packed = text.replace(/[' \u2009\u00a0]/g, "");
  const lastComma = packed.lastIndexOf(",");
  const lastPoint = packed.lastIndexOf(".");
  // 2,310 is a thousands separator, 23,5 a decimal comma: three digits behind a lone comma mean thousands.
  const thousands = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(packed);
  const plain = thousands
    ? packed.replaceAll(",", "")
    : lastComma > lastPoint
      ? packed.replaceAll(".", "").replace(",", ".")
      : packed.replaceAll(",", "");
  const value = Number(plain);
  return plain !== "" && Number.isFinite(value) ? value : null;
}

/** Marks an answer. The first slip whose value it hits (within half the tolerance of right) is the one that is answered. */
export function mark(text: string, target: Target): Verdict {
  const read = readAnswer(text, target.unit);
  if (!read) return { kind: "unreadable", hint: `Type a number${target.unit ? ` in ${target.unit}` : ""}.` };
  if (read.unit !== null && read.unit !== target.unit) {
    return { kind: "unreadable", hint: `The question asks for ${target.unit || "a plain number"}, not ${read.unit}.` };
  }
  const allowed = (value: number) => Math.max(Math.abs(value) * target.relative, target.absolute);
  const gap = Math.abs(read.value - target.value);
  if (gap <= allowed(target.value)) return { kind: "right" };
  for (const slip of target.slips) {
    if (Math.abs(read.value - slip.value) <= allowed(slip.value))
      return { kind: "slip", slip: slip.name, hint: slip.hint };
  }
  if (gap <= 4 * allowed(target.value))
    return { kind: "near", hint: "Close. Carry more figures through, and round only at the end." };
  const high = read.value > target.value;
  return {
    kind: "off",
    hint: high ? "Too high. Which quantity should make it smaller?" : "Too low. Which quantity should make it larger?",
  };
}
