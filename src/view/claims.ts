/**
 * Claims that stand inside other blocks' texts and don't hold: they can't be seen in what is drawn, so whoever draws the
 * pages reads them here. Empty in a browser, which has nobody to tell.
 */
export const failed = new Set<string>();
