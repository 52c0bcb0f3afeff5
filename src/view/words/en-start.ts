/** The words of a starting link, in English. */
export const enStart = {
  title: "A starting point for the room",
  page: "Page",
  seed: "Numbers of the exercises",
  same: "Everybody who opens it has this machine, this page and the same numbers.",
  link: "The starting link",
  copy: "copy the link",
  copied: "Copied.",
  code: (address: string) => `QR code of the link ${address}`,
  tooLong: "This link is too long for a code that a phone can read. Send it, or go back to a machine nearer to a demo.",
  near: "This workbook runs on your own computer, and a phone can't reach it there. Open it at an address that the phones can reach, then make the link again.",
  noSeed: "Numbers go from 1 to 9999.",
  open: "starting link",
  words: (page: string, seed: number) =>
    `A link and a code that open ${page} with this machine and the numbers ${seed}.`,
};
