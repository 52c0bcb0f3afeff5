/** Every exercise at many seeds and machines: its numbers, its answer, and each of its slips. */
import fc from "fast-check";
import katex from "katex";
import { describe, expect, it } from "vitest";
import { drawExercise } from "#exercises/draw";
import type { Exercise, Recipe } from "#exercises/exercise";
import { handFor } from "#exercises/hand";
import { mark, toldApart } from "#exercises/mark";
import { type ExercisePage, recipes } from "#exercises/pages";
import { exercisesOn } from "#exercises/sheet";
import { demos } from "#machine/demos";
import { anyMachine } from "../machine/arbitrary.ts";

const pages = Object.entries(recipes) as [ExercisePage, readonly Recipe[]][];
const all = pages.flatMap(([, list]) => list);
const seeds = Array.from({ length: 20 }, (_, i) => i + 1);

function drawings(recipe: Recipe): Exercise[] {
  return demos.flatMap((machine) => seeds.flatMap((seed) => drawExercise(recipe, machine, seed) ?? []));
}

const comma = (value: number): string => String(value).replace(".", ",");

/** The same value as text in another unit. */
const elsewhere: Readonly<Record<string, (value: number) => string>> = {
  rpm: (v) => `${v / 60} Hz`,
  "%": (v) => `${v} per cent`,
  V: (v) => `${v * 1000} mV`,
  A: (v) => `${v * 1000} mA`,
  W: (v) => `${v / 1000} kW`,
  "m/s": (v) => `${v * 3.6} km/h`,
  N: (v) => `${v / 9.80665} kgf`,
  J: (v) => `${v / 1000} kJ`,
  min: (v) => `${v * 60} s`,
  s: (v) => `${v * 1000} ms`,
  µs: (v) => `${v / 1000} ms`,
  mm: (v) => `${v / 25.4} in`,
  mΩ: (v) => `${v / 1000} ohm`,
  "m²": (v) => `${v * 1e4} cm²`,
  teeth: (v) => `${v} t`,
  turns: (v) => `${v} turns`,
  "": (v) => `${v} times`,
};

describe("the collection", () => {
  it("has two to four for each page, and 50 or more in all", () => {
    expect(pages).toHaveLength(20);
    for (const [page, list] of pages) expect([2, 3, 4], page).toContain(list.length);
    expect(all.length).toBeGreaterThanOrEqual(50);
  });

  it("names each one once", () => {
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  });
});

describe.each(all.map((recipe) => [recipe.id, recipe] as const))("%s", (_, recipe) => {
  const drawn = drawings(recipe);

  it("has numbers for every demo machine and seed, and not always the same", () => {
    expect(drawn).toHaveLength(demos.length * seeds.length);
    expect(new Set(drawn.map(({ question }) => question)).size).toBeGreaterThan(8);
  });

  it("takes the right answer, rounded, with comma or point, and in another unit", () => {
    for (const { target, question, answer } of drawn) {
      const { value, unit } = target;
      const three = Number(value.toPrecision(3));
      for (const text of [
        String(value),
        answer,
        String(three),
        comma(three),
        `${three} ${unit}`,
        elsewhere[unit]!(value),
      ]) {
        expect(mark(text, target), `${text} to: ${question}`).toEqual({ kind: "right" });
      }
    }
  });

  it("answers each slip with its own hint, and none of them is right", () => {
    for (const { target, question } of drawn) {
      for (const { name, value, hint } of target.slips) {
        expect(toldApart(value, target.value, target), `${name}: ${question}`).toBe(true);
        const verdict = { kind: "slip", slip: name, hint };
        expect(mark(String(value), target), question).toEqual(verdict);
        if (target.relative >= 0.005)
          expect(mark(String(Number(value.toPrecision(3))), target), question).toEqual(verdict);
      }
    }
  });

  it("leaves out a slip only where it can't be told apart", () => {
    const written = new Set(
      demos.flatMap((machine) =>
        seeds.flatMap((seed) => recipe.draw(handFor(`${seed}`), machine)?.slips.map(({ name }) => name) ?? []),
      ),
    );
    const kept = drawn.flatMap(({ target }) => target.slips.map(({ name }) => name));
    expect(written.size).toBeGreaterThanOrEqual(2);
    for (const name of written) {
      expect(kept.filter((other) => other === name).length, name).toBeGreaterThan(0.8 * drawn.length);
    }
  });

  it("shows the way with its own numbers", () => {
    for (const { solution, question } of drawn) {
      expect(solution.formulas.length).toBeGreaterThan(0);
      for (const { general, numbers } of solution.formulas) {
        expect(`${general}${numbers}`).not.toMatch(/NaN|undefined|Infinity/);
        expect(general, question).not.toMatch(/\\text/);
        expect(numbers, question).toMatch(/\\text\{/);
        const options = { output: "mathml", throwOnError: true, strict: false } as const;
        expect(() => [general, numbers].map((tex) => katex.renderToString(tex, options)), numbers).not.toThrow();
      }
    }
  });

  it("speaks in short sentences", () => {
    for (const { question, solution, target } of drawn) {
      const sentences = question.split(/(?<=[.?!])\s/);
      expect(sentences.length, question).toBeLessThanOrEqual(3);
      const others = [solution.because, ...target.slips.map(({ hint }) => hint)];
      for (const sentence of [...sentences, ...others.flatMap((text) => text.split(/(?<=[.?!])\s/))]) {
        // A figure and its unit are one word here.
        expect(sentence.split(" ").length, sentence).toBeLessThanOrEqual(20);
        expect(sentence).not.toMatch(/NaN|undefined|null|Infinity/);
      }
    }
  });
});

describe("any machine that can be built", () => {
  it("gets two exercises on every page at least, with whole numbers and right answers", () => {
    fc.assert(
      fc.property(anyMachine, fc.integer({ min: 0, max: 2 ** 31 }), (machine, seed) => {
        for (const [page] of pages) {
          const list = exercisesOn(page, machine, seed);
          expect(list.length, page).toBeGreaterThanOrEqual(2);
          for (const { question, target, solution, answer } of list) {
            expect(Number.isFinite(target.value), question).toBe(true);
            expect(JSON.stringify([question, target, solution])).not.toMatch(/NaN|Infinity|undefined|null/);
            expect(mark(answer, target), question).toEqual({ kind: "right" });
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("a seed", () => {
  const [machine] = demos;

  it("gives everybody the same numbers", () => {
    for (const [page] of pages) {
      expect(exercisesOn(page, machine!, 7)).toEqual(exercisesOn(page, structuredClone(machine!), 7));
    }
  });

  it("gives other numbers than the next one", () => {
    const questions = (seed: number) =>
      pages.flatMap(([page]) => exercisesOn(page, machine!, seed)).map((e) => e.question);
    const next = questions(2);
    const same = questions(1).filter((question) => next.includes(question));
    expect(same.length).toBeLessThan(0.1 * next.length);
  });

  // A handout that was printed must go on matching its key: these numbers stay.
  it("goes on meaning what it meant", () => {
    expect(exercisesOn("two-gears", machine!, 3).map(({ answer }) => answer.replace("\u00a0", " "))).toEqual([
      "38.7 mm",
      "2 turns",
      "9,430 rpm",
      "11.06 m/s",
    ]);
  });
});
