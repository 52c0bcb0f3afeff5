/** What must hold between the fields of one machine, each of which is allowed by itself. */
import { fieldAt } from "./fields.ts";
import type { Machine } from "./machine.ts";
import { valueAt } from "./paths.ts";
import { inSentence, together, withUnit } from "./words.ts";

/** A rule that a machine breaks: the fields that it is about, and what is wrong in words, once for each of them. */
export interface Broken {
  readonly paths: readonly string[];
  /** The same fault told from the side of each path, in the same order. */
  readonly words: readonly string[];
}

/** `less` times its factor must be smaller than `more` times its own. The factor is named where it isn't 1. */
interface Order {
  readonly less: string;
  readonly more: string;
  /** Part of `more` that `less` must stay below, and of which it is said in words: half a diameter is a radius. */
  readonly half?: boolean;
}

const orders: readonly Order[] = [
  { less: "controller.usableLowPercent", more: "controller.usableHighPercent" },
  { less: "mainRotor.rootCutoutMm", more: "mainRotor.bladeCentreMm" },
  { less: "mainRotor.bladeCentreMm", more: "mainRotor.diameterMm", half: true },
  { less: "mainRotor.chordMm", more: "mainRotor.diameterMm", half: true },
  { less: "tailRotor.chordMm", more: "tailRotor.diameterMm", half: true },
  { less: "tailRotor.diameterMm", more: "mainRotor.diameterMm" },
  { less: "controller.learned.fittedWith.chordMm", more: "controller.learned.fittedWith.diameterMm", half: true },
];

const modeOrder = (place: number): Order => ({
  less: `modes.${place}.collectiveMinDeg`,
  more: `modes.${place}.collectiveMaxDeg`,
});

/** The name of a field as it is said in a message: with the number of its flight mode, where it has one. */
export function nameOf(path: string): string {
  const place = /^modes\.(\d+)\./.exec(path)?.[1];
  const { name } = fieldAt(path);
  return place === undefined ? name : `Flight mode ${Number(place) + 1}, ${inSentence(name)}`;
}

const inWords = (path: string): string => `the ${inSentence(fieldAt(path).name)}`;

function brokenBy(machine: Machine, { less, more, half }: Order): Broken | null {
  const low = valueAt(machine, less);
  const high = valueAt(machine, more);
  if (typeof low !== "number" || typeof high !== "number") return null;
  if (low < (half ? high / 2 : high)) return null;
  const lowText = withUnit(low, fieldAt(less).unit);
  const highText = withUnit(high, fieldAt(more).unit);
  const halfText = withUnit(high / 2, fieldAt(more).unit);
  return {
    paths: [less, more],
    words: [
      half
        ? together.below(nameOf(less), lowText, `half of ${inWords(more)}`, halfText)
        : together.below(nameOf(less), lowText, inWords(more), highText),
      half
        ? together.above(nameOf(more), highText, `twice ${inWords(less)}`, withUnit(low * 2, fieldAt(less).unit))
        : together.above(nameOf(more), highText, inWords(less), lowText),
    ],
  };
}

/** Every rule between fields that a machine breaks; none for a machine that can be built. */
export function brokenRules(machine: Machine): Broken[] {
  const all = [...orders, ...machine.modes.map((_, place) => modeOrder(place))];
  return all.flatMap((order) => brokenBy(machine, order) ?? []);
}
