/** The machine file: JSON, versioned, the same for a page, a person and another program. */
import { machineShape } from "./fields.ts";
import { defaultMachine, type Machine } from "./machine.ts";
import { isLeaf, type Shape } from "./shape.ts";
import { type Problem, type Reading, readMachine } from "./validate.ts";
import { sentences } from "./words.ts";

/** Longer texts are not read at all: a machine takes two thousand characters. */
const LONGEST = 1_000_000;

function ordered(shape: Shape, value: unknown): unknown {
  if (isLeaf(shape) || value === null || value === undefined) return value;
  if (shape.kind === "list") return (value as readonly unknown[]).map((item) => ordered(shape.of, item));
  const held = value as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.entries(shape.entries).map(([key, entry]) => [key, ordered(entry, held[key])]));
}

/** A machine as a plain value with its keys in the order of the file, whatever order they came in. */
export const machineRecord = (machine: Machine): Machine =>
  ({ version: machine.version, ...(ordered(machineShape, machine) as Omit<Machine, "version">) }) as Machine;

/** The text of a machine file: indented JSON, keys always in the same order, ending in a line break. */
export const machineToFileText = (machine: Machine): string => `${JSON.stringify(machineRecord(machine), null, 2)}\n`;

/** A value from a JSON text, or in words why there is none. `what` begins the sentence: "This file", say. */
export function readJson(text: string, what: string): { ok: true; value: unknown } | { ok: false; problem: Problem } {
  const refused = (words: string) => ({ ok: false as const, problem: { path: "", value: undefined, words } });
  if (text.length > LONGEST) return refused(sentences.tooLong(what));
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, "")) };
  } catch {
    return refused(sentences.notJson(what));
  }
}

/**
 * Reads a machine file for a page: what is good is kept, a bad field takes its value in `fallback`, and every problem
 * is told. Never throws; the machine is always valid.
 */
export function readMachineFile(text: string, fallback: Machine = defaultMachine): Reading {
  const json = readJson(text, "This file");
  return json.ok ? readMachine(json.value, fallback) : { machine: fallback, problems: [json.problem] };
}

/**
 * Reads a machine file for a program: it is taken whole or not at all. `notes` tell of fields that a machine doesn't
 * have; they alone are no reason to refuse it.
 */
export function parseMachineFile(
  text: string,
): { ok: true; machine: Machine; notes: Problem[] } | { ok: false; problems: Problem[] } {
  const { machine, problems } = readMachineFile(text);
  const notes = problems.filter((problem) => problem.note);
  return notes.length === problems.length ? { ok: true, machine, notes } : { ok: false, problems };
}
