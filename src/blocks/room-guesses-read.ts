/** What a room has guessed, from a line that somebody types while hands go up; and what it comes to. Pure. */

/** The scale of a question. */
interface Scale {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly unit: string;
}

/** A line of guesses, as far as it could be read. */
interface Guesses {
  /** In the unit of the question, rising. */
  readonly values: readonly number[];
  /** Pieces of the line that are no numbers. */
  readonly left: readonly string[];
}

/** More guesses than this are not taken: no club room holds more. */
const MOST = 300;

const within = (value: number, { low, high }: Scale): boolean => {
  const room = high - low;
  return value >= low - room && value <= high + room;
};

/** Commas between digits are thousands' where the number then fits the scale, decimal where the scale has decimals. */
function uncomma(word: string, scale: Scale): string[] {
  if (!word.includes(",")) return [word];
  if (/^[-+]?\d+,\d{1,2}[^\d,]*$/.test(word) && scale.step < 1) return [word.replace(",", ".")];
  const grouped = word.match(/[-+]?\d{1,3}(?:,\d{3})+(?!\d)[^,]*|[^,]+/g) ?? [];
  return grouped.flatMap((piece) => {
    const joined = piece.replaceAll(",", "");
    return within(Number.parseFloat(joined), scale) ? [joined] : piece.split(",");
  });
}

/**
 * Guesses in a line, forgiving: blanks, commas, semicolons or slashes between them; `~`, `?` and units are passed over;
 * `2.1k` is 2100 and `1800 x3` is said by three. Units: the question's. Errors: what is no number comes back in `left`.
 */
export function readGuesses(text: string, scale: Scale): Guesses {
  const tidy = text
    .slice(0, 4000)
    .replace(/[\u2212\u2013\u2014]/g, "-")
    .replace(/[\u00a0\u2009\u202f\s]+/g, " ")
    // A number said by several: the count stays with it.
    .replace(/ ?[x×*] ?(\d{1,3})(?!\d)/gi, "x$1")
    .replace(/, /g, " ");
  const values: number[] = [];
  const left: string[] = [];
  const unit = scale.unit.toLowerCase();
  for (const word of tidy.split(/[ ;/|]+/).flatMap((piece) => uncomma(piece, scale))) {
    const plain = word.replace(/^(?:~|≈|ca\.?|about)/i, "").replace(/[?!.]+$/, "");
    if (plain === "" || plain.toLowerCase() === unit || /^(?:rpm|%|and|v|a|w)$/i.test(plain)) continue;
    const parts = /^([-+]?(?:\d+\.?\d*|\.\d+))(k?)[a-zµ%°/]*?(?:x(\d{1,3}))?$/i.exec(plain);
    const value = parts ? Number(parts[1]) * (parts[2] ? 1000 : 1) : Number.NaN;
    if (!Number.isFinite(value)) {
      left.push(word);
      continue;
    }
    const times = Math.min(Number(parts?.[3] ?? 1), MOST - values.length);
    for (let i = 0; i < times; i++) values.push(value);
  }
  return { values: values.sort((a, b) => a - b), left };
}

/** The middle of rising values; between two of them, half way. Null for none. */
export function median(rising: readonly number[]): number | null {
  if (rising.length === 0) return null;
  const middle = (rising.length - 1) / 2;
  return ((rising[Math.floor(middle)] ?? 0) + (rising[Math.ceil(middle)] ?? 0)) / 2;
}

/** A value said so often that it is no accident. */
interface Common {
  readonly value: number;
  readonly count: number;
}

/** The value said most often, when at least three said it and a fifth of the room; null for none. */
export function mostSaid(rising: readonly number[]): Common | null {
  const counts = new Map<number, number>();
  for (const value of rising) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [first] = [...counts].sort((a, b) => b[1] - a[1]);
  return first && first[1] >= Math.max(3, rising.length / 5) ? { value: first[0], count: first[1] } : null;
}

/** Dots stacked over their place: guesses that lie too near to stand side by side go on top of each other. */
export function stacked(rising: readonly number[], { low, high, step }: Scale): { xs: number[]; ys: number[] } {
  const bin = Math.max(step, (high - low) / 45);
  const heights = new Map<number, number>();
  const xs: number[] = [];
  const ys: number[] = [];
  for (const value of rising) {
    if (value < low || value > high) continue;
    const at = Math.round(value / bin) * bin;
    const height = (heights.get(at) ?? 0) + 1;
    heights.set(at, height);
    xs.push(Math.min(Math.max(at, low), high));
    ys.push(height);
  }
  return { xs, ys };
}

/** A count of hands, typed: blank is none; null for what is no count. */
export function readCount(text: string): number | null {
  const tidy = text.trim();
  if (tidy === "") return 0;
  return /^\d{1,3}$/.test(tidy) ? Math.min(Number(tidy), MOST) : null;
}
