/** All pages as whoever teaches with them wants to see them: folded away, each with its purpose in sight. */
import { el } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enLessons as en } from "#view/words/en-lessons";
import type { Lesson } from "./lesson.ts";
import "./lessons.css";

interface LessonListState {
  readonly lessons: readonly Lesson[];
}

/** The pages with what they are for, the wrong ideas, two ways through each, and questions for the room. */
export const lessonList = (lessons: readonly Lesson[]): Shown<LessonListState> =>
  show<LessonListState>(lessonListView, { lessons });

const lessonListView: View<LessonListState> = {
  name: "lesson-list",
  words: ({ lessons }) => en.pages(lessons.map(({ title }) => title).join("; ")),
  mount(host) {
    const doc = host.ownerDocument;
    const list = el(doc, "div", { class: "lessons" });
    host.append(list);
    let last: readonly Lesson[] = [];
    return ({ lessons }) => {
      if (lessons === last) return;
      last = lessons;
      list.replaceChildren(...lessons.map((lesson) => lessonOf(doc, lesson)));
    };
  },
};

function lessonOf(doc: Document, lesson: Lesson): HTMLElement {
  const { number, title, purpose, ideas, short, long, ask, href } = lesson;
  const head = el(
    doc,
    "summary",
    {},
    el(doc, "span", { class: "lesson-number" }, String(number)),
    el(doc, "span", {}, el(doc, "b", {}, title), el(doc, "span", { class: "lesson-purpose" }, purpose)),
  );
  const listed = (words: readonly string[]) => el(doc, "ul", {}, ...words.map((one) => el(doc, "li", {}, one)));
  const part = (name: string, inside: HTMLElement) => [el(doc, "dt", {}, name), el(doc, "dd", {}, inside)];
  const ways = el(
    doc,
    "dl",
    {},
    ...part(en.says, listed(ideas.map(en.quote))),
    ...part(en.short, el(doc, "p", {}, short)),
    ...part(en.long, el(doc, "p", {}, long)),
    ...part(en.ask, listed(ask)),
  );
  const goes = el(
    doc,
    "p",
    { class: "lesson-goes" },
    el(doc, "a", { href }, en.open),
    " ",
    el(doc, "a", { href: `${href}?present` }, en.present),
  );
  return el(doc, "details", { class: "lesson" }, head, ways, goes);
}
