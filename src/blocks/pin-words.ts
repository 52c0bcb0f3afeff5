/** What a pinned machine has that the machine now has not, in as few words as a label on a plot has room for. */
import { modeName } from "#figures/mode-name";
import { fieldAt, shapeAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { changedBetween, valueAt } from "#machine/paths";
import { formatNumber, formatValue } from "#view/format";
import { en } from "#view/words/en";
import { enPins } from "#view/words/en-pins";

/** More changes than this are only counted. */
const MOST = 2;

function valueWords(path: string, value: unknown): string {
  if (typeof value === "string") return fieldAt(path).choices?.find((choice) => choice.value === value)?.name ?? value;
  if (typeof value !== "number") return enPins.none;
  const { unit, step } = fieldAt(path);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  if (unit === "teeth") return enPins.teeth(formatNumber(value));
  const tidy = Number(value.toFixed(decimals));
  return formatValue(tidy, unit, { decimals: Number.isInteger(tidy) ? 0 : decimals });
}

function changeWords(pinned: Machine, path: string): string {
  const value = valueAt(pinned, path);
  if (path === "modes") return enPins.modes(pinned.modes.length);
  if (path === "gears.pinionTeeth") return valueWords(path, value);
  const shape = shapeAt(path);
  // Of a group that came or went, its name says enough.
  if (shape?.kind === "group") return shape.name.toLowerCase();
  const [list, place] = path.split(".");
  if (list === "modes" && path.endsWith("headRpm"))
    return enPins.part(modeName(pinned, Number(place)), valueWords(path, value));
  return enPins.part(en.panel.short[path] ?? fieldAt(path).name.toLowerCase(), valueWords(path, value));
}

/** The pinned machine by what it has other than the one now: `14 t`; empty where there is nothing. */
export function pinnedAs(now: Machine, pinned: Machine): string {
  const paths = changedBetween(now, pinned).filter((path) => path !== "name");
  if (paths.length === 0) return "";
  if (paths.length > MOST)
    return pinned.name !== now.name && pinned.name !== "" ? pinned.name : enPins.many(paths.length);
  const [one = "", other] = paths.map((path) => changeWords(pinned, path));
  return other === undefined ? one : enPins.two(one, other);
}
