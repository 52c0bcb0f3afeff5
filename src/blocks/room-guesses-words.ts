/** What the guesses of a room come to: as a plot in pencil with the answer in ink, and in words. */
import type { Level, PlotState } from "#plots/state";
import { formatValue } from "#view/format";
import { enRoom as en } from "#view/words/en-room-guesses";
import type { ChooseState, EstimateState } from "./guess.ts";
import { median, mostSaid, readCount, stacked } from "./room-guesses-read.ts";

/** The guesses and, once it is shown, the model's answer beside them. */
function guessWords(question: EstimateState, rising: readonly number[], shown: boolean): string {
  const say = (value: number) => formatValue(value, question.unit, { units: "metric" });
  const middle = median(rising);
  const [low, high] = [rising[0], rising.at(-1)];
  if (middle === null || low === undefined || high === undefined) return en.none;
  const count = rising.length;
  const many = low === high ? en.same(count, say(low)) : en.spread(count, say(low), say(high));
  const off = rising.filter((value) => value < question.low || value > question.high);
  const beyond = off.length > 0 ? ` ${en.off(off.length, off.slice(0, 4).map(say).join(", "))}` : "";
  const here = count === 1 ? en.one(say(low)) : `${many} ${en.middle(say(middle))}`;
  if (!shown) return here + beyond;
  if (question.answer === null) return `${en.noAnswer} ${here}${beyond}`;
  const { answer, within } = question;
  const near = rising.filter((value) => Math.abs(value - answer) <= within).length;
  const above = rising.filter((value) => value > answer + within).length;
  const gap = middle - answer;
  const verdict =
    Math.abs(gap) <= within ? en.middleRight(say(middle)) : en.gap(say(middle), say(Math.abs(gap)), gap > 0);
  const often = mostSaid(rising);
  const common = often && Math.abs(often.value - answer) > within ? ` ${en.often(say(often.value), often.count)}` : "";
  const sides = near === count ? "" : ` ${en.sides(above, count - near - above)}`;
  return `${en.near(near, count, say(within), say(answer))}${sides} ${verdict}${common}${beyond}`;
}

/** The guesses as dots of pencil over the question's scale; with `shown`, the answer and what is near enough to it. */
export function roomPlot(question: EstimateState, rising: readonly number[], shown: boolean): PlotState {
  const { low, high, unit, answer, within } = question;
  const { xs, ys } = stacked(rising, question);
  const top = Math.max(4, ...ys);
  const every = Math.ceil(top / 6);
  const edge = (key: string, at: number): Level => ({ key, axis: "x", at, label: "", ink: "plain" });
  const levels: Level[] =
    shown && answer !== null
      ? [
          edge("from", answer - within),
          edge("to", answer + within),
          {
            key: "model",
            axis: "x",
            at: answer,
            label: en.model(formatValue(answer, unit, { units: "metric" })),
            ink: "now",
          },
        ]
      : [];
  return {
    name: "room-guesses",
    title: en.title,
    unit: "",
    x: {
      label: en.axis,
      unit,
      sameForAll: true,
      low: Math.min(low, shown ? (answer ?? low) : low),
      high: Math.max(high, shown ? (answer ?? high) : high),
      exact: true,
    },
    y: {
      label: en.people,
      unit: "",
      low: 0,
      high: top + 0.5,
      exact: true,
      ticks: Array.from({ length: Math.floor(top / every) + 1 }, (_, i) => i * every),
    },
    curves: [{ key: "room", label: "", ink: "pencil", xs, ys, dots: true }],
    levels,
    words: guessWords(question, rising, shown),
    size: "short",
  };
}

/** The counts as numbers, in the order of the options; what is no count is none. */
export const countsOf = ({ options }: ChooseState, typed: Readonly<Record<string, string>>): number[] =>
  options.map(({ key }) => readCount(typed[key] ?? "") ?? 0);

/** How many hands; once shown, how many were right, and the wrong idea that most of the others have. */
export function choiceWords(question: ChooseState, counts: readonly number[], shown: boolean): string {
  const all = counts.reduce((sum, count) => sum + count, 0);
  if (all === 0) return en.none;
  if (!shown) return en.hands(all);
  const { options, right, reply } = question;
  const rightCount = counts[options.findIndex(({ key }) => key === right)] ?? 0;
  const wrong = options
    .map((option, i) => ({ ...option, count: counts[i] ?? 0 }))
    .filter(({ key, count }) => key !== right && count > 0)
    .sort((a, b) => b.count - a.count)[0];
  const said = en.choseRight(rightCount, all);
  if (!wrong) return said;
  const why = reply[wrong.key] ?? "";
  return `${said} ${wrong.count === 1 ? en.wrongOne(wrong.says, why) : en.wrong(wrong.count, wrong.says, why)}`.trim();
}
