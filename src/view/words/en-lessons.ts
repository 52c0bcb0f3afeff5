/** The words of the page for teachers, in English. What the pages say stands in their own folds. */
export const enLessons = {
  minutes: "Minutes you have",
  idea: "What somebody said",
  all: "nothing yet: begin at the beginning",
  plan: (pages: number, minutes: number) => `${pages === 1 ? "1 page" : `${pages} pages`}, ${minutes} minutes in all.`,
  tooShort: "That's too short for a page. Take ten minutes.",
  takes: (minutes: number) => `${minutes} min`,
  present: "present it",
  short: "In 10 minutes",
  long: "In 45 minutes",
  says: "As a learner says it",
  ask: "Ask the room",
  open: "open the page",
  pages: (titles: string) => `Pages to teach with: ${titles}.`,
  quote: (words: string) => `“${words}”`,
};
