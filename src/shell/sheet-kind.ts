/** The two sheets of a page: to work on, and to look it up. */
export type SheetKind = "handout" | "key";
