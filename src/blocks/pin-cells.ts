/** What the figures of a table's cells were for the pinned machine: a second line in each cell whose figure differs. */
import type { QuantityName } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import { el, setText } from "#view/dom";
import { enPins } from "#view/words/en-pins";
import { quantityText } from "./quantity.ts";

interface Cell {
  readonly quantity: QuantityName;
  readonly cell: HTMLElement;
}

/** Gives the function that brings the second lines to the figures; without a pinned machine it does nothing. `head` names the row. */
export function pinnedCells(head: HTMLElement, cells: readonly Cell[]) {
  let lines: HTMLElement[] | null = null;
  const title = el(head.ownerDocument, "span", { class: "pinned-value" }, enPins.row);
  return (figures: Figures, pinned: Figures | undefined, mode: number): void => {
    if (!pinned && !lines) return;
    if (!lines) {
      lines = cells.map(({ cell }) => el(cell.ownerDocument, "span", { class: "pinned-value" }));
      for (const [i, { cell }] of cells.entries()) cell.append(lines[i] as HTMLElement);
      head.append(title);
    }
    const known = pinned && mode < pinned.machine.modes.length ? pinned : null;
    for (const [i, { quantity }] of cells.entries()) {
      const line = lines[i] as HTMLElement;
      const text = (of: Figures) => quantityText({ figures: of, name: quantity, mode });
      const then = known ? text(known) : "";
      line.hidden = then === "" || then === text(figures);
      setText(line, line.hidden ? "" : then);
    }
    title.hidden = lines.every((line) => line.hidden);
  };
}
