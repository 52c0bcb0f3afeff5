import { expect, it } from "vitest";
import { factsTable } from "#blocks/facts-table";
import { createBench } from "#machine/bench";

const state = (cell: string) => ({
  name: "planted",
  caption: "Two things",
  columns: ["", "one", "two"],
  rows: [
    { title: "speed", cells: ["1", cell], marked: true },
    { title: "heat", cells: ["3", "4"] },
  ],
  words: "It comes to this.",
});

it("shows each cell once and writes again only what has changed", () => {
  const host = document.createElement("div");
  const { view } = factsTable(state("2"));
  const update = view.mount(host, createBench());
  update(state("2"));
  const cells = [...host.querySelectorAll("tbody td")];
  expect(cells.map((cell) => cell.textContent)).toEqual(["1", "2", "3", "4"]);
  expect(host.querySelector("tr.is-marked th")?.textContent).toBe("speed");
  update(state("5"));
  expect([...host.querySelectorAll("tbody td")].map((cell, i) => cell === cells[i])).toEqual([true, true, true, true]);
  expect(cells[1]?.textContent).toBe("5");
  expect(view.words(state("5"))).toBe("Two things. speed: one 1, two 5. heat: one 3, two 4. It comes to this.");
});
