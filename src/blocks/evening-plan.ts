/** An evening in a minute: so much time, and the wrong idea that is in the room; the pages follow, in order. */
import { type Answers, answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enLessons as en } from "#view/words/en-lessons";
import { ideasOf, type Lesson, type PlanStep, planOf } from "./lesson.ts";
import "./lessons.css";

interface EveningPlanState {
  readonly ideas: readonly { readonly key: string; readonly says: string }[];
  readonly minutes: number;
  readonly idea: string;
  readonly steps: readonly PlanStep[];
}

const minutesId = "evening minutes";
const ideaId = "evening idea";
const [least, most, step, start] = [10, 180, 5, 60];

/** Plans an evening from the pages' own words. */
export function eveningPlan(lessons: readonly Lesson[], answers: Answers): Shown<EveningPlanState> {
  const ideas = ideasOf(lessons);
  const kept = answers[minutesId];
  const minutes = typeof kept === "number" && kept >= least && kept <= most ? kept : start;
  const idea = ideas.find(({ key }) => key === answers[ideaId])?.key ?? "";
  return show<EveningPlanState>(eveningPlanView, { ideas, minutes, idea, steps: planOf(lessons, minutes, idea) });
}

const total = (steps: readonly PlanStep[]): number => steps.reduce((sum, { minutes }) => sum + minutes, 0);

const sum = ({ steps }: EveningPlanState): string =>
  steps.length === 0 ? en.tooShort : en.plan(steps.length, total(steps));

const eveningPlanView: View<EveningPlanState> = {
  name: "evening-plan",
  words: (state) =>
    [sum(state), ...state.steps.map(({ lesson, minutes }) => `${lesson.title}, ${en.takes(minutes)}.`)].join(" "),
  mount(host) {
    const doc = host.ownerDocument;
    const range = el(doc, "input", { type: "range", min: least, max: most, step });
    const shown = el(doc, "output", { class: "ink" });
    const idea = el(doc, "select");
    const list = el(doc, "ol", { class: "plan" });
    const said = el(doc, "p", { class: "plan-sum", role: "status" });
    host.append(
      el(doc, "label", { class: "page-number" }, el(doc, "span", {}, en.minutes), range, shown),
      el(doc, "label", { class: "plan-idea" }, el(doc, "span", {}, en.idea), idea),
      said,
      list,
    );
    range.addEventListener("input", () => answer(minutesId, Number(range.value)));
    idea.addEventListener("change", () => answer(ideaId, idea.value === "" ? null : idea.value));
    let last = "";
    return (state) => {
      if (idea.options.length !== state.ideas.length + 1) {
        const options = state.ideas.map(({ key, says }) => el(doc, "option", { value: key }, en.quote(says)));
        idea.replaceChildren(el(doc, "option", { value: "" }, en.all), ...options);
      }
      range.value = String(state.minutes);
      idea.value = state.idea;
      setText(shown, en.takes(state.minutes));
      setText(said, sum(state));
      const now = state.steps.map(({ lesson, way }) => `${lesson.number} ${way}`).join();
      if (now === last) return;
      last = now;
      list.replaceChildren(...state.steps.map((one) => stepOf(doc, one)));
    };
  },
};

function stepOf(doc: Document, { lesson, way, minutes }: PlanStep): HTMLElement {
  const head = el(
    doc,
    "p",
    { class: "plan-page" },
    el(doc, "a", { href: lesson.href }, lesson.title),
    " ",
    el(doc, "span", { class: "unit" }, en.takes(minutes)),
    " ",
    el(doc, "a", { href: `${lesson.href}?present`, class: "plan-present" }, en.present),
  );
  // The long way begins with the short one.
  const says = way === "long" ? [lesson.short, lesson.long] : [lesson.short];
  return el(doc, "li", { value: lesson.number }, head, ...says.map((words) => el(doc, "p", {}, words)));
}
