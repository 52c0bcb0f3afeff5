/**
 * Which input matters most for a figure: a ranked bar of doubts. The reader says first which one; then the bars, and any of
 * them can be ticked off as if it had been measured. Worked out when the hand rests.
 */
import { catalogue, type QuantityName } from "#figures/catalogue";
import { bandWithout, doubtsBetween, doubtsOf, type Ranking } from "#figures/doubts";
import type { Figures } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import { inSentence } from "#machine/words";
import type { Answers } from "#view/answers";
import { el, setAttribute, setText } from "#view/dom";
import { formatValue, inReadersUnits } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enTwoMachines } from "#view/words/en-two-machines";
import { atRest } from "./at-rest.ts";
import {
  bars,
  buys,
  type DoubtsOf,
  type DoubtsState,
  guessId,
  keyOf,
  nameOf,
  question,
  widthOf,
} from "./doubts-drawn.ts";
import "./doubts.css";

const en = enTwoMachines.doubts;

/** The ranked doubts about one figure of a machine, or about the difference between the two on the bench. */
export function doubtsBar(
  now: Figures,
  whatIf: Figures | null,
  about: { readonly name: QuantityName; readonly mode: number; readonly of: DoubtsOf },
  answers: Answers,
): Shown<DoubtsState> {
  const of = whatIf ? about.of : "now";
  const given = answers[guessId(about.name, of)];
  const known = Object.keys(answers).flatMap((id) =>
    id.startsWith("known-") && answers[id] === 1 ? [id.slice(6)] : [],
  );
  return show<DoubtsState>(doubtsView, {
    now,
    whatIf,
    ...about,
    of,
    given: typeof given === "string" ? given : null,
    known,
  });
}

const subjectOf = ({ name, of }: DoubtsState): string => en.subject(catalogue[name].title, en.of[of]);

function rankingOf({ now, whatIf, name, mode, of }: DoubtsState): Ranking | null {
  if (of === "difference") return whatIf && doubtsBetween(now, whatIf, name, mode);
  const figures = of === "what-if" ? whatIf : now;
  // One machine's own doubts need no side beside their names.
  return figures && doubtsOf(figures, name, mode, "both");
}

const doubtsView: View<DoubtsState> = {
  name: "doubts-bar",
  words: (state) => en.words(catalogue[state.name].title, en.of[state.of]),
  mount(host) {
    const doc = host.ownerDocument;
    const title = el(doc, "p", { class: "doubts-name" });
    const status = el(doc, "p", { class: "doubts-words" });
    const list = el(doc, "div", { class: "doubts-list" });
    const first = el(doc, "p", { class: "doubts-words", role: "status" });
    const box = el(doc, "div", { class: "doubts" }, title, status, list, first);
    host.append(box);
    const later = atRest(host);
    let last: DoubtsState | null = null;
    let ranking: Ranking | null | undefined;
    let moving = false;
    const draw = (state: DoubtsState) => {
      if (ranking === undefined) return;
      setText(status, statusWords(state, ranking));
      const open = state.given !== null;
      if (!ranking || ranking.doubts.length === 0) list.replaceChildren();
      else if (open) list.replaceChildren(bars(doc, state, ranking));
      else list.replaceChildren(question(doc, state, ranking));
      setText(first, open && ranking ? replyWords(state, ranking) : "");
    };
    return (next) => {
      const same =
        last !== null &&
        last.now === next.now &&
        last.whatIf === next.whatIf &&
        last.name === next.name &&
        last.mode === next.mode &&
        last.of === next.of;
      last = next;
      setText(title, subjectOf(next));
      setAttribute(box, "data-of", next.of);
      if (same) {
        // What is being worked out anew will be drawn with the answer of then.
        if (moving) return;
        const held = focusHeld(list);
        draw(next);
        held();
        return;
      }
      moving = true;
      host.classList.add("is-moving");
      if (ranking === undefined) setText(status, en.working);
      later([
        () => {
          ranking = rankingOf(next);
          moving = false;
          host.classList.remove("is-moving");
          if (last) draw(last);
        },
      ]);
    };
  },
};

/** Rows are made anew; whoever stood on one of their controls stays there. */
function focusHeld(list: HTMLElement): () => void {
  const key = (list.ownerDocument.activeElement as HTMLElement | null)?.dataset.doubt;
  const inside = list.contains(list.ownerDocument.activeElement);
  return () => {
    if (!inside || key === undefined) return;
    for (const each of list.querySelectorAll<HTMLElement>("input[data-doubt]"))
      if (each.dataset.doubt === key) each.focus();
  };
}

function statusWords(state: DoubtsState, ranking: Ranking | null): string {
  if (!ranking) return en.none;
  if (ranking.doubts.length === 0) return en.sure;
  const { unit } = catalogue[state.name];
  const uncertainty = widthOf(ranking) / 4;
  const say = (value: number) => formatValue(value, unit, { uncertainty, signed: state.of === "difference" });
  const value = en.value(say(ranking.value), say(ranking.low), say(ranking.high));
  if (state.given === null || !ranking.doubts.some((doubt) => state.known.includes(keyOf(doubt)))) return value;
  const left = bandWithout(ranking, (doubt) => state.known.includes(keyOf(doubt)));
  return `${value} ${en.known(say(left.low), say(left.high))}`;
}

/** How to measure an input better, or where to read it; nothing for what no bench can settle. */
function adviceFor(path: string): string {
  if (path.startsWith("model.")) return "";
  const how = path.endsWith("collectiveMaxDeg") ? en.collective : en.how[path];
  return how ? `${en.better} ${how}` : `${en.read} ${inReadersUnits(fieldAt(path).read)}`;
}

function replyWords({ given }: DoubtsState, ranking: Ranking): string {
  const [most] = ranking.doubts;
  if (!most) return "";
  const said = ranking.doubts.find((doubt) => keyOf(doubt) === given);
  const truth = en.first(nameOf(most), buys(most, ranking));
  const verdict = !said ? "" : said === most ? en.right : en.wrong(inSentence(nameOf(said)), buys(said, ranking));
  return [verdict, truth, adviceFor(most.path)].filter(Boolean).join(" ");
}
