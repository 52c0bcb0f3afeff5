/** Whether a notebook's cells hang together: no name missing, no circle. */
import { runInNewContext } from "node:vm";
import type { Cell, Name } from "./cells.ts";
import { type Fault, placeOf } from "./fault.ts";

// What the language itself brings; a cell runs without a page, so nothing of the browser is among them.
const language: readonly string[] = runInNewContext("Object.getOwnPropertyNames(globalThis)");
const known = new Set([...language, "console", "structuredClone"]);
for (const name of ["eval", "Function", "globalThis"]) known.delete(name);

/** What is wrong between the cells; `given` are the names that every notebook gets from outside. */
export function graphFaults(text: string, cells: readonly Cell[], given: readonly string[]): Fault[] {
  const givers = new Map(cells.flatMap((cell) => cell.gives.map(({ name }) => [name, cell] as const)));
  const taken = cells.flatMap(({ gives }) => gives.filter(({ name }) => given.includes(name)));
  const missing = cells.flatMap(({ needs }) =>
    needs.filter(({ name }) => !givers.has(name) && !given.includes(name) && !known.has(name)),
  );
  return [
    ...taken.map(({ name, at }) => ({ at, words: `'${name}' is given to every notebook; take another name.` })),
    ...missing.map(({ name, at }) => ({ at, words: `'${name}' is declared nowhere in this notebook, nor imported.` })),
    ...circles(text, cells, givers),
  ];
}

/** The names that a cell really takes from elsewhere: not those of the language. */
export function needsOf(cell: Cell, cells: readonly Cell[], given: readonly string[]): string[] {
  const names = new Set([...given, ...cells.flatMap(({ gives }) => gives.map(({ name }) => name))]);
  return cell.needs.map(({ name }) => name).filter((name) => names.has(name));
}

/** Each circle once, with the names that close it. */
function circles(text: string, cells: readonly Cell[], givers: ReadonlyMap<string, Cell>): Fault[] {
  const faults: Fault[] = [];
  const done = new Set<Cell>();
  const walk = (cell: Cell, trail: readonly { cell: Cell; by: Name }[]): void => {
    const back = trail.findIndex((step) => step.cell === cell);
    if (back !== -1) {
      faults.push(
        circleFault(
          text,
          trail.slice(back).map(({ by }) => by),
        ),
      );
      return;
    }
    if (done.has(cell)) return;
    for (const by of cell.needs) {
      const giver = givers.get(by.name);
      if (giver) walk(giver, [...trail, { cell, by }]);
    }
    done.add(cell);
  };
  for (const cell of cells) walk(cell, []);
  return faults;
}

function circleFault(text: string, names: readonly Name[]): Fault {
  const steps = names.map(({ name, at }) => `'${name}' (line ${placeOf(text, at).line})`);
  return {
    at: names[0]?.at ?? 0,
    words: `These cells wait for each other in a circle: they need ${steps.join(", then ")}.`,
  };
}
