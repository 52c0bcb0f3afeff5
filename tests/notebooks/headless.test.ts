/** Every notebook runs without a page: at the demo machines, at the limits of each input, and at random settings. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { createBench } from "#machine/bench";
import { demos } from "#machine/demos";
import { type Field, fields } from "#machine/fields";
import { defaultMachine, type Machine } from "#machine/machine";
import type { Given } from "#notebook/given";
import type { CellRecord } from "#notebook/record";
import { type CellResult, runHeadless } from "#notebook/runtime";
import type { Answers } from "#view/answers";
import { isShown } from "#view/shown";
import { anyMachine } from "../machine/arbitrary.ts";
import { blemishes, emptyWord } from "../support/plain.ts";

const notebooks = import.meta.glob<CellRecord[]>("../../notebooks/*.md", {
  query: "?cells&lang.ts",
  import: "records",
  eager: true,
});

/** What every notebook would be given for this bench. */
function given(machine: Machine, whatIf: Machine | null = null, answers: Answers = {}): Given {
  return { machine, whatIf, figures: figuresOf(machine), whatIfFigures: whatIf && figuresOf(whatIf), answers };
}

/** What is wrong with one cell's result, in words. */
function faults({ cell, value, failure }: CellResult): string[] {
  const at = `line ${cell.line}`;
  if (failure) return [`${at} stopped: ${failure.error instanceof Error ? failure.error.message : failure.error}`];
  if (!isShown(value)) return value === null || value === undefined ? [] : blemishes(value, at);
  const words = value.view.words(value.state);
  const empty = emptyWord.exec(words);
  return [
    ...blemishes(value.state, `${at}, ${value.view.name}`),
    ...(empty
      ? [`${at}, ${value.view.name}, says '${words.slice(Math.max(0, empty.index - 40), empty.index + 40)}'`]
      : []),
  ];
}

async function faultsOf(records: readonly CellRecord[], at: Given): Promise<string[]> {
  const results = await runHeadless(records, at);
  expect(results).toHaveLength(records.length);
  return results.flatMap(faults);
}

/** The ends of a field: of its slider, and the last values that are taken at all. */
function ends({ kind, low, high, min, max, choices }: Field): unknown[] {
  if (kind === "choice") return (choices ?? []).map((choice) => choice.value);
  if (kind === "text") return ["", "x".repeat(max)];
  return [...(kind === "nullable number" ? [null] : []), min, low, high, max];
}

/** Machines with one field at one of its ends, as far as the bench takes them. */
function limits(field: Field): [string, Machine][] {
  return ends(field).flatMap((value): [string, Machine][] => {
    const bench = createBench(defaultMachine);
    const path = field.path.replace(".*.", ".0.");
    const refused = bench.set(path, value);
    return refused ? [] : [[`${path} = ${String(value).slice(0, 20)}`, bench.now]];
  });
}

/** Answers to every question of a notebook: whatever is asked for, a choice, a number or 'show me'. */
async function answered(records: readonly CellRecord[], machine: Machine): Promise<Answers[]> {
  const asked = (await runHeadless(records, given(machine))).flatMap(({ value }) =>
    isShown(value) && value.state !== null
      ? [value.state as { id?: string; low?: number; options?: readonly { key: string }[] }]
      : [],
  );
  const pick = (take: (options: readonly { key: string }[]) => string | undefined, number: string | null): Answers =>
    Object.fromEntries(
      asked.flatMap(({ id, low, options }) => {
        const answer = options ? take(options) : typeof low === "number" ? (number ?? low) : undefined;
        return id && answer !== undefined ? [[id, answer]] : [];
      }),
    );
  return [pick((o) => o[0]?.key, null), pick((o) => o.at(-1)?.key, "show me")];
}

describe.each(Object.entries(notebooks))("%s", (_, records) => {
  it.each(demos.map((demo) => [demo.name, demo] as const))("runs with the %s", async (_, machine) => {
    expect(records.length).toBeGreaterThan(0);
    expect(await faultsOf(records, given(machine))).toEqual([]);
  });

  it("runs with every question answered", async () => {
    const all = await answered(records, defaultMachine);
    expect(Object.keys(all[0] ?? {}).length).toBeGreaterThan(0);
    for (const answers of all) expect(await faultsOf(records, given(defaultMachine, null, answers))).toEqual([]);
  });

  it("runs with every other demo machine as what-if", async () => {
    for (const [i, machine] of demos.entries()) {
      expect(await faultsOf(records, given(machine, demos[(i + 1) % demos.length]))).toEqual([]);
    }
  });

  it("runs at the limits of each input", async () => {
    const found: string[] = [];
    let count = 0;
    for (const [name, machine] of fields.flatMap(limits)) {
      count++;
      found.push(...(await faultsOf(records, given(machine))).map((fault) => `${name}: ${fault}`));
    }
    expect(count).toBeGreaterThan(2 * fields.length);
    expect(found).toEqual([]);
  });

  it("runs at random settings", async () => {
    await fc.assert(
      fc.asyncProperty(anyMachine, fc.option(anyMachine), async (machine, whatIf) => {
        expect(await faultsOf(records, given(machine, whatIf))).toEqual([]);
      }),
      { seed: 20_260_101, numRuns: 60 },
    );
  });
});

describe("a fault in a notebook", () => {
  const cell = (run: () => unknown[]): CellRecord => ({ id: "a", line: 7, needs: [], gives: [], shows: true, run });
  const view = { name: "planted", words: (state: { x: number }) => `It is ${state.x}.`, mount: () => () => {} };

  it.each([
    [
      "throws",
      () => {
        throw new Error("no");
      },
    ],
    ["shows no number", () => [Number.NaN]],
    ["holds no number", () => [{ view: { ...view, words: () => "" }, state: { x: Number.POSITIVE_INFINITY } }]],
    ["says no number", () => [{ view: { ...view, words: () => "It is NaN." }, state: { x: 1 } }]],
  ])("is found when a cell %s", async (_, run) => {
    expect(await faultsOf([cell(run)], given(defaultMachine))).toHaveLength(1);
  });

  it("is not found where there is none", async () => {
    expect(await faultsOf([cell(() => [{ view, state: { x: 1 } }])], given(defaultMachine))).toEqual([]);
  });
});
