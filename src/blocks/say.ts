/** Short texts from a machine, for the prose. */
import { modeName } from "#figures/mode-name";
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { formatValue } from "#view/format";

export const say = {
  /** The charge of the pack: `100 %`. */
  charge: ({ pack }: Machine): string => formatValue(pack.chargePercent, "percent", { decimals: 0 }),
  /** A value in a unit of the record, in the reader's units; the decimals are those of its own unit. */
  value: (value: number | null, unit: string, decimals?: number): string =>
    formatValue(value, unit, decimals === undefined ? {} : { decimals }),
  /** How far to stand from a machine, m. It takes the machine so that it's said anew when the reader's units change. */
  away: (_: Machine, metres: number): string => formatValue(metres, "m"),
  /** The name of a flight mode. */
  mode: (machine: Machine, mode: number): string => modeName(machine, mode),
  /** What a field is called. */
  field: (path: string): string => fieldAt(path).name,
} as const;
