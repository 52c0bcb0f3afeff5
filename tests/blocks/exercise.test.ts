import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type ExercisesState, exercises } from "#blocks/exercise";
import { recipes } from "#exercises/pages";
import { createBench } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { answer, answersNow, onAnswer } from "#view/answers";
import { blemishes } from "../support/plain.ts";

const page = "what-the-throttle-asks-for";
let host: HTMLElement;
let machine: Machine;
let update: (state: ExercisesState) => void;
let stop = () => {};

const shown = (seed?: number) => exercises(page, machine, answersNow(), seed);
const follow = () => update(shown().state);

beforeAll(() => {
  // The typesetter asks for a page with a doctype; this document has no such mode at all.
  Object.defineProperty(document, "compatMode", { value: "CSS1Compat", configurable: true });
});

beforeEach(() => {
  stop();
  for (const id of Object.keys(answersNow())) answer(id, null);
  machine = clubTrainer;
  host = document.createElement("div");
  document.body.replaceChildren(host);
  const { view, state } = shown();
  update = view.mount(host, createBench()) as typeof update;
  update(state as ExercisesState);
  stop = onAnswer(follow);
});

const item = (i = 0) => host.querySelectorAll<HTMLElement>(".exercises > li")[i]!;
const exerciseAt = (i = 0) => (shown().state as ExercisesState).items[i]!.exercise;
const box = (i = 0) => item(i).querySelector("input")!;
const reply = (i = 0) => item(i).querySelector("[role=status]")?.textContent ?? "";
const button = (words: string, i = 0) =>
  [...item(i).querySelectorAll("button")].find((each) => each.textContent === words && !each.hidden);
const solution = (i = 0) => item(i).querySelector<HTMLElement>(".exercise-solution")!;

function check(text: string, i = 0): void {
  box(i).value = text;
  item(i)
    .querySelector("form")!
    .dispatchEvent(new Event("submit", { bubbles: true, cancelable: true }));
}

describe("exercises on a page", () => {
  it("ask their questions, each with a box that says its unit", () => {
    expect(host.querySelectorAll(".exercises > li")).toHaveLength(recipes[page].length);
    expect(item().querySelector("legend")?.textContent).toBe(exerciseAt().question);
    expect(box().getAttribute("aria-label")).toBe("Your answer, in rpm");
    expect(item().querySelector(".unit")?.textContent).toBe("rpm");
    expect(reply()).toBe("");
  });

  it("hide the solution until it was tried", () => {
    expect(button("show me")).toBeUndefined();
    expect(solution().hidden).toBe(true);
    check("1");
    expect(solution().hidden).toBe(true);
    button("show me")?.click();
    expect(solution().hidden).toBe(false);
    expect(solution().textContent).toContain(exerciseAt().answer);
    button("hide the solution")?.click();
    expect(solution().hidden).toBe(true);
  });

  it("set the solution's formulas, with the numbers, as MathML", async () => {
    check("1");
    button("show me")?.click();
    await expect.poll(() => solution().querySelectorAll("math").length).toBe(2);
    expect(solution().querySelector("annotation")).toBeNull();
    expect(solution().querySelectorAll(".formula")[1]?.textContent).toContain("rpm");
  });

  it("answer a right answer", () => {
    const { target, solution: way } = exerciseAt();
    check(`${target.value.toFixed(0)} rpm`);
    expect(reply()).toBe(`Right. ${way.because}`);
    expect(item().classList.contains("is-right")).toBe(true);
    expect(box().getAttribute("aria-invalid")).toBeNull();
    expect(button("solution")).toBeDefined();
  });

  it("answer a slip with its hint", () => {
    const [slip] = exerciseAt().target.slips;
    check(String(slip?.value));
    expect(reply()).toBe(slip?.hint);
    expect(box().getAttribute("aria-invalid")).toBe("true");
    expect(item().classList.contains("is-right")).toBe(false);
  });

  it("don't count an empty box as a try", () => {
    check("  ");
    expect(button("show me")).toBeUndefined();
    expect(Object.keys(answersNow())).toEqual([]);
  });

  it("keep what was typed across pages, as short text", () => {
    check(`${"9".repeat(200)}`);
    for (const value of Object.values(answersNow())) expect(String(value).length).toBeLessThan(120);
    check("1234", 1);
    const again = document.createElement("div");
    const { view, state } = shown();
    view.mount(again, createBench())(state);
    expect(again.querySelectorAll("input")[1]?.value).toBe("1234");
  });

  it("draw new numbers for one exercise and forget its answer", () => {
    const [first, second] = [exerciseAt(0).question, exerciseAt(1).question];
    check("1");
    button("new numbers")?.click();
    expect(exerciseAt(0).question).not.toBe(first);
    expect(item().querySelector("legend")?.textContent).toBe(exerciseAt(0).question);
    expect([box().value, reply(), button("show me")]).toEqual(["", "", undefined]);
    expect(exerciseAt(1).question).toBe(second);
  });

  it("don't hold an answer against other numbers", () => {
    check(String(exerciseAt().target.value));
    expect(reply()).toContain("Right");
    machine = demos[1]!;
    follow();
    expect(reply()).toBe("Your machine has changed, and these numbers with it.");
    expect(solution().hidden).toBe(true);
    machine = clubTrainer;
    follow();
    expect(reply()).toContain("Right");
  });

  it("leave what is being typed alone while the machine moves", () => {
    box().value = "21";
    machine = demos[2]!;
    follow();
    expect(box().value).toBe("21");
  });

  it("build nothing anew", () => {
    const before = [...host.querySelectorAll("*")];
    machine = demos[1]!;
    follow();
    expect([...host.querySelectorAll("*")]).toEqual(before);
  });

  it("give a room the same numbers, and say which", () => {
    const state = shown(40).state as ExercisesState;
    expect(state).not.toEqual(shown().state);
    expect(state).toEqual(shown(40).state);
    update(state);
    expect(item().querySelector(".exercise-numbers")?.textContent).toBe("Numbers 40");
  });
});

describe("in words and data", () => {
  it("says question, answer and reply", () => {
    check("1");
    const { view, state } = shown();
    const words = view.words(state);
    expect(words).toContain(exerciseAt().question);
    expect(words).toContain("You said 1.");
    expect(words).toContain(reply());
    expect(words).not.toContain("The model says");
    button("show me")?.click();
    expect(view.words(shown().state)).toContain(`The model says ${exerciseAt().answer}.`);
  });

  it("is plain data", () => {
    check("1");
    expect(blemishes(shown().state, "exercises")).toEqual([]);
    expect(structuredClone(shown().state)).toEqual(shown().state);
  });

  it("takes no harm from answers that aren't its own", () => {
    const id = exerciseAt().id;
    for (const bad of ["", "x", "a b c d", "1 2 3 4", `${"z".repeat(90)}`]) {
      const { state } = exercises(page, machine, { [`exercise ${id}`]: bad, [`exercise ${id} numbers`]: -3.5 });
      expect(state.items[0]?.tries).toBe(0);
    }
  });
});
