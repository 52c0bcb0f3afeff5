const unit = /(?<=\d) (?=%|(?:rpm|V|A|W|Hz|kHz|mm|m|s|min|g|kg|N|J)\b)/g;

/** Words with their numbers and units held together at the end of a line. */
export const unbroken = (words: string): string => words.replace(unit, "\u00a0");
