/**
 * Every field of the machine record: what it is called, its unit, its limits, where its owner reads it and how wrong
 * it commonly is. The tree below has the order of the machine file; all else about the record follows from it.
 */
import { controller } from "./fields/controller.ts";
import { motor, pack } from "./fields/electric.ts";
import { airframe, modes, place } from "./fields/flying.ts";
import { gears } from "./fields/gears.ts";
import { mainRotor, tailRotor } from "./fields/rotors.ts";
import { type Choice, group, isLeaf, type Leaf, type Shape, type Tolerance, text } from "./shape.ts";

/** The whole record but for its version number. */
export const machineShape = group("Machine", {
  name: text({
    name: "Name of the machine",
    symbol: "",
    max: 80,
    default: "6-cell club trainer",
    read: "Your own word for it.",
  }),
  pack,
  motor,
  controller,
  gears,
  mainRotor,
  tailRotor,
  airframe,
  place,
  modes,
});

/** The parts of a machine; "" for what belongs to the whole of it. */
type PartName = Exclude<keyof typeof machineShape.entries, "name"> | "";

/** One field of the machine record, flat: for inputs, help texts, the schema and the bands. */
export interface Field {
  /** Its dot path; `*` stands for any place in a list. */
  readonly path: string;
  readonly part: PartName;
  readonly kind: Leaf["kind"];
  /** Plain English, as a label. */
  readonly name: string;
  /** TeX, or "". */
  readonly symbol: string;
  /** As shown beside the value, or "". */
  readonly unit: string;
  /** Every reader knows it in this unit, whatever others they use. */
  readonly sameForAll?: boolean;
  readonly choices?: readonly Choice[];
  /** The sensible range: where a slider ends. Equal to the hard limits for choices and text. */
  readonly low: number;
  readonly high: number;
  /** Hard limits of the value; of its length for text. */
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly default: number | string | null;
  /** One sentence: where its owner reads it. */
  readonly read: string;
  /** Standard uncertainty, as a share of the value and/or in the field's own unit; empty when it is exact. */
  readonly tolerance: Tolerance;
  /** Only even numbers. */
  readonly wholeEven?: boolean;
}

/**
 * An input of pages only: the resting voltage of the whole pack, V. It sets `pack.chargePercent` and follows it. Its
 * ends move with the cells: `fieldFor` of `#machine/voltage` gives them for one machine.
 */
export const voltageField: Field = {
  path: "pack.voltage",
  part: "pack",
  kind: "number",
  name: "Resting voltage of the pack",
  symbol: "U",
  unit: "V",
  low: 6,
  high: 60,
  min: 1,
  max: 110,
  step: 0.05,
  default: 25.2,
  read: "A cell checker or voltmeter on the pack, after it has rested for half an hour.",
  tolerance: { relative: 0.003 },
};

function flat(path: string, part: PartName, leaf: Leaf): Field {
  const { kind, name, symbol, read } = leaf;
  const same = { path, part, kind, name, symbol, read, default: leaf.default };
  if (leaf.kind === "text")
    return { ...same, unit: "", low: 0, high: leaf.max, min: 0, max: leaf.max, step: 1, tolerance: {} };
  if (leaf.kind === "choice") {
    const last = leaf.choices.length - 1;
    return { ...same, choices: leaf.choices, unit: "", low: 0, high: last, min: 0, max: last, step: 1, tolerance: {} };
  }
  const { unit, low, high, min, max, step, tolerance } = leaf;
  const even = leaf.kind === "integer" && leaf.wholeEven ? { wholeEven: true } : {};
  const always = leaf.sameForAll ? { sameForAll: true } : {};
  return { ...same, unit, low, high, min, max, step, tolerance, ...even, ...always };
}

function fieldsBelow(shape: Shape, path: string, part: PartName): Field[] {
  if (isLeaf(shape)) return [flat(path, part, shape)];
  if (shape.kind === "list") return fieldsBelow(shape.of, `${path}.*`, part);
  return Object.entries(shape.entries).flatMap(([key, entry]) =>
    fieldsBelow(entry, path ? `${path}.${key}` : key, part || (isLeaf(entry) ? "" : (key as PartName))),
  );
}

/** Every field of the machine file, in the file's order; fields of flight modes have the path `modes.*.…`. */
export const fields: readonly Field[] = fieldsBelow(machineShape, "", "");

const byPath = new Map([...fields, voltageField].map((field) => [field.path, field]));

/** A path with its places in lists replaced by `*`: `modes.2.headRpm` becomes `modes.*.headRpm`. */
export const patternOf = (path: string): string => path.replace(/\.\d+(?=\.|$)/g, ".*");

/** The field at a dot path (`gears.pinionTeeth`, `modes.0.headRpm`, `modes.*.headRpm`), or null for an unknown path. */
export const findField = (path: string): Field | null => byPath.get(patternOf(path)) ?? null;

/** The field at a dot path that is known to exist; throws on a misspelt one, so that an author sees it. */
export function fieldAt(path: string): Field {
  const field = findField(path);
  if (!field) throw new Error(`There is no field "${path}" in a machine.`);
  return path === field.path ? field : { ...field, path };
}

/** The shape at a dot path, whether field, group or list; null for an unknown path. */
export function shapeAt(path: string): Shape | null {
  let shape: Shape = machineShape;
  for (const key of path.split(".")) {
    if (shape.kind === "list" && /^(\*|0|[1-9]\d{0,2})$/.test(key)) shape = shape.of;
    else if (shape.kind === "group" && Object.hasOwn(shape.entries, key)) shape = shape.entries[key] as Shape;
    else return null;
  }
  return shape;
}
