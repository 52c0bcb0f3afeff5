/** What the reader can do with the whole machine: share it, save it, open one, go back to a demo. */
import type { Bench } from "#machine/bench";
import { machineToFileText, readMachineFile } from "#machine/file";
import { writeLink } from "#machine/link";
import type { Machine } from "#machine/machine";
import { en } from "#view/words/en";
import { say, sayQuietly, settle } from "./messages.ts";

/** The address of this page with the machines of the bench in it. */
export function linkOf({ now, whatIf }: Pick<Bench, "now" | "whatIf">, address: string): string {
  return `${address.replace(/#.*$/, "")}#${writeLink({ now, whatIf })}`;
}

/** Copies a link to this page with the machines in it; shows it as well, for where copying is forbidden. */
export async function share(bench: Bench, doc: Document): Promise<void> {
  const link = linkOf(bench, doc.location.href);
  let copied = true;
  try {
    await doc.defaultView!.navigator.clipboard.writeText(link);
  } catch {
    copied = false;
  }
  const words = copied ? en.messages.copied : en.messages.copyYourself;
  say({ kind: "result", subject: "share", words, copy: link });
}

/** A file name that every system takes. */
export function fileName(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
  return `${plain || "machine"}.json`;
}

/** Gives the machine as a file. */
export function save(machine: Machine, doc: Document): void {
  const url = URL.createObjectURL(new Blob([machineToFileText(machine)], { type: "application/json" }));
  const anchor = doc.createElement("a");
  anchor.href = url;
  anchor.download = fileName(machine.name);
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  say({ kind: "result", subject: "file", words: en.messages.saved(anchor.download) });
}

/** Puts the machine of a file's text on the bench; tells what could not be read of it. */
export function openText(bench: Bench, text: string): void {
  const { machine, problems } = readMachineFile(text, bench.now);
  const points = problems.map(({ words }) => words);
  const nothing = problems.some(({ path }) => path === "" || path === "version") && machine === bench.now;
  if (nothing) {
    say({ kind: "problem", subject: "file", words: en.messages.fileLost, points });
    return;
  }
  bench.replace(machine, bench.whatIf);
  if (points.length > 0) say({ kind: "problem", subject: "file", words: en.messages.fileProblems, points });
  else say({ kind: "result", subject: "file", words: en.messages.opened(machine.name) });
}

/** Puts a demo machine on the bench, alone. What the message says of undo is true until the next change. */
export function toDemo(bench: Bench, demo: Machine): void {
  bench.replace(demo, null);
  say({ kind: "result", subject: "demo", words: en.messages.demo(demo.name) });
  const stop = bench.subscribe(() => {
    stop();
    settle("demo");
  });
}

/** Goes one step back, and says so to those who can't see it. */
export function undo(bench: Bench): void {
  if (bench.undo()) sayQuietly(en.messages.undone);
}

/** Goes one step forward again. */
export function redo(bench: Bench): void {
  if (bench.redo()) sayQuietly(en.messages.redone);
}
