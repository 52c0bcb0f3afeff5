/** A machine told as what differs from another one, in the codes of a link; and the way back. */
import { machineShape, patternOf, shapeAt } from "../fields.ts";
import type { Machine } from "../machine.ts";
import { defaultOf, filled, isLeaf, type Shape } from "../shape.ts";
import type { Problem } from "../validate.ts";
import { sentences } from "../words.ts";
import { codes, pathOfCode } from "./codes.ts";
import { readValue, writeValue } from "./text.ts";

type Fields = Record<string, unknown>;

/** Present, though not in the other machine; null; and not there, where that isn't the same as null. */
const THERE = "y";
const NULL = "x";
const ABSENT = "z";

/** One change: two letters, the place of a flight mode where there is one, and the value. */
const codeOf = (path: string): string => {
  const place = /^modes\.(\d+)\./.exec(path)?.[1] ?? "";
  return `${codes[patternOf(path)]}${place}`;
};

/** What differs between two machines, from `base` to `machine`, in the order of the file. Empty when nothing does. */
export function writeDifference(base: Machine, machine: Machine): string {
  const parts: string[] = [];
  const walk = (shape: Shape, from: unknown, to: unknown, path: string): void => {
    if (Object.is(from, to)) return;
    if (isLeaf(shape)) {
      parts.push(codeOf(path), writeValue(shape, to));
    } else if (shape.kind === "list") {
      const [before, after] = [from as readonly unknown[], to as readonly unknown[]];
      if (before.length !== after.length) parts.push(codeOf(path), String(after.length));
      for (const [place, item] of after.entries()) {
        walk(shape.of, before[place] ?? filled(shape.of), item, `${path}.${place}`);
      }
    } else if (to === null || to === undefined) {
      parts.push(codeOf(path), to === null ? NULL : ABSENT);
    } else {
      if (from === null || from === undefined) parts.push(codeOf(path), THERE);
      const before = (from ?? filled(shape)) as Fields;
      for (const [key, entry] of Object.entries(shape.entries)) {
        walk(entry, before[key], (to as Fields)[key], path ? `${path}.${key}` : key);
      }
    }
  };
  walk(machineShape, base, machine, "");
  return parts.join("");
}

/** One change as it stands in a link. */
export interface Item {
  readonly code: string;
  readonly written: string;
}

/** Puts one change into a raw record; false where the record has no place for it. */
function put(record: Fields, item: Item): boolean {
  const pattern = pathOfCode(item.code);
  const shape = pattern ? shapeAt(pattern) : null;
  if (!pattern || !shape) return false;
  const inList = pattern.includes("*");
  if (inList && !/^\d/.test(item.written)) return false;
  const path = inList ? pattern.replace("*", item.written.charAt(0)) : pattern;
  const written = inList ? item.written.slice(1) : item.written;
  const keys = path.split(".");
  const last = keys.pop() as string;
  let node: unknown = record;
  for (const key of keys) node = typeof node === "object" && node !== null ? (node as Fields)[key] : undefined;
  if (typeof node !== "object" || node === null) return false;
  const place = node as Fields;
  if (isLeaf(shape)) place[last] = readValue(shape, written);
  else if (shape.kind === "list") {
    if (!/^\d$/.test(written)) return false;
    const items = place[last] as unknown[];
    // One more than is allowed is enough for the validator to tell of it.
    const length = Math.min(Number(written), shape.most + 1);
    place[last] = Array.from({ length }, (_, i) => items[i] ?? structuredClone(filled(shape.of)));
  } else if (written === NULL) place[last] = null;
  else if (written === ABSENT) place[last] = undefined;
  else if (written === THERE)
    place[last] = structuredClone(shape.nullMeans === null ? defaultOf(shape) : filled(shape));
  else return false;
  return true;
}

/** The record that changes make of a machine, unchecked, and the changes that found no place. */
export function applyDifference(base: Machine, items: readonly Item[]): { record: Fields; problems: Problem[] } {
  const record = structuredClone(base) as unknown as Fields;
  const strangers = items.filter((item) => !put(record, item));
  const words = sentences.linkStrangers(strangers.length);
  return { record, problems: strangers.length > 0 ? [{ path: "", value: undefined, words }] : [] };
}
