/** Random values for property tests of the machine record: any valid machine, and any JSON at all. */
import fc from "fast-check";
import { machineShape } from "#machine/fields";
import { defaultMachine, type Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { filled, isLeaf, type Shape } from "#machine/shape";

const finite = (min: number, max: number) =>
  fc.oneof(
    fc.double({ min, max, noNaN: true }).map((value) => value + 0),
    fc.integer({ min: Math.ceil(min), max: Math.floor(Math.max(max, Math.ceil(min))) }).filter((n) => n <= max),
    fc.constantFrom(min, max),
  );

/** One line of text as a name may hold it, of at most `max` characters, emoji and accents among them. */
const line = (max: number) =>
  fc
    .string({ unit: "grapheme", maxLength: 24 })
    .filter((text) => [...text].length <= max && !/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(text));

function valueFor(shape: Shape): fc.Arbitrary<unknown> {
  if (shape.kind === "group") {
    const whole = fc
      .record(Object.fromEntries(Object.entries(shape.entries).map(([k, entry]) => [k, valueFor(entry)])))
      .map((all) => Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)));
    if (shape.nullMeans === null) return whole;
    return shape.absentMeans === undefined ? fc.option(whole) : fc.oneof(whole, fc.constantFrom(null, undefined));
  }
  if (shape.kind === "list") {
    return fc.array(valueFor(shape.of), { minLength: shape.fewest, maxLength: shape.most });
  }
  if (shape.kind === "text") return line(shape.max);
  if (shape.kind === "choice") return fc.constantFrom(...shape.choices.map((choice) => choice.value));
  if (shape.kind === "nullable number") return fc.option(finite(shape.min, shape.max));
  if (shape.kind === "number") return finite(shape.min, shape.max);
  const count = fc.integer({ min: shape.min, max: shape.max });
  return shape.wholeEven ? count.map((n) => n - (n % 2)) : count;
}

/** Puts broken pairs back to their defaults, so that the machine keeps every rule. */
function kept(machine: Machine): Machine {
  let now = machine;
  for (const { paths } of brokenRules(machine)) {
    for (const path of paths) {
      const keys = path.split(".");
      const mode = keys[0] === "modes" ? (filled(machineShape.entries.modes.of) as Record<string, unknown>) : null;
      const fitted = keys[2] === "fittedWith" ? { diameterMm: 970, chordMm: 42 }[keys[3] as "chordMm"] : null;
      const usual = keys.reduce<unknown>((at, key) => (at as Record<string, unknown> | null)?.[key], defaultMachine);
      now = withValue(now, path, mode ? mode[keys[2] as string] : (fitted ?? usual));
    }
  }
  return brokenRules(now).length === 0 ? now : kept(now);
}

/** Any machine that can be built. */
export const anyMachine: fc.Arbitrary<Machine> = valueFor(machineShape).map((rest) =>
  kept({ version: 1, ...(rest as object) } as Machine),
);

/** A value that fits a field, or one that does not. */
export const anyValueFor = (shape: Shape): fc.Arbitrary<unknown> =>
  isLeaf(shape)
    ? fc.oneof(valueFor(shape), fc.jsonValue(), fc.constantFrom(Number.NaN, 1e308, -1, ""))
    : fc.jsonValue();
