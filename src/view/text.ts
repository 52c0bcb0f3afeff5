/** Small work on words, the same wherever they stand. */

const unit = /(?<=\d) (?=%|(?:rpm|V|A|W|Hz|kHz|mm|m|s|min|g|kg|N|J)\b)/g;

/** Words with their numbers and units held together at the end of a line. */
export const unbroken = (words: string): string => words.replace(unit, "\u00a0");

/** The first sentence, which is the main thing, and what follows it with the space before. */
export function firstAndRest(words: string): readonly [string, string] {
  const end = /[.!?](?=\s)/.exec(words);
  return end ? [words.slice(0, end.index + 1), words.slice(end.index + 1)] : [words, ""];
}

/** Words as a sentence begins. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
