/** How a learning run is made: five lines that are ticked when they are as they should be, each with what it is otherwise. */
import { type LearningSetup, properLearning } from "#flights/scenarios";
import type { Machine } from "#machine/machine";
import { learning } from "#model/reference";
import { type Answers, answer } from "#view/answers";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enLearning } from "#view/words/en-learning";
import "./learning.css";

const en = enLearning.setup;

/** The lines, and the answers that keep them. */
export const slipKeys = ["pack", "pitch", "hand", "complete", "time"] as const;
export type SlipKey = (typeof slipKeys)[number];
const answerId = (key: SlipKey): string => `learning-${key}`;

interface Row {
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** What it should be, and what it becomes when it is unticked. */
  readonly proper: number;
  readonly slip: number;
}

/** The highest pitch that can be left in, deg: no more than the machine has. */
const pitchOf = ({ modes }: Machine): number =>
  Math.min(8, ...[Math.max(...modes.map((mode) => mode.collectiveMaxDeg))]);

function rowsOf(machine: Machine): Readonly<Record<SlipKey, Row>> {
  const pitch = Math.max(1, Math.floor(2 * pitchOf(machine)) / 2);
  return {
    pack: { unit: "percent", low: 20, high: 100, step: 1, proper: properLearning.chargePercent, slip: 50 },
    pitch: { unit: "deg", low: 0, high: pitch, step: 0.5, proper: 0, slip: Math.min(5, pitch) },
    hand: { unit: "deg", low: 0, high: pitch, step: 0.5, proper: 0, slip: Math.min(4, pitch) },
    complete: { unit: "", low: 0, high: 1, step: 1, proper: 1, slip: 0 },
    time: { unit: "s", low: 3, high: learning.secondsHigh, step: 1, proper: properLearning.seconds, slip: 8 },
  };
}

const isRight = (key: SlipKey, value: number, { proper }: Row): boolean =>
  key === "time" ? value >= learning.secondsLow : value === proper;

interface Line extends Row {
  readonly key: SlipKey;
  readonly value: number;
  readonly right: boolean;
}

function linesOf(machine: Machine, answers: Answers): Line[] {
  const rows = rowsOf(machine);
  return slipKeys.map((key) => {
    const row = rows[key];
    const kept = answers[answerId(key)];
    const value = typeof kept === "number" && kept >= row.low && kept <= row.high ? kept : row.proper;
    return { ...row, key, value, right: isRight(key, value, row) };
  });
}

/** The set-up of the run as the reader has it. Units: those of the set-up. */
export function learningSetup(machine: Machine, answers: Answers): LearningSetup {
  const [pack, pitch, hand, complete, time] = linesOf(machine, answers).map(({ value }) => value);
  return {
    chargePercent: pack!,
    pitchDeg: pitch!,
    swingDeg: hand!,
    complete: complete === 1,
    seconds: time!,
  };
}

const text = ({ unit, value }: Line): string => formatValue(value, unit, { decimals: unit === "deg" ? 1 : 0 });

const listed = (words: readonly string[]): string =>
  words.length > 1 ? `${words.slice(0, -1).join(", ")} and ${words.at(-1)}` : words.join("");

/** What is not as it should be: the keys of the lines, and all of it in words, with its figures and without; "" when everything is. */
export function slipsIn(
  machine: Machine,
  answers: Answers,
): { readonly keys: readonly SlipKey[]; readonly words: string; readonly kinds: string } {
  const wrong = linesOf(machine, answers).filter(({ right }) => !right);
  return {
    keys: wrong.map(({ key }) => key),
    words: listed(wrong.map((line) => (line.key === "complete" ? en.off.complete : en.off[line.key](text(line))))),
    kinds: listed(wrong.map(({ key }) => en.kinds[key])),
  };
}

interface SetupState {
  readonly lines: readonly Line[];
  /** The soft start, s. */
  readonly ramp: number;
  readonly words: string;
}

/** Lets the reader make the run as it should be, or otherwise. */
export function learningInputs(machine: Machine, answers: Answers): Shown<SetupState> {
  const { words } = slipsIn(machine, answers);
  return show<SetupState>(setupView, {
    lines: linesOf(machine, answers),
    ramp: machine.controller.startRampSeconds,
    words: words === "" ? en.right : en.wrong(words),
  });
}

const seconds = (value: number): string => formatValue(value, "s", { decimals: 0 });

let strips = 0;
/** Height of the bar and of all, px; the hatch's strokes are so far apart. */
const [BAR, STRIP, APART] = [34, 62, 8];
/** A part of the bar narrower than this share has no room for its words. */
const NARROW = 0.12;

