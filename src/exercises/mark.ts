/**
 * Marking: a typed answer against the true one. It knows tolerance, unit and the typical slips, and gives the one hint
 * that helps. Pure: no page, no machine.
 */
import { readAnswer } from "./read.ts";

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
  /** Smallest gap that still counts as right, in the unit: for counts and for values near zero. */
  readonly absolute: number;
  readonly slips: readonly Slip[];
}

type Tolerance = Pick<Target, "relative" | "absolute">;

/** How far from a value an answer may lie and still be that value. Unit: that of the value. Source: our choice. */
const allowed = (value: number, { relative, absolute }: Tolerance): number =>
  Math.max(Math.abs(value) * relative, absolute);

const hits = (answer: number, value: number, tolerance: Tolerance): boolean =>
  // A hair more, so that an answer right at the edge isn't lost to rounding.
  Math.abs(answer - value) <= allowed(value, tolerance) * (1 + 1e-9);

/** Whether two values can be told apart by what is typed: no answer is within reach of both. Source: our choice. */
export const toldApart = (a: number, b: number, tolerance: Tolerance): boolean =>
  Math.abs(a - b) > 1.02 * (allowed(a, tolerance) + allowed(b, tolerance));

/** Slips that can happen to any answer, whatever the question. */
function commonSlip(answer: number, target: Target): Verdict | null {
  const { value, unit } = target;
  const at = (wrong: number): boolean => hits(answer, wrong, { relative: target.relative, absolute: 0 });
  if (value === 0 || answer === 0) return null;
  if (unit === "%" && at(value / 100))
    return {
      kind: "slip",
      slip: "share-for-percent",
      hint: "That is a share of one. In per cent it is a hundred times that.",
    };
  if (at(-value)) return { kind: "slip", slip: "sign", hint: "The figure is right, its sign is not. More, or less?" };
  for (const power of [-3, -2, -1, 1, 2, 3])
    if (at(value * 10 ** power))
      return {
        kind: "slip",
        slip: "decimal-point",
        hint: "The figures are right; the decimal point isn't. Look at the units.",
      };
  return null;
}

function markNumber(answer: number, target: Target): Verdict {
  if (hits(answer, target.value, target)) return { kind: "right" };
  for (const { name, value, hint } of target.slips)
    if (hits(answer, value, target)) return { kind: "slip", slip: name, hint };
  const common = commonSlip(answer, target);
  if (common) return common;
  if (Math.abs(answer - target.value) <= 4 * allowed(target.value, target))
    return { kind: "near", hint: "Close. Carry more figures through, and round only at the end." };
  return {
    kind: "off",
    hint:
      answer > target.value
        ? "Too high. Which quantity should make it smaller?"
        : "Too low. Which quantity should make it larger?",
  };
}

/**
 * Marks an answer as typed. Units: those of the target; others of the same kind are converted. Where a figure can be read
 * in two ways (1,234), the kinder one counts. Source: our choice.
 */
export function mark(text: string, target: Target): Verdict {
  const read = readAnswer(text, target.unit);
  if (read.kind === "none")
    return { kind: "unreadable", hint: `Type a number${target.unit ? ` in ${target.unit}` : ""}.` };
  if (read.kind === "other unit")
    return {
      kind: "unreadable",
      hint: `The question asks for ${target.unit || "a plain number"}, not for ${read.unit}.`,
    };
  const verdicts = read.values.map((value) => markNumber(value, target));
  const of = (kind: Verdict["kind"]) => verdicts.find((verdict) => verdict.kind === kind);
  return of("right") ?? of("slip") ?? of("near") ?? verdicts[0]!;
}
