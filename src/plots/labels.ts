/** Where words go on a plot. Their widths are reckoned from the font's own advances: nothing is read from the page. */

/** Size of all words on a plot, px: reading size, also on a phone. */
export const SIZE = 14.5;
/** Height that one line of words takes, px. */
export const LINE = 18;

const NARROW = "ijlI.,:;'| ()’";
const WIDE = "mwMW%±→";

/** Width of a text in the label font, px, on the safe side. */
export function textWidth(text: string, size = SIZE): number {
  let em = 0;
  for (const sign of text) em += NARROW.includes(sign) ? 0.27 : WIDE.includes(sign) ? 0.8 : sign < "a" ? 0.54 : 0.5;
  return Math.ceil(em * size);
}

/**
 * Moves heights apart so that none lies nearer than `apart` to another and all lie between `top` and `bottom`, each
 * staying as near to its own place and all in their order as that allows.
 */
export function spread(wanted: readonly number[], top: number, bottom: number, apart = LINE): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const gap = order.length > 1 ? Math.min(apart, Math.max(0, (bottom - top) / (order.length - 1))) : apart;
  // Labels that touch form a block, which lies where its members want to be on average.
  const blocks: { sum: number; members: number[] }[] = [];
  const startOf = (block: { sum: number; members: number[] }) => {
    const height = (block.members.length - 1) * gap;
    return Math.min(Math.max(block.sum / block.members.length - height / 2, top), Math.max(top, bottom - height));
  };
  for (const i of order) {
    let block = { sum: wanted[i]!, members: [i] };
    for (let last = blocks.at(-1); last; last = blocks.at(-1)) {
      if (startOf(last) + last.members.length * gap <= startOf(block) + 1e-9) break;
      blocks.pop();
      block = { sum: last.sum + block.sum, members: [...last.members, ...block.members] };
    }
    blocks.push(block);
  }
  const placed = new Array<number>(wanted.length);
  for (const block of blocks) {
    const start = startOf(block);
    block.members.forEach((member, k) => {
      placed[member] = start + k * gap;
    });
  }
  return placed;
}
