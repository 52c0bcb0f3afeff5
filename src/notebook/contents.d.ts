declare module "virtual:contents" {
  import type { Entry } from "#notebook/pages";
  /** All pages in reading order. */
  export const contents: readonly Entry[];
}
declare module "virtual:words" {
  /** The words of the glossary, in the order of the alphabet, each with the sentence that says what it means. */
  export const words: readonly { readonly id: string; readonly name: string; readonly meaning: string }[];
}
declare module "virtual:lessons" {
  import type { Lesson } from "#notebook/lessons";
  import type { Entry } from "#notebook/pages";
  /** What the pages say to whoever teaches with them, in reading order. */
  export const lessons: readonly (Entry & Lesson & { readonly number: number })[];
}
