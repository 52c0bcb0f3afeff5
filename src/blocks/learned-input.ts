/** What the controller has learned, to be told in the middle of a page. */
import { socketFor } from "#inputs/bound";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { makeLearned } from "./learned-inputs.ts";

const learnedView: View<null> = {
  name: "learned-input",
  words: () => en.panel.sections.learned,
  mount(host, bench) {
    host.append(makeLearned(socketFor(host, bench)));
    return () => {};
  },
};

/** Not yet, a measured speed, or the parts that were fitted then. */
export const learnedInput = (): Shown<null> => show(learnedView, null);
