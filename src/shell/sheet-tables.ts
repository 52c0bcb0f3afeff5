/** Tables of a page on paper: whole on the key; on the handout with the first figures given, and room for the others. */
import { el } from "#view/dom";
import { enSheet as en } from "#view/words/en-sheet";
import type { SheetKind } from "./sheet-kind.ts";

/** The tables of a cell that stand open on the page; those that are folded behind a plot tell nothing that it doesn't. */
export const tablesOf = (host: Element): HTMLTableElement[] =>
  [...host.querySelectorAll("table")].filter((table) => !table.closest("details, [hidden]"));

/** A table as it stands, or as a form to fill in. A map of gears is a picture, and stands whole on both. */
export function tablePiece(kind: SheetKind, table: HTMLTableElement): HTMLElement {
  const doc = table.ownerDocument;
  const copy = plainTable(table);
  const asks = kind === "handout" && !table.matches(".gear-grid");
  if (asks) {
    unpinned(copy);
    emptied(copy);
  }
  const title = table.closest("figure")?.querySelector(".plot-title")?.textContent;
  const head = title ? [el(doc, "p", { class: "sheet-ask" }, title)] : [];
  return el(doc, "div", { class: "sheet-piece" }, ...head, copy, ...(asks ? [el(doc, "p", {}, en.fill)] : []));
}

/** A copy with what was typed as text, and nothing that only works on a screen. */
function plainTable(table: HTMLTableElement): HTMLTableElement {
  const copy = table.cloneNode(true) as HTMLTableElement;
  const values = [...table.querySelectorAll("input")].map(({ value }) => value);
  for (const [i, input] of [...copy.querySelectorAll("input")].entries()) input.replaceWith(values[i] ?? "");
  for (const gone of copy.querySelectorAll("label, button, .heard, [hidden]")) gone.remove();
  for (const part of [copy, ...copy.querySelectorAll("*")]) {
    for (const name of ["id", "role", "tabindex", "aria-selected", "data-input"]) part.removeAttribute(name);
  }
  return copy;
}

/** Takes away what is said of a pinned machine: what is to be found is found for the machine of the sheet. */
function unpinned(table: HTMLTableElement): void {
  const [first] = table.querySelectorAll(".pinned-column");
  const at = first?.parentElement ? [...first.parentElement.children].indexOf(first) : -1;
  if (at >= 0) for (const row of table.querySelectorAll("tr")) row.children[at]?.remove();
  for (const gone of table.querySelectorAll(".pinned-value")) gone.remove();
}

/** Leaves the first column of figures, where there are others to be found from it. */
function emptied(table: HTMLTableElement): void {
  for (const row of table.querySelectorAll("tbody tr")) {
    const figures = row.querySelectorAll("td");
    for (const cell of [...figures].slice(figures.length > 1 ? 1 : 0)) {
      cell.textContent = "\u00a0";
      cell.className = "to-fill";
    }
  }
}
