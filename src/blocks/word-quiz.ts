/** Which word is it? The meaning stands there, four words to choose from, and another one as often as you like. */
import { handFor } from "#exercises/hand";
import { type Answers, answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enWords as en } from "#view/words/en-words";
import { type ChooseState, choose } from "./guess.ts";

/** A word of the glossary as its page knows it. */
export interface Word {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
}

interface WordQuizState extends ChooseState {
  readonly turn: number;
  readonly right: string;
  /** Of those that were tried. */
  readonly known: number;
  readonly tried: number;
}

const turnId = "which-word turn";
const askId = (turn: number): string => `which-word ${turn}`;
const choices = 4;

/** The words of one turn, the right one first; the same for everybody. */
function drawn(words: readonly Word[], turn: number): Word[] {
  const hand = handFor(`word ${Math.floor(turn / Math.max(words.length, 1))}`);
  // In each round every word comes once.
  const order = shuffled(words, hand.whole);
  const right = order[turn % Math.max(words.length, 1)];
  if (!right) return [];
  const others = shuffled(
    words.filter((word) => word !== right),
    handFor(`beside ${turn}`).whole,
  );
  return [right, ...others.slice(0, choices - 1)];
}

function shuffled<T>(list: readonly T[], whole: (low: number, high: number) => number): T[] {
  const rest = [...list];
  return list.map(() => rest.splice(whole(0, rest.length - 1), 1)[0] as T);
}

/** Asks for the word to a meaning. `words` are those of the glossary. */
export function wordQuiz(words: readonly Word[], answers: Answers): Shown<WordQuizState> {
  const kept = answers[turnId];
  const turn = typeof kept === "number" && Number.isInteger(kept) && kept > 0 ? kept : 0;
  const four = drawn(words, turn);
  const right = four[0] ?? { id: "", name: "", meaning: "" };
  const question = choose({
    id: askId(turn),
    ask: en.ask(right.meaning),
    options: shuffled(four, handFor(`places ${turn}`).whole).map(({ id, name }) => ({ key: id, says: name })),
    right: right.id,
    reply: Object.fromEntries(
      four.map(({ id, name, meaning }) => [id, id === right.id ? en.yes : en.no(name, meaning)]),
    ),
    answers,
  });
  const tried = Array.from({ length: turn + 1 }, (_, i) => i).filter((i) => answers[askId(i)] !== undefined);
  const known = tried.filter((i) => answers[askId(i)] === drawn(words, i)[0]?.id);
  return show<WordQuizState>(wordQuizView, {
    ...question.state,
    turn,
    known: known.length,
    tried: tried.length,
  });
}

const { view: question } = choose({ id: "", ask: "", options: [], right: "", reply: {}, answers: {} });

const wordQuizView: View<WordQuizState> = {
  name: "word-quiz",
  words: (state) => `${en.which} ${question.words(state)}`,
  mount(host, bench) {
    const doc = host.ownerDocument;
    const inner = el(doc, "div", { class: "word-quiz" });
    const another = el(doc, "button", { type: "button" }, en.another);
    const score = el(doc, "span", { class: "unit" });
    host.append(inner, el(doc, "p", { class: "word-turn" }, another, " ", score));
    const put = question.mount(inner, bench);
    let turn = 0;
    another.addEventListener("click", () => answer(turnId, turn + 1));
    return (state) => {
      turn = state.turn;
      put(state);
      setText(score, state.tried > 0 ? en.score(state.known, state.tried) : "");
    };
  },
};
