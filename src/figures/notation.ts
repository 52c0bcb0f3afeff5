/** The notation of a figure: a relation with the reader's own numbers in it, and where these come from. */
import type { Relation, Term, Texts } from "#model/relation";
import { catalogue, type QuantityName } from "./catalogue.ts";

/** One quantity that went in: its value as shown, and where the reader changes it. */
export interface WorkedTerm {
  readonly name: string;
  readonly symbol: string;
  readonly value: number;
  readonly unit: string;
  /** The field it comes from, or the figure; null for what is worked out on the way. */
  readonly path: string | null;
  readonly quantity: QuantityName | null;
}

export interface Worked {
  readonly title: string;
  /** TeX: the general formula, and the same from strings of the terms' values and of the result. */
  readonly general: string;
  readonly withNumbers: (texts: Readonly<Record<string, string>>, result: string) => string;
  readonly terms: Readonly<Record<string, WorkedTerm>>;
  readonly assumes: string;
  readonly source: string;
}

/** A value as shown, with the field or figure that it comes from. */
export type From = readonly [value: number, unit: string, path?: string | QuantityName];

/**
 * Notes a relation down with the values of its terms. Every term must be given: a missing or misspelt one is a type error.
 * Units: each value says its own. Errors: none. Source: the relation's.
 */
export function worked<T extends Readonly<Record<string, Term>>>(
  name: QuantityName,
  relation: Relation<T, unknown>,
  from: { readonly [K in keyof T]: From },
): Worked {
  const terms = Object.fromEntries(
    Object.entries(relation.terms).map(([key, { name: termName, symbol }]): [string, WorkedTerm] => {
      const [value, unit, origin = null] = from[key as keyof T];
      const isFigure = origin !== null && Object.hasOwn(catalogue, origin);
      const quantity = isFigure ? (origin as QuantityName) : null;
      return [key, { name: termName, symbol, value, unit, path: isFigure ? null : origin, quantity }];
    }),
  );
  return {
    title: catalogue[name].title,
    general: relation.general,
    withNumbers: (texts, result) => relation.formula(texts as Texts<T>, result),
    terms,
    assumes: relation.assumes,
    source: relation.source,
  };
}
