/** The words around the glossary, in English. */
export const enWords = {
  ask: (meaning: string) => `“${meaning}”`,
  which: "This is said of:",
  yes: "That's the word.",
  no: (name: string, meaning: string) => `${name} is something else: “${meaning}”`,
  another: "another word",
  score: (right: number, of: number) => `${right} of ${of} right`,
  find: "Find a word",
  hint: "a word, a unit, or what it is about",
  found: (count: number, all: number) => (count === all ? `${all} words` : `${count} of ${all} words`),
  none: "No word here says that. Try fewer letters.",
  list: (names: string) => `Words explained here: ${names}.`,
};
