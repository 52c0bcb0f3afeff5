/** The head of a notebook: what stands between two lines of three hyphens at its very beginning. */
import type { Fault } from "./fault.ts";

export interface Front {
  readonly title: string;
  /** The question that the page answers; it is the page's main heading. */
  readonly question: string;
  /** Reading time. */
  readonly minutes: number;
}

export interface Head {
  readonly front: Front;
  /** The first offset after the head. */
  readonly end: number;
  readonly faults: readonly Fault[];
}

const fields = ["title", "question", "minutes"];

/** Reads the head: each line is `name: words`, nothing else; all three names must be there. */
export function readFront(text: string): Head {
  const whole = /^---\r?\n([\s\S]*?)\r?\n---[ \t]*(?:\r?\n|$)/.exec(text);
  const found = new Map<string, string>();
  const faults: Fault[] = [];
  if (!whole) {
    faults.push({ at: 0, words: "A notebook starts with a line '---', then title, question and minutes, then '---'." });
    return { front: { title: "", question: "", minutes: 0 }, end: 0, faults };
  }
  let at = text.indexOf("\n") + 1;
  for (const line of whole[1]!.split("\n")) {
    const fault = readLine(line.trimEnd(), found);
    if (fault) faults.push({ at, words: fault });
    at += line.length + 1;
  }
  for (const name of fields) {
    if (!found.has(name)) faults.push({ at: 0, words: `The head of the notebook lacks '${name}'.` });
  }
  const minutes = Number(found.get("minutes"));
  const front = { title: found.get("title") ?? "", question: found.get("question") ?? "", minutes };
  return { front, end: whole[0].length, faults };
}

/** Takes up one line; gives what is wrong with it. */
function readLine(line: string, found: Map<string, string>): string | null {
  if (line.trim() === "") return null;
  const [, name, value] = /^(\w+):[ \t]+(\S.*)$/.exec(line) ?? [];
  if (name === undefined || value === undefined) return "A line of the head reads 'name: words'.";
  if (!fields.includes(name)) return `The head has no '${name}': it has ${fields.join(", ")}.`;
  if (found.has(name)) return `The head gives '${name}' twice.`;
  found.set(name, value);
  if (name === "minutes" && !/^[1-9]\d?$/.test(value)) {
    return `'minutes' is a whole number from 1 to 99, not '${value}'.`;
  }
  return null;
}
