/**
 * The machine that the reader has pinned, to see the next change against it. It is kept on the device, over reloads and
 * across pages, and is no part of a link or a file.
 */
import { readLink, writeLink } from "#machine/link";
import type { Machine } from "#machine/machine";

const KEY = "workbook.pin.1";
let pinned: Machine | null = null;
const listeners = new Set<() => void>();

export function pinNow(): Machine | null {
  return pinned;
}

/** Pins a machine in place of the last one, or with null takes the pin away. */
export function pin(machine: Machine | null): void {
  if (machine === pinned) return;
  pinned = machine;
  try {
    if (machine) localStorage.setItem(KEY, writeLink({ now: machine }));
    else localStorage.removeItem(KEY);
  } catch {
    // Storage may be forbidden or full: the pin then lasts as long as the page.
  }
  for (const listener of [...listeners]) listener();
}

export function onPin(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Takes up the pin of an earlier visit. One that can't be read whole is none. */
export function recallPin(): void {
  try {
    const kept = localStorage.getItem(KEY);
    const reading = kept === null ? null : readLink(kept);
    pinned = reading?.problems.length === 0 ? reading.now : null;
  } catch {
    pinned = null;
  }
}
