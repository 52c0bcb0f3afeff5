/**
 * The reader's choice of units, kept on the device. The record, the quantities and every `data-value` stay in the
 * units of the trade; this changes only what is shown and how a bare number that is typed is meant.
 */
import { sayIn, type UnitSystem, unitsNow } from "#machine/units";

export { unitsNow } from "#machine/units";

const KEY = "workbook.units.1";
const listeners = new Set<() => void>();

/** Chooses the units for this page and the next ones. */
export function chooseUnits(units: UnitSystem): void {
  if (units === unitsNow()) return;
  sayIn(units);
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
