/**
 * A question that the reader commits to before the page answers: a number on a scale, or one of a few sentences.
 * The guess is pencil and stays; 'show me' stands beside it, so nobody is forced.
 */
import { noticeAt } from "#inputs/notice";
import { readFigure, tidied } from "#inputs/typed";
import { shownUnit, shownValue, typedValue, unitsNow } from "#machine/units";
import { type Answers, answer } from "#view/answers";
import { el, setHidden, setText } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { unbroken } from "#view/text";
import { en } from "#view/words/en";
import { ask } from "./asked.ts";

/** The answer of those who want to be shown. */
export const SHOWN = "show me";

export interface ChooseState {
  readonly id: string;
  readonly ask: string;
  readonly options: readonly { readonly key: string; readonly says: string }[];
  readonly right: string;
  /** What the page answers to each option, by its key. */
  readonly reply: Readonly<Record<string, string>>;
  readonly given: string | null;
}

/** Asks for one of a few sentences. `right` is the key of the true one; every option has its reply. */
export function choose(question: Omit<ChooseState, "given"> & { answers: Answers }): Shown<ChooseState> {
  const { answers, ...rest } = question;
  const given = answers[question.id];
  return show(chooseView, { ...rest, given: typeof given === "string" ? given : null });
}

/** What the page answers; the truth stands on a line of its own behind a wrong guess. */
function chooseReply(state: ChooseState, between = " "): string {
  if (state.given === null) return "";
  const right = state.options.find((option) => option.key === state.right);
  const why = (state.reply[state.right] ?? "").replace(en.guess.praise, "");
  const truth = state.given === state.right || !right ? "" : `${en.guess.truth(right.says)} ${why}`;
  return [state.given === SHOWN ? "" : (state.reply[state.given] ?? ""), truth].filter(Boolean).join(between);
}

const chooseView: View<ChooseState> = {
  name: "choose",
  words: (state) =>
    `${state.ask} ${state.options.map((option) => option.says).join("; ")}. ${chooseReply(state)}`.trim(),
  mount(host) {
    const doc = host.ownerDocument;
    const legend = el(doc, "legend");
    const list = el(doc, "div", { class: "guess-options" });
    const reply = el(doc, "p", { class: "guess-reply", role: "status" });
    const showMe = el(doc, "button", { type: "button", class: "quiet" }, en.guess.showMe);
    const set = el(doc, "fieldset", { class: "guess" }, legend, list, showMe, reply);
    host.append(set);
    const asked = ask<ChooseState>(set);
    let shownId = "";
    let says: HTMLElement[] = [];
    const radios = new Map<string, HTMLInputElement>();
    return (state) => {
      if (shownId !== state.id) {
        shownId = state.id;
        set.dataset.guess = state.id;
        radios.clear();
        says = state.options.map(() => el(doc, "span"));
        list.replaceChildren(
          ...state.options.map((option, i) => {
            const radio = el(doc, "input", { type: "radio", name: `guess-${state.id}`, value: option.key });
            radio.addEventListener("change", () => answer(state.id, option.key));
            radios.set(option.key, radio);
            return el(doc, "label", {}, radio, says[i] ?? "");
          }),
        );
        showMe.onclick = () => answer(state.id, SHOWN);
      }
      setText(legend, unbroken(state.ask));
      says.forEach((text, i) => {
        setText(text, unbroken(state.options[i]?.says ?? ""));
      });
      for (const [key, radio] of radios) {
        radio.checked = key === state.given;
        radio.parentElement?.classList.toggle("is-right", state.given !== null && key === state.right);
        radio.parentElement?.classList.toggle("is-guess", key === state.given);
      }
      setHidden(showMe, state.given !== null);
      setText(reply, unbroken(chooseReply(state, "\n")));
      setHidden(reply, state.given === null);
      asked(state);
    };
  },
};

export interface EstimateState {
  readonly id: string;
  readonly ask: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** The model's answer, or null where there is none; then `reply` says why. */
  readonly answer: number | null;
  /** How near counts as right, in the same unit. */
  readonly within: number;
  readonly reply: string;
  /** Everybody knows it in this unit: gears are measured in millimetres. */
  readonly sameForAll?: boolean;
  readonly given: number | null;
  /** The unit in which the answer is kept, whatever the reader's units are. */
  readonly kept: string;
  /** 'show me' was pressed instead of a guess. */
  readonly skipped: boolean;
}

type Question = Omit<EstimateState, "given" | "skipped" | "kept">;

/** Asks for a number on a scale; in the reader's units, and kept in the question's own. */
export function estimate(question: Question & { answers: Answers }): Shown<EstimateState> {
  const { answers, ...rest } = question;
  const given = answers[question.id];
  const state: EstimateState = {
    ...rest,
    kept: rest.unit,
    given: typeof given === "number" ? given : null,
    skipped: given === SHOWN,
  };
  return show(estimateView, inReadersScale(state));
}

