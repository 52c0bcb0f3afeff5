/** The files of the built site. */
import { readdirSync } from "node:fs";

/** All files of a kind below a folder, as paths inside it, in order, `index.html` first. */
export function filesIn(folder: string, kind: string): string[] {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => name.replaceAll("\\", "/"));
  const rank = (name: string): number => (name === "index.html" ? 0 : 1);
  return names.filter((name) => name.endsWith(kind)).sort((a, b) => rank(a) - rank(b) || a.localeCompare(b, "en"));
}

/** Where something from another host could be fetched: addresses in the text that name no namespace. */
export function addresses(text: string, harmless: readonly string[]): string[] {
  const found = text.match(/\b(?:https?|wss?):\/\/[\w.-]+[^\s"'`<>)\\]*/g) ?? [];
  return [...new Set(found)].filter((address) => !harmless.some((start) => address.startsWith(start)));
}

/** How many pages a PDF has: each has a page object of its own, which Chromium writes in plain text. */
export function pdfPages(pdf: Buffer): number {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}
