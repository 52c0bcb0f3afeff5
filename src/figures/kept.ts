/**
 * Work that depends on some parts of a machine alone is done anew only when one of these parts is another one. Parts
 * of the record are never changed in place, so the same object is the same part.
 */

/** So many results are kept: now and what-if, and a step back for each. */
const MOST = 4;

/** Remembers what was made for the last few lists of keys, compared one by one. Units, errors: those of `make`. Source: definition. */
export function keeper<T>(most: number = MOST): (keys: readonly unknown[], make: () => T) => T {
  let known: { readonly keys: readonly unknown[]; readonly value: T }[] = [];
  return (keys, make) => {
    const found = known.find(
      (each) => each.keys.length === keys.length && each.keys.every((key, i) => key === keys[i]),
    );
    if (found) return found.value;
    const value = make();
    known = [{ keys, value }, ...known.slice(0, most - 1)];
    return value;
  };
}
