/** Reading and changing a machine by the dot paths of its fields. A machine is never changed in place. */
import { shapeAt } from "./fields.ts";
import type { Machine } from "./machine.ts";
import { isLeaf } from "./shape.ts";

type Node = Readonly<Record<string, unknown>> | readonly unknown[];

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

const child = (node: unknown, key: string): unknown =>
  isNode(node) && Object.hasOwn(node, key) ? (node as Readonly<Record<string, unknown>>)[key] : undefined;

/** The value at a dot path of a machine, in the field's own unit; undefined where there is none. */
export function valueAt(machine: Machine, path: string): unknown {
  let value: unknown = machine;
  for (const key of path.split(".")) value = child(value, key);
  return value;
}

/**
 * A machine with another value at a dot path; all that is not on the way there is shared with the first. The path must
 * exist and the value fit: this is for values that have been checked.
 */
export function withValue(machine: Machine, path: string, value: unknown): Machine {
  const change = (node: unknown, keys: readonly string[]): unknown => {
    const [key, ...rest] = keys;
    if (key === undefined) return value;
    if (!isNode(node) || !Object.hasOwn(node, key)) throw new Error(`A machine has nothing at "${path}".`);
    const next = change(child(node, key), rest);
    return Array.isArray(node) ? node.with(Number(key), next) : { ...node, [key]: next };
  };
  return change(machine, path.split(".")) as Machine;
}

/** Whether two plain values are the same all the way down. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!isNode(a) || !isNode(b)) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((each, i) => same(each, b[i]));
  }
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(child(a, key), child(b, key)))
  );
}

/**
 * The dot paths of all fields in which two machines differ, in the order of the file. A list of another length, and a
 * group that is null in one of them, count as one path.
 */
export function changedBetween(before: Machine, after: Machine): string[] {
  const found: string[] = [];
  const walk = (a: unknown, b: unknown, path: string): void => {
    if (same(a, b)) return;
    const alike = isNode(a) && isNode(b) && Object.keys(a).length === Object.keys(b).length;
    const shape = path === "" ? null : shapeAt(path);
    if (!alike || (shape && isLeaf(shape))) found.push(path);
    else for (const key of Object.keys(b)) walk(child(a, key), child(b, key), path ? `${path}.${key}` : key);
  };
  walk(before, after, "");
  return found;
}