/** The question on a scale of the reader's units, with ends and steps that are round there. */
function inReadersScale(state: EstimateState): EstimateState {
  const { kept, answer: right, given } = state;
  const unit = state.sameForAll ? kept : shownUnit(kept, unitsNow());
  if (unit === kept) return state;
  const to = (value: number) => tidied(shownValue(value, kept, unitsNow()));
  const gap = (value: number) => to(value) - to(0);
  const rough = gap(state.step);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (([1, 2, 5].find((each) => each * power >= rough * 0.99) ?? 10) as number) * power;
  return {
    ...state,
    unit,
    step,
    low: tidied(Math.floor(to(state.low) / step + 1e-6) * step),
    high: tidied(Math.ceil(to(state.high) / step - 1e-6) * step),
    answer: right === null ? null : to(right),
    within: gap(state.within),
    given: given === null ? null : to(given),
  };
}

/** What is kept of a guess that was made on the reader's scale. */
const toKeep = (value: number, { unit, kept }: EstimateState): number =>
  unit === kept ? value : tidied(typedValue(value, kept, unitsNow()));

/** The scale has the reader's units already. */
const asIs = { units: "metric" } as const;

/** The gap between guess and model, in words. */
export function estimateReply(state: EstimateState): string {
  if (state.given === null && !state.skipped) return "";
  if (state.answer === null) return state.reply;
  // Teeth, times and whole per cent have no tenths.
  const whole = Number.isInteger(state.answer) ? { decimals: 0 } : {};
  const truth = `${en.guess.model} ${formatValue(state.answer, state.unit, { ...asIs, ...whole })}.`;
  if (state.given === null) return `${truth} ${state.reply}`;
  const gap = state.given - state.answer;
  const verdict =
    Math.abs(gap) <= state.within
      ? en.guess.near
      : `${en.guess.yours} ${formatValue(Math.abs(gap), state.unit, asIs)} ${gap > 0 ? en.guess.tooHigh : en.guess.tooLow}.`;
  return `${truth} ${verdict} ${state.reply}`;
}

const estimateView: View<EstimateState> = {
  name: "estimate",
  words: (state) => `${state.ask} ${estimateReply(state)}`.trim(),
  mount(host) {
    const doc = host.ownerDocument;
    const legend = el(doc, "legend");
    const range = el(doc, "input", { type: "range", class: "pencil" });
    const exact = el(doc, "input", { type: "text", inputmode: "decimal", class: "exact", autocomplete: "off" });
    const unit = el(doc, "span", { class: "unit" });
    const commit = el(doc, "button", { type: "button" }, en.guess.commit);
    const showMe = el(doc, "button", { type: "button", class: "quiet" }, en.guess.showMe);
    const again = el(doc, "button", { type: "button", class: "quiet" }, en.guess.again);
    const reply = el(doc, "p", { class: "guess-reply", role: "status" });
    const row = el(doc, "div", { class: "guess-row" }, range, exact, unit, commit, showMe, again);
    const set = el(doc, "fieldset", { class: "guess" }, legend, row, reply);
    host.append(set);
    const asked = ask<EstimateState>(set);
    let state: EstimateState | null = null;
    let draft = 0;
    const notice = noticeAt(row, exact);
    const take = (value: number) => {
      draft = value;
      range.value = String(value);
      exact.value = String(value);
      notice.say(null);
    };
    range.addEventListener("input", () => take(Number(range.value)));
    exact.addEventListener("change", () => {
      const typed = readFigure(exact.value.trim());
      if (typed !== null) return take(typed);
      // The last good guess comes back when it is committed or the slider moves.
      notice.say(en.guess.noNumber(exact.value, String(draft)));
    });
    commit.addEventListener("click", () => {
      if (state) answer(state.id, toKeep(draft, state));
    });
    showMe.addEventListener("click", () => state && answer(state.id, SHOWN));
    again.addEventListener("click", () => state && answer(state.id, null));
    return (next) => {
      if (state?.id !== next.id || state.unit !== next.unit) {
        set.dataset.guess = next.id;
        range.min = String(next.low);
        range.max = String(next.high);
        range.step = String(next.step);
        take(next.given ?? tidied(Math.round((next.low + next.high) / 2 / next.step) * next.step));
      } else if (next.given !== null && next.given !== draft) take(next.given);
      const done = next.given !== null || next.skipped;
      if (state?.ask !== next.ask || state.unit !== next.unit) {
        legend.textContent = unbroken(next.ask);
        range.setAttribute("aria-label", `${en.guess.title}, ${next.unit}`);
        exact.setAttribute("aria-label", `${en.guess.title}, ${en.guess.exact}, ${next.unit}`);
      }
      setText(unit, next.unit);
      range.disabled = exact.disabled = done;
      for (const before of [commit, showMe]) setHidden(before, done);
      for (const after of [again, reply]) setHidden(after, !done);
      setText(reply, unbroken(estimateReply(next)));
      state = next;
      asked(next);
    };
  },
};
