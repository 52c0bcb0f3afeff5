/**
 * The exercises of a page: a question with the reader's own kind of numbers, a box to type into, an answer in words to
 * what was typed, and the way there once it was tried. On paper each has room to write.
 */
import type { Exercise } from "#exercises/exercise";
import { mark, type Verdict } from "#exercises/mark";
import type { ExercisePage } from "#exercises/pages";
import { exercisesOn } from "#exercises/sheet";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { el, setAttribute, setText } from "#view/dom";
import { setFormula } from "#view/formula";
import { type Shown, show, type View } from "#view/shown";
import { unitsNow } from "#view/units";
import { enExercises as en } from "#view/words/en-exercises";
import { keepProgress, keyOf, longest, progressOf, seedNow, turnOn, turnsOf } from "./exercise-progress.ts";

interface ExerciseState {
  readonly exercise: Exercise;
  /** The numbers that these are; another set has another key. */
  readonly key: string;
  readonly turns: number;
  readonly seed: number;
  readonly tries: number;
  readonly typed: string;
  readonly verdict: Verdict | null;
  /** The solution is open. */
  readonly opened: boolean;
  /** The reader had answered, but with other numbers. */
  readonly changed: boolean;
}

export interface ExercisesState {
  readonly page: ExercisePage;
  readonly items: readonly ExerciseState[];
}

/**
 * The exercises of a page for a machine. `seed` is the same for everybody in a room; 'new numbers' goes on from it.
 * Units: each question says its own.
 */
export function exercises(
  page: ExercisePage,
  machine: Machine,
  answers: Answers,
  seed = seedNow(answers),
): Shown<ExercisesState> {
  const seedOf = (id: string): number => seed + turnsOf(answers, id, seed);
  const items = exercisesOn(page, machine, seed, seedOf).map((exercise): ExerciseState => {
    const { id, target } = exercise;
    const key = keyOf(exercise);
    const kept = progressOf(answers, id);
    const now = kept?.key === key ? kept : { key, tries: 0, opened: false, typed: "" };
    return {
      exercise,
      key,
      turns: turnsOf(answers, id, seed),
      seed: seedOf(id),
      tries: now.tries,
      typed: now.typed,
      verdict: now.tries > 0 ? mark(now.typed, target) : null,
      opened: now.opened && now.tries > 0,
      changed: kept !== null && now !== kept,
    };
  });
  return show<ExercisesState>(exercisesView, { page, items });
}

/** What is answered to the reader, in words; nothing before a try. */
function replyOf({ verdict, changed, exercise }: ExerciseState): string {
  if (verdict === null) return changed ? en.changed : "";
  return verdict.kind === "right" ? `${en.right} ${exercise.solution.because}` : verdict.hint;
}

const sentence = (item: ExerciseState): string =>
  [
    item.exercise.question,
    item.typed && en.given(item.typed),
    replyOf(item),
    item.opened && en.solved(item.exercise.answer),
  ]
    .filter(Boolean)
    .join(" ");

const exercisesView: View<ExercisesState> = {
  name: "exercises",
  words: ({ items }) => [`${en.title}.`, ...(items.length > 0 ? items.map(sentence) : [en.none])].join(" "),
  mount(host) {
    const doc = host.ownerDocument;
    const none = el(doc, "p", {}, en.none);
    const list = el(doc, "ol", { class: "exercises" });
    const metric = el(doc, "p", { class: "soft" }, en.metric);
    host.append(el(doc, "h2", { class: "exercises-title" }, en.title), metric, list, none);
    const rows = new Map<string, Row>();
    return ({ items }) => {
      none.hidden = items.length > 0;
      metric.hidden = items.length === 0 || unitsNow() === "metric";
      for (const item of items) {
        const { id } = item.exercise;
        let row = rows.get(id);
        if (!row) {
          row = buildRow(doc, id);
          rows.set(id, row);
          list.append(row.element);
        }
        row.update(item);
      }
      for (const [id, row] of rows) {
        if (items.some(({ exercise }) => exercise.id === id)) continue;
        row.element.remove();
        rows.delete(id);
      }
    };
  },
};

interface Row {
  readonly element: HTMLElement;
  update(item: ExerciseState): void;
}

function buildRow(doc: Document, id: string): Row {
  const question = el(doc, "legend");
  const box = el(doc, "input", { type: "text", class: "exact", autocomplete: "off", maxlength: longest });
  const unit = el(doc, "span", { class: "unit" });
  const check = el(doc, "button", { type: "submit" }, en.check);
  const open = el(doc, "button", { type: "button", class: "quiet" });
  const another = el(doc, "button", { type: "button", class: "quiet" }, en.another);
  const numbers = el(doc, "span", { class: "exercise-numbers print-only" });
  const reply = el(doc, "p", { class: "guess-reply", role: "status", id: `exercise-${id}` });
  const way = el(doc, "div", { class: "exercise-solution" });
  const row = el(doc, "div", { class: "guess-row" }, box, unit, check, open, another, numbers);
  // A form, so that Enter checks; it never leaves the page.
  const form = el(
    doc,
    "form",
    { novalidate: true },
    el(doc, "fieldset", { class: "guess" }, question, row, reply, way),
  );
  const element = el(doc, "li", { "data-exercise": id }, form);
  box.setAttribute("aria-describedby", reply.id);
  let item: ExerciseState | null = null;

  const keep = (change: { tries?: number; opened?: boolean; typed?: string }): void => {
    if (item) keepProgress(id, { key: item.key, tries: item.tries, opened: item.opened, typed: item.typed, ...change });
  };
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (item && box.value.trim() !== "") keep({ tries: item.tries + 1, typed: box.value.trim() });
    else box.focus();
  });
  open.addEventListener("click", () => item && keep({ opened: !item.opened }));
  another.addEventListener("click", () => {
    if (item) turnOn(id, item.turns + 1, item.seed - item.turns);
    box.focus();
  });

  return {
    element,
    update(next) {
      const { target, question: words } = next.exercise;
      setText(question, words);
      setText(unit, target.unit);
      setAttribute(box, "aria-label", target.unit ? en.answerIn(target.unit) : en.answer);
      // What is being typed stays while only the numbers move; what was checked is shown again.
      if (item === null || item.typed !== next.typed || item.turns !== next.turns) box.value = next.typed;
      setText(numbers, en.numbers(next.seed));
      const right = next.verdict?.kind === "right";
      element.classList.toggle("is-right", right);
      setAttribute(box, "aria-invalid", next.verdict !== null && !right ? "true" : null);
      open.hidden = next.tries === 0;
      setText(open, next.opened ? en.hide : right ? en.solution : en.show);
      setAttribute(open, "aria-expanded", String(next.opened));
      setText(reply, replyOf(next));
      way.hidden = !next.opened;
      if (next.opened && (item?.key !== next.key || !item.opened)) showWay(way, next.exercise);
      item = next;
    },
  };
}

/** The way to the answer: each formula with its symbols, then with these numbers, and the sentence that says it. */
function showWay(host: HTMLElement, { solution, answer }: Exercise): void {
  const doc = host.ownerDocument;
  const formula = (tex: string): HTMLElement => {
    const place = el(doc, "div", { class: "formula" }, tex);
    void setFormula(place, tex);
    return place;
  };
  const lines = solution.formulas.flatMap(({ general, numbers }, i) => {
    const known = solution.formulas.slice(0, i).some((before) => before.general === general);
    return known ? [formula(numbers)] : [formula(general), formula(numbers)];
  });
  host.replaceChildren(...lines, el(doc, "p", {}, `${solution.because} `, el(doc, "b", {}, en.solved(answer))));
}
