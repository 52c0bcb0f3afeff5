/** A starting point for the room, on a page: any page of the workbook with the machine on the bench. */
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { type Shown, show, type View } from "#view/shown";
import { enStart as en } from "#view/words/en-start";
import { seedNow } from "./exercise-progress.ts";
import { type StartPage, startLink } from "./start-link.ts";

interface StartingPointState {
  readonly pages: readonly StartPage[];
  readonly now: Machine;
  readonly whatIf: Machine | null;
  readonly seed: number;
}

/** A link and a code that open one of the pages with this machine, and the same exercises for everybody. */
export const startingPoint = (
  pages: readonly StartPage[],
  now: Machine,
  whatIf: Machine | null,
  answers: Answers,
): Shown<StartingPointState> =>
  show<StartingPointState>(startingPointView, { pages, now, whatIf, seed: seedNow(answers) });

const startingPointView: View<StartingPointState> = {
  name: "starting-point",
  words: ({ pages, seed }) => en.words(pages[0]?.title ?? "", seed),
  mount(host) {
    let made: ReturnType<typeof startLink> | null = null;
    return ({ pages, now, whatIf }) => {
      if (!made) {
        made = startLink(host.ownerDocument, pages);
        host.append(made.element);
      }
      made.put({ now, whatIf });
    };
  },
};
