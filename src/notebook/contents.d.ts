declare module "virtual:contents" {
  import type { Entry } from "#notebook/pages";
  /** All pages in reading order. */
  export const contents: readonly Entry[];
}
declare module "virtual:words" {
  /** The words of the glossary, in the order of the alphabet, each with the sentence that says what it means. */
  export const words: readonly { readonly id: string; readonly name: string; readonly meaning: string }[];
}
