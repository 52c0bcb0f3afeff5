/** A case to puzzle over: readings of the reader's own machine with one fault in them. The page tells after the guess. */
import type { Figures } from "#figures/figures";
import { explain } from "#figures/misread";
import { type Planted, plantedCase } from "#figures/misread-cases";
import type { CauseKey } from "#figures/misread-causes";
import { type Answers, answer } from "#view/answers";
import { el } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enMisread } from "#view/words/en-misread";
import { causeList } from "./cause-list.ts";
import { type ChooseState, choose } from "./guess.ts";
import { readingPlot, readingTable } from "./misread-plot.ts";

const en = enMisread.guess;
const ID = "misread-case";

/** What stands beside the true cause: told apart by something else each. */
const choices: Readonly<Record<Planted["reading"]["instrument"], readonly CauseKey[]>> = {
  optical: ["teeth", "ceiling", "low-end", "blades", "flicker", "reference"],
  display: ["poles", "pack-then", "ceiling", "low-end", "display-teeth"],
};

interface NextState {
  readonly next: number;
}

/** The case that the reader has come to, in all its parts; parts are null where a machine can't have one. */
export function misreadCase(figures: Figures, answers: Answers) {
  const number = answers[ID];
  const planted = plantedCase(figures, typeof number === "number" && number >= 0 ? Math.floor(number) : 0);
  if (!planted)
    return { story: enMisread.story.none, table: null, question: null, plot: null, causes: null, next: null };
  const { reading, place } = planted;
  const question = questionOf(planted, answers);
  const told = question.state.given === null ? null : explain(figures, reading);
  return {
    story: enMisread.story.told(
      enMisread.story[reading.instrument],
      enMisread.story[reading.load],
      formatValue(100 * reading.sure, "percent"),
    ),
    table: readingTable(figures, reading),
    question,
    plot: readingPlot(figures, reading, told),
    causes: causeList(told),
    next: show<NextState>(nextView, { next: place + 1 }),
  };
}

function questionOf({ key, sizes, reading, place }: Planted, answers: Answers): Shown<ChooseState> {
  const options = choices[reading.instrument].includes(key)
    ? choices[reading.instrument]
    : [key, ...choices[reading.instrument]];
  const reply = Object.fromEntries(
    options.map((option) => {
      const words = enMisread.causes[option];
      return [option, option === key ? en.yes(words.found(sizes, ""), words.shows) : en.no(words.shows)];
    }),
  );
  return choose({
    id: `${ID}-${place}`,
    ask: en.ask,
    options: options.map((option) => ({ key: option, says: enMisread.causes[option].name })),
    right: key,
    reply,
    answers,
  });
}

const nextView: View<NextState> = {
  name: "next-case",
  words: () => en.nextWords,
  mount(host) {
    const button = el(host.ownerDocument, "button", { type: "button" }, en.next);
    host.append(button);
    let next = 0;
    button.addEventListener("click", () => answer(ID, next));
    return (state) => {
      next = state.next;
    };
  },
};
