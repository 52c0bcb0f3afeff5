/** A figure of a gearing as it is told: on the map, in its table, in the comparison. */
import { type GearQuantity, gearUnits } from "#figures/gearing";
import { formatValue } from "#view/format";
import { enGearMap as en } from "#view/words/en-gear-map";

/** A value with its unit, or the words that there is none. */
export function sayGear(quantity: GearQuantity, value: number | null): string {
  return formatValue(value, gearUnits[quantity], {
    none: en.cannot,
    signed: quantity === "room",
    ...(quantity === "throttle" || quantity === "tip" ? { decimals: 0 } : {}),
  });
}
