/** Words for what comes after the page itself. */
export const enLater = {
  waiting: "Exercises with your own numbers follow here.",
  failed: "The exercises could not be fetched. They come with the next visit when there is a network.",
} as const;
