/** The words of the plot parts. */
export const plotWords = {
  table: "The same in numbers",
  save: "Save as a spreadsheet file",
  point: "point",
  none: "–",
};
