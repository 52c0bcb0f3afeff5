/** What a cell's place says when it has nothing to show. */
export const cellWords = {
  stopped: (why: string) => `This part has stopped: ${why}`,
  waits: (cell: string) => `This part waits for ${cell}, which has stopped.`,
  cell: (line: number) => `the cell in line ${line}`,
  cellOf: (name: string, line: number) => `'${name}' (line ${line})`,
  unshown: "its value is neither a number, nor words, nor something to draw",
  noNumber: "its number has no value",
  noWords: "it gave no reason",
};
