/**
 * The notebook as a TypeScript module: the same text with everything but its code blanked out, so that each line and
 * each column stays where it was. The type checker reads this, and cells are found in it.
 */
import type { Split } from "./split.ts";

const blanked = (text: string): string => text.replace(/[^\r\n]/g, " ");

export function blank({ text, pieces }: Split): string {
  let code = blanked(text.slice(0, pieces[0]?.start ?? text.length));
  for (const { kind, start, end, inner } of pieces) {
    const inside = text.slice(inner.start, inner.end);
    // The semicolons keep a statement of one cell from going on in the next.
    if (kind === "cell")
      code += `;${blanked(text.slice(start + 1, inner.start))}${inside}${fenceEnd(text, inner.end, end)}`;
    else if (kind === "value") code += `;(${inside})`;
    else code += blanked(text.slice(start, end));
  }
  return code;
}

const fenceEnd = (text: string, start: number, end: number): string => `;${blanked(text.slice(start + 1, end))}`;
