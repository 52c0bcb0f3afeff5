/** What a machine is called where it is spoken of as a whole. */
import { outgrownDemo } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { en } from "./words/en.ts";

/** Its name; with a word to it where the name is still a demo machine's and the parts aren't. */
export function machineTitle(machine: Machine): string {
  return outgrownDemo(machine) ? en.header.changed(machine.name) : machine.name || en.header.nameless;
}
