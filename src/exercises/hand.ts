/** The hand that draws an exercise's numbers: from a seed the same ones, on every machine and for everybody. */

/** Numbers in 0 to 1 (1 left out) from a 32-bit seed. Source: mulberry32 by Tommy Ettinger, in the public domain. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A text as 32 bits. Source: FNV-1a (Fowler, Noll, Vo). */
export function hash(text: string): number {
  let bits = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) bits = Math.imul(bits ^ text.charCodeAt(i), 0x01000193);
  return bits >>> 0;
}

/** Cut to so many figures. */
export const rounded = (value: number, figures: number): number => Number(value.toPrecision(figures));

export interface Hand {
  /** A whole number from `low` to `high`, both among them. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  /**
   * A round number near a value of the reader's own machine: within `spread` of it, with so many figures.
   * A value of zero or less says nothing about size: `otherwise` takes its place.
   */
  readonly near: (value: number, options?: { spread?: number; figures?: number; otherwise?: number }) => number;
  /** A count near one of the machine's: within `reach` of it, never below `least`. */
  readonly count: (value: number, reach: number, least: number) => number;
}

/** A hand that always draws the same from the same text. */
export function handFor(text: string): Hand {
  const next = mulberry32(hash(text));
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    whole,
    pick: (list) => {
      const item = list[whole(0, list.length - 1)];
      if (item === undefined) throw new RangeError("nothing to pick from");
      return item;
    },
    near: (value, { spread = 0.15, figures = 2, otherwise = 1 } = {}) =>
      rounded((value > 0 ? value : otherwise) * (1 + spread * (2 * next() - 1)), figures),
    count: (value, reach, least) => Math.max(least, Math.round(value) + whole(-reach, reach)),
  };
}
