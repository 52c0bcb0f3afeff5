import { describe, expect, it } from "vitest";
import { placeTable } from "#blocks/band-tables";
import { cellsTable } from "#blocks/cells-plots";
import { factsPinned } from "#blocks/facts-pinned";
import type { FactsState } from "#blocks/facts-table";
import { compareGears } from "#blocks/gear-compare";
import { slowerTable } from "#blocks/slower-tables";
import { together } from "#blocks/together";
import { type Figures, figuresOf } from "#figures/figures";
import { defaultMachine } from "#machine/machine";
import type { Shown } from "#view/shown";
import { machineWith } from "../figures/machines.ts";
import { type Mounted, mounted, plain, wordsOf } from "./mounted.ts";

const more = machineWith({ "gears.pinionTeeth": 15 });

function beside(make: (figures: Figures) => Shown<FactsState>, now = more, pinned = defaultMachine): Shown<FactsState> {
  const [shown, other] = [make(figuresOf(now)), make(figuresOf(pinned)) as unknown as Shown];
  return { ...shown, state: together(shown as unknown as Shown, { pinned: other }, { now, pinned }) as FactsState };
}

const alone = (make: (figures: Figures) => Shown<FactsState>) => make(figuresOf(defaultMachine)).state;

describe("a table with a column for each machine", () => {
  it.each([
    ["gears", (figures: Figures) => compareGears(figures, null, 1), 1, "pinned: 13 on 120"],
    [
      "gears and a what-if",
      (figures: Figures) => compareGears(figures, figuresOf(machineWith({ "gears.pinionTeeth": 17 })), 1),
      1,
      "pinned: 13 on 120",
    ],
    ["cells", (figures: Figures) => cellsTable(figures, 12), 1, "pinned: "],
    ["places in the band", (figures: Figures) => placeTable(figures, 1), -1, "pinned: 13 t"],
  ] as const)("has the pinned machine's own beside it: %s", (_, make, at, title) => {
    const then = alone(make);
    const { state } = beside(make);
    const place = at < 0 ? state.columns.findIndex((each) => each.startsWith("pinned")) - 1 : at;
    expect(plain(state.columns[place + 1])).toContain(title);
    expect(state.columns).toHaveLength(make(figuresOf(more)).state.columns.length + 1);
    expect(state.rows.map(({ cells }) => cells[place])).toEqual(then.rows.map(({ cells }) => cells[then.own ?? -1]));
    const table = mounted(beside(make));
    expect(table.all("td.pinned-column").map((cell) => cell.textContent)).toEqual(
      state.rows.map(({ cells }) => cells[place]),
    );
    table.update(make(figuresOf(more)));
    expect(table.all(".pinned-column")).toEqual([]);
  });
});

describe("a table of one machine in several columns", () => {
  const make = (figures: Figures) => slowerTable(figures, 1);
  const lines = (table: Mounted) =>
    table.all("tbody td").map((cell) => cell.querySelector(".pinned-value:not([hidden])")?.textContent ?? "");
  const changed = machineWith({ "airframe.massG": 3000 });

  it("has what a cell was below it where that differs, names the row, and says so", () => {
    const table = mounted(beside(make, changed));
    const [now, then] = [make(figuresOf(changed)).state, alone(make)];
    const titles = then.columns.slice(1);
    const expected = now.rows.flatMap((row, r) =>
      row.cells.map((cell, i) => {
        const was = then.rows[r]?.cells[titles.indexOf(now.columns[i + 1] ?? "")] ?? "";
        return was === cell ? "" : was;
      }),
    );
    expect(lines(table)).toEqual(expected);
    expect(expected.filter(Boolean).length).toBeGreaterThan(4);
    expect(expected[0]).toBe("");
    const heads = table.all("tbody th").map((head) => head.querySelector(".pinned-value:not([hidden])")?.textContent);
    expect(heads[2]).toBe("pinned");
    expect(wordsOf(beside(make, changed))).toContain(`(pinned ${expected.find(Boolean)})`);
  });

  it("has a second line only where there is something to say", () => {
    const table = mounted(beside(make, changed));
    const all = table.all(".pinned-value");
    const empty = all.filter((line) => line.textContent === "");
    expect(empty.length).toBeGreaterThan(0);
    expect(all.filter((line) => (line as HTMLElement).hidden)).toEqual(empty);
  });

  it("stays as it is beside a table that says something else", () => {
    const { state } = make(figuresOf(changed));
    expect(factsPinned(state, { ...alone(make), name: "another" })).toBe(state);
    expect(factsPinned(state, undefined)).toBe(state);
  });

  it("has none of it without a pin, or while all is as it was pinned", () => {
    const table = mounted(beside(make, changed));
    table.update(make(figuresOf(changed)));
    expect(table.all(".pinned-value")).toEqual([]);
    expect(lines(mounted(beside(make, defaultMachine))).filter(Boolean)).toEqual([]);
  });
});
