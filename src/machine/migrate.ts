/** Records of other versions: older ones are brought up to date step by step, newer ones are refused in words. */
import { VERSION } from "./machine.ts";
import type { Problem } from "./validate.ts";
import { sentences } from "./words.ts";

type Fields = Readonly<Record<string, unknown>>;

/**
 * One step for each version that has been superseded: `steps[1]` turns a record of version 1 into one of version 2.
 * There is none yet. A step takes anything, because the record has not been checked when it runs.
 */
const steps: Readonly<Record<number, (old: Fields) => Fields>> = {};

/** Brings a record of any known version to the present one, or says in words why it can't. */
export function migrated(
  record: Fields,
  present: number = VERSION,
  chain: Readonly<Record<number, (old: Fields) => Fields>> = steps,
): { ok: true; record: Fields } | { ok: false; problem: Problem } {
  const refused = (words: string) => ({ ok: false as const, problem: { path: "version", value: version, words } });
  const version = Object.hasOwn(record, "version") ? record.version : undefined;
  if (version === undefined) return refused(sentences.noVersion(present));
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return refused(sentences.badVersion(version, present));
  }
  if (version > present) return refused(sentences.newerVersion(version, present));
  let current = record;
  for (let from = version; from < present; from++) {
    const step = chain[from];
    if (!step) return refused(sentences.badVersion(version, present));
    current = { ...step(current), version: from + 1 };
  }
  return { ok: true, record: current };
}
