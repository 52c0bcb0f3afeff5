/**
 * The machine record: its type and its schema, both made from the one table of fields.
 */
import * as v from "valibot";
import { machineShape } from "./fields.ts";
import { defaultOf, type GroupShape, isLeaf, type Leaf, type Shape, type ValuesOf } from "./shape.ts";

/** The version of the record that this workbook writes. */
export const VERSION = 1;

type Pass<T> = v.GenericSchema<T>;

/** Neither control characters nor halves of characters: what a name may not hold. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029]/u;

function leafSchema(leaf: Leaf): Pass<unknown> {
  const facts = {
    title: leaf.name,
    description: leaf.read,
    default: leaf.default,
    ...("unit" in leaf && leaf.unit ? { "x-unit": leaf.unit } : {}),
  };
  switch (leaf.kind) {
    case "text":
      return v.pipe(
        v.string(),
        v.check((text) => [...text].length <= leaf.max),
        v.check((text) => !UNPRINTABLE.test(text)),
        v.metadata({ ...facts, maxLength: leaf.max }),
      );
    case "choice":
      return v.pipe(v.picklist(leaf.choices.map((choice) => choice.value)), v.metadata(facts));
    case "nullable number":
      return v.pipe(v.nullable(v.pipe(v.number(), v.minValue(leaf.min), v.maxValue(leaf.max))), v.metadata(facts));
    case "integer": {
      const count = v.pipe(v.number(), v.integer(), v.minValue(leaf.min), v.maxValue(leaf.max), v.metadata(facts));
      return leaf.wholeEven ? v.pipe(count, v.multipleOf(2)) : count;
    }
    default:
      return v.pipe(v.number(), v.minValue(leaf.min), v.maxValue(leaf.max), v.metadata(facts));
  }
}

/** A field whose owner may have nothing to say needn't be written at all. */
function entrySchema(entry: Shape): Pass<unknown> {
  if (entry.kind === "group" && entry.absentMeans !== undefined) return v.optional(schemaOf(entry));
  const open = entry.kind === "nullable number" || (entry.kind === "group" && entry.nullMeans !== null);
  return open ? v.optional(schemaOf(entry), null) : schemaOf(entry);
}

function groupSchema(group: GroupShape): Pass<unknown> {
  const entries = Object.entries(group.entries).map(([key, entry]) => [key, entrySchema(entry)] as const);
  const whole = v.object(Object.fromEntries(entries));
  if (group.nullMeans === null) return v.pipe(whole, v.title(group.name));
  const nullMeans = `null: ${group.nullMeans}`;
  const titled = v.pipe(v.nullable(whole), v.title(group.name));
  return group.absentMeans === undefined
    ? v.pipe(titled, v.description(nullMeans), v.metadata({ default: null }))
    : v.pipe(titled, v.description(`${nullMeans}; missing: ${group.absentMeans}`));
}

const made = new WeakMap<Shape, Pass<unknown>>();

/** The schema of any part of the record: what the validator asks of it, cross-field rules aside. */
export function schemaOf(shape: Shape): Pass<unknown> {
  const known = made.get(shape);
  if (known) return known;
  let schema: Pass<unknown>;
  if (isLeaf(shape)) schema = leafSchema(shape);
  else if (shape.kind === "group") schema = groupSchema(shape);
  else {
    const items = v.array(schemaOf(shape.of));
    schema = v.pipe(items, v.minLength(shape.fewest), v.maxLength(shape.most), v.title(shape.name));
  }
  made.set(shape, schema);
  return schema;
}

const entries = Object.fromEntries(Object.entries(machineShape.entries).map(([key, entry]) => [key, schemaOf(entry)]));

/** The schema of the whole record, as it stands in a machine file. */
export const machineSchema = v.object({
  version: v.pipe(v.literal(VERSION), v.title("Version of the record")),
  ...entries,
}) as unknown as Pass<{ readonly version: typeof VERSION } & ValuesOf<typeof machineShape.entries>>;

/** One machine: pack, motor, controller, gears, rotors, airframe, place and flight modes. Never changed in place. */
export type Machine = v.InferOutput<typeof machineSchema>;

/** One flight mode of a machine. */
export type FlightMode = Machine["modes"][number];

/** The parts that a learned reference belongs to. */
export type FittedParts = NonNullable<Machine["controller"]["learned"]["fittedWith"]>;

/** The machine that is on the bench before anybody has changed anything: every field at its default. */
export const defaultMachine: Machine = { version: VERSION, ...defaultOf(machineShape) };

/** The parts of a machine that a reference learned now would belong to. */
export function fittedNow(machine: Machine): FittedParts {
  const { pack, motor, gears, mainRotor } = machine;
  return {
    cells: pack.cells,
    chemistry: pack.chemistry,
    kvRpmPerVolt: motor.kvRpmPerVolt,
    pinionTeeth: gears.pinionTeeth,
    mainTeeth: gears.mainTeeth,
    bladeCount: mainRotor.blades,
    diameterMm: mainRotor.diameterMm,
    chordMm: mainRotor.chordMm,
    secondStage: gears.secondStage,
  };
}
