declare module "virtual:contents" {
  import type { Entry } from "#notebook/pages";
  /** All pages in reading order. */
  export const contents: readonly Entry[];
}
