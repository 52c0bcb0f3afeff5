/**
 * The few shapes that a machine record is made of. The tables of fields are written in them; the record's type, its
 * schema, its validator, its file and its link all follow from the one tree that they form.
 */

/** How wrong a value commonly is: a standard uncertainty, as a share of the value and/or in the field's own unit. */
export interface Tolerance {
  readonly relative?: number;
  readonly absolute?: number;
}

interface Described {
  /** Plain English, as a label. */
  readonly name: string;
  /** TeX; empty where no formula uses it. */
  readonly symbol: string;
  /** One sentence: where the machine's owner reads it. */
  readonly read: string;
}

interface Measured extends Described {
  /** As shown beside the value; empty for counts and ratios. */
  readonly unit: string;
  /** Every reader knows it in this unit, whatever others they use. */
  readonly sameForAll?: boolean;
  /** The sensible range: where a slider ends. */
  readonly low: number;
  readonly high: number;
  /** Hard limits: nothing beyond them is taken. */
  readonly min: number;
  readonly max: number;
  /** One step of a slider or stepper. A value between two steps is allowed. */
  readonly step: number;
  readonly tolerance: Tolerance;
}

export interface NumberShape extends Measured {
  readonly kind: "number";
  readonly default: number;
}

export interface IntegerShape extends Measured {
  readonly kind: "integer";
  readonly default: number;
  /** Only even numbers: magnets come in pairs. */
  readonly wholeEven?: boolean;
}

export interface NullableNumberShape extends Measured {
  readonly kind: "nullable number";
  readonly default: number | null;
}

export interface Choice<C extends string = string> {
  readonly value: C;
  readonly name: string;
}

export interface ChoiceShape<C extends string = string> extends Described {
  readonly kind: "choice";
  readonly choices: readonly Choice<C>[];
  readonly default: C;
}

export interface TextShape extends Described {
  readonly kind: "text";
  /** Longest text, in characters (code points). */
  readonly max: number;
  readonly default: string;
}

/** A single value: a field. */
export type Leaf = NumberShape | IntegerShape | NullableNumberShape | ChoiceShape | TextShape;

export interface GroupShape<E extends Entries = Entries> {
  readonly kind: "group";
  readonly name: string;
  /** Whether the whole group may be null, and what that means. */
  readonly nullMeans: string | null;
  /** Only where the group came later than the records that may lack it: what its absence means, which then isn't null. */
  readonly absentMeans?: string;
  readonly entries: E;
}

export interface ListShape<E extends Entries = Entries> {
  readonly kind: "list";
  readonly name: string;
  readonly fewest: number;
  readonly most: number;
  readonly of: GroupShape<E>;
  readonly default: readonly unknown[];
}

export type Shape = Leaf | GroupShape | ListShape;

export interface Entries {
  readonly [key: string]: Shape;
}

/** The type of the values that a shape holds. */
export type ValueOf<S> =
  S extends ChoiceShape<infer C>
    ? C
    : S extends TextShape
      ? string
      : S extends NullableNumberShape
        ? number | null
        : S extends NumberShape | IntegerShape
          ? number
          : S extends LaterGroupShape<infer E>
            ? ValuesOf<E> | null | undefined
            : S extends NullableGroupShape<infer E>
              ? ValuesOf<E> | null
              : S extends GroupShape<infer E>
                ? ValuesOf<E>
                : S extends ListShape<infer E>
                  ? readonly ValuesOf<E>[]
                  : never;

export type ValuesOf<E> = { readonly [K in keyof E]: ValueOf<E[K]> };

export interface NullableGroupShape<E extends Entries = Entries> extends GroupShape<E> {
  readonly nullMeans: string;
}

export interface LaterGroupShape<E extends Entries = Entries> extends NullableGroupShape<E> {
  readonly absentMeans: string;
}

export interface WholeGroupShape<E extends Entries = Entries> extends GroupShape<E> {
  readonly nullMeans: null;
}

type Given<S> = Omit<S, "kind">;

/** A field that holds any number between its limits. */
export const real = (given: Given<NumberShape>): NumberShape => ({ kind: "number", ...given });

/** A field that holds a count. */
export const whole = (given: Given<IntegerShape>): IntegerShape => ({ kind: "integer", ...given });

/** A field that holds a number, or null where its owner has none. */
export const realOrNull = (given: Given<NullableNumberShape>): NullableNumberShape => ({
  kind: "nullable number",
  ...given,
});

/** A field that holds one of a few words. */
export const choice = <const C extends string>(given: Given<ChoiceShape<C>>): ChoiceShape<C> => ({
  kind: "choice",
  ...given,
});

/** A field that holds free text of at most `max` characters. */
export const text = (given: Given<TextShape>): TextShape => ({ kind: "text", ...given });

/** Fields that belong together. */
export const group = <E extends Entries>(name: string, entries: E): WholeGroupShape<E> => ({
  kind: "group",
  name,
  nullMeans: null,
  entries,
});

/** Fields that are there together or not at all; `nullMeans` says what null stands for. */
export const groupOrNull = <E extends Entries>(name: string, nullMeans: string, entries: E): NullableGroupShape<E> => ({
  kind: "group",
  name,
  nullMeans,
  entries,
});

/** The same of a group that came later: older records don't have it, and `absentMeans` says what that stands for. */
export const groupOrAbsent = <E extends Entries>(
  name: string,
  means: { readonly null: string; readonly absent: string },
  entries: E,
): LaterGroupShape<E> => ({ ...groupOrNull(name, means.null, entries), absentMeans: means.absent });

/** A list of like groups. */
export const list = <E extends Entries>(
  name: string,
  [fewest, most]: readonly [number, number],
  of: GroupShape<E>,
  first: readonly ValuesOf<E>[],
): ListShape<E> => ({ kind: "list", name, fewest, most, of, default: first });

/** Whether a shape is a single value: a field. */
export const isLeaf = (shape: Shape): shape is Leaf => shape.kind !== "group" && shape.kind !== "list";

/** The value that a shape has where nothing is said: null for a group that may be null, or that it isn't there at all. */
export function defaultOf<S extends Shape>(shape: S): ValueOf<S> {
  const value = (any: Shape): unknown => {
    if (any.kind === "list") return any.default;
    if (any.kind !== "group") return any.default;
    if (any.nullMeans === null) return filled(any);
    return any.absentMeans === undefined ? null : undefined;
  };
  return value(shape) as ValueOf<S>;
}

/** A group with every field at its default, also where the group itself may be null. */
export function filled<E extends Entries>(shape: GroupShape<E>): ValuesOf<E> {
  return Object.fromEntries(
    Object.entries(shape.entries).map(([key, entry]) => [key, defaultOf(entry)]),
  ) as ValuesOf<E>;
}
