import { expect, it } from "vitest";
import { compareGears } from "#blocks/gear-compare";
import { slowerTable } from "#blocks/slower-tables";
import { together } from "#blocks/together";
import { type Figures, figuresOf } from "#figures/figures";
import { createBench } from "#machine/bench";
import { defaultMachine } from "#machine/machine";
import { tablePiece } from "#shell/sheet-tables";
import type { Shown } from "#view/shown";
import { machineWith } from "../figures/machines.ts";

const more = machineWith({ "gears.pinionTeeth": 15, "airframe.massG": 3000 });

/** A table as it stands on the page, with or without another machine pinned. */
function tableOn<S>(make: (figures: Figures) => Shown<S>, pinned: boolean): HTMLTableElement {
  const host = document.createElement("div");
  const { view, state } = make(figuresOf(more)) as unknown as Shown;
  const then = make(figuresOf(defaultMachine)) as unknown as Shown;
  const put = view.mount(host, createBench());
  put(pinned ? together({ view, state }, { pinned: then }, { now: more, pinned: defaultMachine }) : state);
  return host.querySelector("table") as HTMLTableElement;
}

it.each([
  ["a column", (figures: Figures) => compareGears(figures, null, 1), ".pinned-column"],
  ["second lines", (figures: Figures) => slowerTable(figures, 1), ".pinned-value"],
] as const)("leaves a pinned machine out of what is to be filled in, and has it on the key: %s", (_, make, mark) => {
  const texts = (table: HTMLElement) => [...table.querySelectorAll("tr")].map((row) => row.textContent);
  const filled = (kind: "handout" | "key", pinned: boolean) => tablePiece(kind, tableOn(make, pinned));
  expect(texts(filled("handout", true))).toEqual(texts(filled("handout", false)));
  expect(filled("handout", true).querySelector(mark)).toBeNull();
  expect(filled("key", true).querySelector(mark)?.textContent).not.toBe("");
});
