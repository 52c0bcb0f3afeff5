/**
 * The exercises of a page that has to be light: fetched when the reader comes near them. Where a page is set without a
 * screen, their place is kept by a line of words.
 */
import type { ExercisePage } from "#exercises/pages";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { el } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enLater as en } from "#view/words/en-later";
import { whenSeen } from "./when-seen.ts";

interface LaterState {
  readonly page: ExercisePage;
  readonly machine: Machine;
  readonly answers: Answers;
}

/** Like `exercises`, but its questions and their marking come after the page. Units: each question says its own. */
export const exercisesLater = (page: ExercisePage, machine: Machine, answers: Answers): Shown<LaterState> =>
  show(laterView, { page, machine, answers });

const laterView: View<LaterState> = {
  name: "exercises-later",
  words: () => en.waiting,
  mount(host, bench) {
    const place = el(host.ownerDocument, "div", { class: "exercises-later" });
    const waiting = el(host.ownerDocument, "p", { class: "later" }, en.waiting);
    place.append(waiting);
    host.append(place);
    if (typeof window === "undefined") return () => {};
    let state: LaterState | null = null;
    let put: (() => void) | null = null;
    let fetched = false;
    const fetch = async (): Promise<void> => {
      fetched = true;
      try {
        const { exercises } = await import("./exercise.ts");
        if (!state) return;
        const of = ({ page, machine, answers }: LaterState) => exercises(page, machine, answers);
        waiting.remove();
        const first = of(state);
        const update = first.view.mount(place, bench);
        put = () => state && update(of(state).state);
        update(first.state);
      } catch {
        // Without the network there is another try when the reader comes back.
        fetched = false;
        waiting.textContent = en.failed;
      }
    };
    const seen = whenSeen(place, () => void (fetched || fetch()));
    return (next) => {
      state = next;
      if (put) put();
      else seen.wake();
    };
  },
};
