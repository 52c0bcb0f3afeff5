/**
 * The reader's choice of units, kept on the device. The record, the quantities and every `data-value` stay in the
 * units of the trade; this changes only what is shown and how a bare number that is typed is meant.
 */
import type { UnitSystem } from "#machine/units";

const KEY = "workbook.units.1";
let current: UnitSystem = "metric";
const listeners = new Set<() => void>();

export function unitsNow(): UnitSystem {
  return current;
}

/** Chooses the units for this page and the next ones. */
export function chooseUnits(units: UnitSystem): void {
  if (units === current) return;
  current = units;
  try {
    localStorage.setItem(KEY, units);
  } catch {
    // Storage may be forbidden: the choice then lasts as long as the page.
  }
  for (const listener of [...listeners]) listener();
}

export function onUnits(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Takes up the choice of an earlier visit. */
export function recallUnits(): void {
  try {
    if (localStorage.getItem(KEY) === "imperial") chooseUnits("imperial");
  } catch {
    // As above.
  }
}
