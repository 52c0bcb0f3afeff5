/** A relation and its notation in one piece, so that what a page writes can't drift from what the code computes. */

/** One quantity that goes into a relation. `symbol` is TeX; `unit` is the SI unit, "" for a plain number. */
export interface Term {
  readonly name: string;
  readonly symbol: string;
  readonly unit: string;
}

type Terms = Readonly<Record<string, Term>>;
export type Values<T extends Terms> = { readonly [K in keyof T]: number };
export type Texts<T extends Terms> = { readonly [K in keyof T]: string };

interface Described<T extends Terms> extends Term {
  readonly terms: T;
  /** Where the relation is published, or 'definition'. */
  readonly source: string;
  /** What must hold for it to be true, in a sentence. */
  readonly assumes: string;
  /** Where it may be used, in words, if that is less than everywhere. */
  readonly range?: string;
}

interface Definition<T extends Terms, R> extends Described<T> {
  /** The right-hand side in TeX, from the terms' own strings. */
  readonly formula?: (t: Texts<T>) => string;
  /** In place of `formula`: the whole equation, where the result is the solution of one. */
  readonly equation?: (t: Texts<T>, result: string) => string;
  readonly of: (values: Values<T>) => R;
}

/** A relation: called with the values of its terms, in SI, it gives the result in `unit`. */
export interface Relation<T extends Terms = Terms, R = number> extends Described<T> {
  (values: Values<T>): R;
  /** The terms' symbols. */
  readonly symbols: Texts<T>;
  /** TeX. With symbols the general formula; with a reader's numbers and result, the same with these in it. */
  readonly formula: (texts: Texts<T>, result?: string) => string;
  /** The general formula in TeX. */
  readonly general: string;
}

/**
 * Attaches notation to a function of named values.
 * Units: those of the terms, SI (m, kg, s, A, K). Errors: none of its own. Source: definition.
 */
export function relation<const T extends Terms, R = number>(definition: Definition<T, R>): Relation<T, R> {
  const { of, formula: side, equation, ...described } = definition;
  const { name, symbol, terms } = described;
  const symbols = Object.fromEntries(Object.entries(terms).map(([key, term]) => [key, term.symbol])) as Texts<T>;
  const formula = (texts: Texts<T>, result?: string): string => {
    if (equation) return equation(texts, result ?? symbol);
    const right = side ? side(texts) : "";
    return `${symbol} = ${right}${result === undefined ? "" : ` = ${result}`}`;
  };
  const call = (values: Values<T>): R => of(values);
  // A function's own `name` can't be assigned, only defined.
  Object.defineProperty(call, "name", { value: name, enumerable: true });
  const { name: _, ...rest } = described;
  return Object.assign(call, rest, { symbols, formula, general: formula(symbols) }) as Relation<T, R>;
}