/** The run as a strip of time: soft start, too early, enough; and where the reader stops. Places are shares of the width. */
function strip(doc: Document) {
  const id = `learning-hatch-${++strips}`;
  const part = (kind: string, fill?: string) => {
    const rect = new Pen(svgEl(doc, "rect", { class: kind, y: 4, height: BAR, ...(fill ? { fill } : {}) }));
    const text = new Pen(svgEl(doc, "text", { class: `${kind} words`, y: 4 + BAR / 2 + 5, dx: 7 }));
    return { rect, text };
  };
  const [start, early, good] = [part("start"), part("early", `url(#${id})`), part("good")] as const;
  const mark = new Pen(svgEl(doc, "line", { class: "mark", y1: 0, y2: BAR + 10 }));
  const end = new Pen(svgEl(doc, "text", { class: "learning-end", y: STRIP - 3 }));
  const hatch = svgEl(
    doc,
    "pattern",
    {
      id,
      width: APART,
      height: APART,
      patternUnits: "userSpaceOnUse",
      patternTransform: "rotate(45)",
      class: "plot-hatch",
    },
    svgEl(doc, "line", { x1: 0, y1: 0, x2: 0, y2: APART }),
  );
  const element = svgEl(
    doc,
    "svg",
    { class: "learning-strip", height: STRIP, "aria-hidden": "true" },
    svgEl(doc, "defs", {}, hatch),
    ...[start, early, good].map(({ rect }) => rect.element),
    ...[start, early, good].map(({ text }) => text.element),
    mark.element,
    end.element,
  );
  return {
    element,
    put(ramp: number, held: number) {
      const all = ramp + learning.secondsHigh;
      const share = (time: number) => `${((100 * time) / all).toFixed(2)}%`;
      const put = ({ rect, text }: typeof start, from: number, length: number, words: string) => {
        rect.set("x", share(from));
        rect.set("width", share(length));
        text.set("x", share(from));
        text.text(length > NARROW * all ? words : "");
      };
      put(start, 0, ramp, en.line.start(seconds(ramp)));
      put(early, ramp, learning.secondsLow, en.line.early(seconds(learning.secondsLow)));
      put(good, ramp + learning.secondsLow, learning.secondsHigh - learning.secondsLow, en.line.good);
      const place = ramp + held;
      mark.set("x1", share(place));
      mark.set("x2", share(place));
      end.set("x", share(place));
      end.set("text-anchor", place > all / 2 ? "end" : "start");
      end.text(en.line.end(seconds(held)));
    },
  };
}

const setupView: View<SetupState> = {
  name: "learning-setup",
  words: ({ words }) => `${en.title}. ${words}`,
  mount(host) {
    const doc = host.ownerDocument;
    const rows = new Map<SlipKey, { tick: HTMLInputElement; range: HTMLInputElement | null; shown: Element }>();
    let state: SetupState | null = null;
    const list = el(doc, "div", { class: "learning-rows" });
    const line = strip(doc);
    const said = el(doc, "p", { class: "heard", role: "status" });
    const hint = el(doc, "p", { class: "learning-hint" }, en.hint);
    const legend = el(doc, "legend", {}, en.title);
    host.append(el(doc, "fieldset", { class: "learning-setup" }, legend, hint, list, line.element, said));
    const lineAt = (key: SlipKey) => state?.lines.find((each) => each.key === key);
    for (const key of slipKeys) {
      const tick = el(doc, "input", { type: "checkbox" });
      const shown = el(doc, "output", { class: "ink" });
      const range = key === "complete" ? null : el(doc, "input", { type: "range", "aria-label": en.sliders[key] });
      tick.addEventListener("change", () => {
        const at = lineAt(key);
        if (at) answer(answerId(key), tick.checked ? null : at.slip);
      });
      range?.addEventListener("input", () => answer(answerId(key), Number(range.value)));
      const label = el(doc, "label", { class: "radio" }, tick, el(doc, "span", {}, en.rows[key]));
      const how = el(doc, "div", { class: "learning-how" }, ...(range ? [range] : []), shown);
      list.append(el(doc, "div", { class: "learning-row", "data-slip": key }, label, how));
      rows.set(key, { tick, range, shown });
    }
    return (next) => {
      state = next;
      for (const each of next.lines) {
        const row = rows.get(each.key)!;
        row.tick.checked = each.right;
        setAttribute(row.tick.closest("[data-slip]")!, "data-right", String(each.right));
        const shown = each.key === "complete" ? (each.right ? "" : en.off.complete) : text(each);
        setText(row.shown, shown);
        if (!row.range) continue;
        setAttribute(row.range, "min", String(each.low));
        setAttribute(row.range, "max", String(each.high));
        setAttribute(row.range, "step", String(each.step));
        setAttribute(row.range, "aria-valuetext", shown);
        if (row.range.value !== String(each.value)) row.range.value = String(each.value);
      }
      line.put(next.ramp, next.lines.find(({ key }) => key === "time")?.value ?? 0);
      setText(said, next.words);
    };
  },
};
