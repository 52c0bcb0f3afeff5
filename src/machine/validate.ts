/**
 * The one validator: whatever comes from a file, a link, the local store or an input passes here. It names each bad
 * field, says what it holds and what is allowed, keeps the rest, and never changes a value in silence.
 */
import * as v from "valibot";
import { machineShape, shapeAt } from "./fields.ts";
import { defaultMachine, type Machine, schemaOf, VERSION } from "./machine.ts";
import { migrated } from "./migrate.ts";
import { same, valueAt, withValue } from "./paths.ts";
import { type Broken, brokenRules, nameOf } from "./rules.ts";
import { defaultOf, filled, type GroupShape, isLeaf, type Leaf, type ListShape, type Shape } from "./shape.ts";
import { sentences } from "./words.ts";

/** Something that could not be used as it was, in words that name it, what it holds and what is allowed. */
export interface Problem {
  readonly path: string;
  readonly value: unknown;
  readonly words: string;
  /** Set where nothing is wrong with the machine: a field that it doesn't have was left out. */
  readonly note?: true;
}

/** A machine that can be used, and all that had to be put right or left out to get it. */
export interface Reading {
  readonly machine: Machine;
  readonly problems: Problem[];
}

/** At most so many notes about fields that a machine doesn't have; the rest are only counted. */
const MOST_NOTES = 20;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const own = (value: unknown, key: string): unknown =>
  isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined;

const join = (path: string, key: string | number): string => (path === "" ? String(key) : `${path}.${key}`);

/** How a field, group or list is called in a message. */
function called(path: string, shape: Shape): string {
  if (isLeaf(shape)) return nameOf(path);
  const place = /^modes\.(\d+)$/.exec(path)?.[1];
  return place === undefined ? shape.name : `${shape.name} ${Number(place) + 1}`;
}

class Reader {
  readonly problems: Problem[] = [];
  private strangers = 0;

  read(shape: Shape, input: unknown, fallback: unknown, path: string): unknown {
    if (input === undefined) {
      // A field whose owner may have nothing to say is not missed.
      const open = shape.kind === "nullable number" || (shape.kind === "group" && shape.nullMeans !== null);
      if (!open) this.problems.push({ path, value: undefined, words: sentences.missing(called(path, shape), shape) });
      return open && !("absentMeans" in shape) ? null : defaultOf(shape);
    }
    if (shape.kind === "group") return this.group(shape, input, fallback, path);
    if (shape.kind === "list") return this.list(shape, input, fallback, path);
    return this.leaf(shape, input, fallback, path);
  }

  private bad(shape: Shape, input: unknown, path: string): void {
    this.problems.push({ path, value: input, words: sentences.bad(called(path, shape), input, shape) });
  }

  private leaf(leaf: Leaf, input: unknown, fallback: unknown, path: string): unknown {
    // Adding nothing turns a negative zero, which a file can't tell from zero, into zero.
    if (v.is(schemaOf(leaf), input)) return typeof input === "number" ? input + 0 : input;
    this.bad(leaf, input, path);
    return fallback === undefined ? leaf.default : fallback;
  }

  private group(shape: GroupShape, input: unknown, fallback: unknown, path: string): unknown {
    if (input === null && shape.nullMeans !== null) return null;
    if (!isRecord(input)) {
      this.bad(shape, input, path);
      return fallback === undefined ? defaultOf(shape) : fallback;
    }
    const before = this.problems.length;
    const entries = Object.entries(shape.entries).map(([key, entry]) => [
      key,
      this.read(entry, own(input, key), own(fallback, key), join(path, key)),
    ]);
    const spoiled = this.problems.slice(before).some((problem) => !problem.note);
    this.leaveOut(Object.keys(input), shape, path);
    // Half of a group that stands or falls as one would be a made-up set of parts.
    if (spoiled && shape.nullMeans !== null) return fallback === undefined ? null : fallback;
    // What isn't known isn't there.
    return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
  }

  private list(shape: ListShape, input: unknown, fallback: unknown, path: string): unknown {
    if (!Array.isArray(input)) {
      this.bad(shape, input, path);
      return fallback === undefined ? shape.default : fallback;
    }
    if (input.length < shape.fewest || input.length > shape.most) {
      const words = sentences.count(called(path, shape), input.length, shape);
      this.problems.push({ path, value: input, words });
    }
    if (input.length < shape.fewest) return fallback === undefined ? shape.default : fallback;
    // Array.from, because map would skip the holes of a list that has some.
    return Array.from(input.slice(0, shape.most), (item, place) => {
      const last: unknown = Array.isArray(fallback) ? fallback[place] : undefined;
      return this.group(shape.of, item, last ?? filled(shape.of), join(path, place));
    });
  }

