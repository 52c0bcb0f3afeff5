/**
 * A machine in a link: short, in letters that chats and mail leave alone, told as its differences from a demo machine.
 * A link that was cut or damaged gives what can be read of it, and says so.
 */
import { demos } from "./demos.ts";
import { marks } from "./link/codes.ts";
import { applyDifference, type Item, writeDifference } from "./link/difference.ts";
import { checksum, readText, writeText } from "./link/text.ts";
import type { Machine } from "./machine.ts";
import { type Problem, readMachine } from "./validate.ts";
import { sentences } from "./words.ts";

/** What a link can carry beside machines: plain data. */
type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
export type Extras = Readonly<Record<string, Json>>;

export interface Linked {
  readonly now: Machine;
  readonly whatIf?: Machine | null;
  /** The state of a page: an exercise's seed, say. */
  readonly extras?: Extras;
}

/** What could be read of a link. */
export interface LinkReading {
  /** Null when nothing at all could be read. */
  readonly now: Machine | null;
  readonly whatIf: Machine | null;
  readonly extras: Extras;
  readonly problems: Problem[];
}

const LINK_VERSION = "1";

/**
 * The machines that a link can start from, by letter, in the order of `demos`, which only ever grows at its end. For
 * good: a letter never gets another machine.
 */
const bases: ReadonlyMap<string, Machine> = new Map(demos.map((demo, i) => ["abcdefghijklm".charAt(i), demo]));

const LONGEST = 100_000;
const CHECK_LENGTH = 7;

/** Shortest way to tell a machine: the letter of the demo that is nearest, and what differs from it. */
function nearest(machine: Machine): string {
  const ways = [...bases].map(([letter, base]) => letter + writeDifference(base, machine));
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
}

/** The fragment of a link (without `#`) that carries machines and extras: `m=1a…`. Always the same for the same. */
export function writeLink({ now, whatIf = null, extras = {} }: Linked): string {
  let body = LINK_VERSION + nearest(now);
  if (whatIf) body += marks.whatIf + writeDifference(now, whatIf);
  if (Object.keys(extras).length > 0) body += marks.extras + writeText(JSON.stringify(extras));
  return `m=${body}${marks.check}${checksum(body)}`;
}

/** Undoes what chats and mail do to a link: line breaks, invisible signs, percent signs for letters. */
function cleaned(text: string): string {
  let clean = text.replace(/[\s\u00AD\u200B-\u200F\u2060\uFEFF]/g, "");
  for (let round = 0; round < 2; round++) {
    clean = clean.replace(/%([0-7][0-9A-Fa-f])/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
  }
  return clean.replace(/[\s\p{Cc}]/gu, "");
}

const nothing = (words: string, value?: unknown): LinkReading => ({
  now: null,
  whatIf: null,
  extras: {},
  problems: [{ path: "", value, words }],
});

const told = (words: string): Problem => ({ path: "", value: undefined, words });

/** Takes a body apart: its fields up to the checksum, and what is wrong with it. */
function items(body: string): { all: Item[]; problem: Problem | null } {
  const at = body.search(new RegExp(`${marks.check}[0-9a-z]{${CHECK_LENGTH}}`));
  const whole = at >= 0;
  const content = whole ? body.slice(0, at) : body;
  const all = [...content.slice(2).matchAll(/([A-Z]{2})([^A-Z]*)/g)].map(([, code = "", written = ""]) => ({
    code,
    written,
  }));
  if (whole) {
    const check = body.slice(at + marks.check.length, at + marks.check.length + CHECK_LENGTH);
    return { all, problem: check === checksum(content) ? null : told(sentences.linkDamaged()) };
  }
  // The last field of a link that was cut may be cut itself: 1120 and 112 look equally good.
  return { all: all.slice(0, -1), problem: told(sentences.linkCut()) };
}

function readExtras(item: Item | undefined, problems: Problem[]): Extras {
  if (!item) return {};
  try {
    const value: unknown = JSON.parse(readText(item.written) ?? "");
    if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Extras;
  } catch {
    // Told below, as for a value of another kind.
  }
  problems.push(told(sentences.linkExtras()));
  return {};
}

/**
 * Reads a link, a fragment or a text with one in it. Null when there is none. Never throws: what can't be read is told
 * in words, and the good parts are kept.
 */
export function readLink(text: string): LinkReading | null {
  if (text.length > LONGEST) return nothing(sentences.linkTooLong());
  const found = /(?:^|[#?&])m=([0-9A-Za-z.-]*)/.exec(cleaned(text));
  if (!found) return null;
  const body = found[1] ?? "";
  const version = /^\d+/.exec(body)?.[0];
  if (version === undefined) return nothing(sentences.linkAlien());
  if (version !== LINK_VERSION)
    return nothing(Number(version) > Number(LINK_VERSION) ? sentences.linkNewer() : sentences.linkAlien());
  const base = bases.get(body.charAt(1));
  if (!base) return nothing(sentences.linkAlien());

  const { all, problem } = items(body);
  const problems = problem ? [problem] : [];
  const isMark = (mark: string) => (item: Item) => item.code === mark;
  const extras = readExtras(all.find(isMark(marks.extras)), problems);
  const machines = all.filter((item) => !isMark(marks.extras)(item) && !isMark(marks.check)(item));
  const split = machines.findIndex(isMark(marks.whatIf));
  const read = (from: Machine, changes: readonly Item[]): Machine => {
    const raw = applyDifference(from, changes);
    const reading = readMachine(raw.record, from);
    problems.push(...raw.problems, ...reading.problems);
    return reading.machine;
  };
  const now = read(base, split < 0 ? machines : machines.slice(0, split));
  const whatIf = split < 0 ? null : read(now, machines.slice(split + 1));
  return { now, whatIf, extras, problems };
}
