/** The learning run as a list that is worked through with the hand; the ticks stay among the reader's answers. */
import { type Answers, answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { inReadersUnits } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enLearning } from "#view/words/en-learning";

const en = enLearning.check;
const ID = "learning-check";
const steps = en.parts.flatMap((part) => part.steps);

interface ChecklistState {
  readonly ticked: readonly boolean[];
}

/** The list, ticked as far as the reader got. */
export function learningChecklist(answers: Answers): Shown<ChecklistState> {
  const kept = answers[ID];
  const marks = typeof kept === "string" ? kept : "";
  return show<ChecklistState>(checklistView, { ticked: steps.map((_, i) => marks[i] === "x") });
}

const progress = ({ ticked }: ChecklistState): string => {
  const done = ticked.filter(Boolean).length;
  return done === steps.length ? en.all : en.done(String(done), String(steps.length));
};

const checklistView: View<ChecklistState> = {
  name: "learning-checklist",
  words: (state) => inReadersUnits(`${en.title}. ${steps.join(" ")} ${progress(state)}`),
  mount(host) {
    const doc = host.ownerDocument;
    const boxes: HTMLInputElement[] = [];
    const says = steps.map(() => el(doc, "span"));
    let ticked: readonly boolean[] = [];
    const keep = (next: readonly boolean[]) => answer(ID, next.map((each) => (each ? "x" : "-")).join(""));
    const lists = en.parts.flatMap((part) => [
      el(doc, "h3", {}, part.title),
      el(
        doc,
        "ol",
        { start: boxes.length + 1 },
        ...part.steps.map(() => {
          const i = boxes.length;
          const box = el(doc, "input", { type: "checkbox" });
          box.addEventListener("change", () => keep(ticked.map((each, k) => (k === i ? box.checked : each))));
          boxes.push(box);
          return el(doc, "li", {}, el(doc, "label", {}, box, says[i] ?? ""));
        }),
      ),
    ]);
    const done = el(doc, "span", { role: "status" });
    const again = el(doc, "button", { type: "button", class: "quiet" }, en.again);
    again.addEventListener("click", () => answer(ID, null));
    const foot = el(doc, "p", { class: "learning-done screen-only" }, done, " ", again);
    host.append(el(doc, "div", { class: "learning-checklist", role: "group", "aria-label": en.title }, ...lists, foot));
    return (next) => {
      ticked = next.ticked;
      for (const [i, step] of steps.entries()) setText(says[i] as HTMLElement, inReadersUnits(step));
      for (const [i, box] of boxes.entries()) box.checked = next.ticked[i] ?? false;
      setText(done, progress(next));
      again.hidden = !next.ticked.some(Boolean);
    };
  },
};