  private leaveOut(keys: readonly string[], shape: GroupShape, path: string): void {
    for (const key of keys) {
      if (Object.hasOwn(shape.entries, key) || (path === "" && (key === "version" || key === "$schema"))) continue;
      this.strangers += 1;
      if (this.strangers > MOST_NOTES) continue;
      const at = join(path, key);
      this.problems.push({ path: at, value: undefined, words: sentences.unknown(at), note: true });
    }
  }

  /** Ends the reading: tells how many more strangers there were. */
  done(): Problem[] {
    const more = this.strangers - MOST_NOTES;
    if (more > 0) this.problems.push({ path: "", value: undefined, words: sentences.moreUnknown(more), note: true });
    return this.problems;
  }
}

/**
 * Puts fields that don't go together back to those of a machine in which they do: one side of a broken rule where that
 * is enough, both where it isn't. Among these ways the one that leaves the fewest rules broken is taken. Every field
 * that changes is told, once: one that has been put back is never touched again.
 */
function reconciled(machine: Machine, fallback: Machine, problems: Problem[]): Machine {
  const sound = brokenRules(fallback).length === 0 ? fallback : defaultMachine;
  let now = machine;
  for (let broken = brokenRules(now)[0]; broken; broken = brokenRules(now)[0]) {
    const next = mended(now, broken, sound);
    for (const [side, path] of broken.paths.entries()) {
      const value = valueAt(now, path);
      if (!same(value, valueAt(next, path))) problems.push({ path, value, words: broken.words[side] ?? "" });
    }
    now = next;
  }
  return now;
}

/** A machine that keeps a rule it has broken, by the smaller side, the larger one, or both put back. */
function mended(machine: Machine, { paths }: Broken, sound: Machine): Machine {
  const ways = [...paths.map((path) => [path]), paths]
    .map((back) => back.reduce((now, path) => withValue(now, path, lastAt(sound, path)), machine))
    .map((next) => ({ next, rest: brokenRules(next) }))
    .filter(({ rest }) => !rest.some((other) => same(other.paths, paths)));
  return ways.reduce((best, way) => (way.rest.length < best.rest.length ? way : best)).next;
}

/** What a field held last; its default where a machine doesn't have it, such as in a flight mode that is new. */
function lastAt(machine: Machine, path: string): unknown {
  const last = valueAt(machine, path);
  return last === undefined || last === null ? defaultAt(path) : last;
}

const defaultAt = (path: string): unknown => {
  const shape = shapeAt(path);
  return shape ? defaultOf(shape) : undefined;
};

/**
 * Reads any value as a machine. A bad field is reported and takes the value it has in `fallback` (the last good one); a
 * missing field is reported and takes its default; a field that a machine doesn't have is noted and left out; of fields
 * that don't go together as few as will do go back to those of `fallback`, each of them reported. Never throws; the
 * machine is always valid.
 */
export function readMachine(input: unknown, fallback: Machine = defaultMachine): Reading {
  if (!isRecord(input)) {
    return { machine: fallback, problems: [{ path: "", value: input, words: sentences.notAMachine(input) }] };
  }
  const current = migrated(input);
  if (!current.ok) return { machine: fallback, problems: [current.problem] };
  const reader = new Reader();
  const rest = reader.read(machineShape, current.record, fallback, "") as Omit<Machine, "version">;
  const problems = reader.done();
  const machine = reconciled({ version: VERSION, ...rest }, fallback, problems);
  return { machine, problems };
}

/**
 * Checks one value for the place at a dot path, whether field, group or list. Returns the value to put there, or what
 * is wrong with it in words. Rules between fields are not part of it: see `brokenRules`.
 */
export function checkAt(path: string, input: unknown): { ok: true; value: unknown } | { ok: false; problem: Problem } {
  const shape = path.includes("*") ? null : shapeAt(path);
  if (!shape) return { ok: false, problem: { path, value: input, words: sentences.noSuchField(path) } };
  const reader = new Reader();
  const value = reader.read(shape, input, undefined, path);
  const problem = reader.done()[0];
  return problem ? { ok: false, problem: { ...problem, value: problem.value ?? input } } : { ok: true, value };
}
