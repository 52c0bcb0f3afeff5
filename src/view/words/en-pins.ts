/** The words of the pin: an earlier machine, kept to see the next change against it. */
export const enPins = {
  title: "Pinned machine",
  pin: "pin this machine",
  anew: "pin anew",
  back: "back to it",
  drop: "unpin",
  /** Said in the strip while the machine still is as it was pinned. */
  same: "Pinned. Change something, and the plots keep this dashed.",
  differs: (as: string) => `Pinned, and dashed on the plots: ${as}.`,
  teeth: (teeth: string) => `${teeth}\u00a0t`,
  part: (name: string, value: string) => `${name} ${value}`,
  none: "none",
  two: (one: string, other: string) => `${one}, ${other}`,
  many: (count: number) => `${count} changes`,
  modes: (count: number) => (count === 1 ? "1 mode" : `${count} modes`),
  /** Names the second lines of a table's row. */
  row: "pinned",
  /** In an opened number. */
  term: "Pinned",
  gap: (then: string, gap: string) => `${then} · now ${gap}`,
};
