/**
 * A number that belongs to a page and not to the machine: what a display was told, the pinion thought about. It is kept
 * with the reader's answers, so it changes no link and no file.
 */
import { type Answers, answer } from "#view/answers";
import { el, setAttribute, setText } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enSettings as en } from "#view/words/en-settings";

interface PageNumberOptions {
  /** Kept under this name; the same name on another page is the same number. */
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** What it is until the reader changes it. */
  readonly start: number;
}

interface PageNumberState extends PageNumberOptions {
  readonly value: number;
}

/** The number, and the input to show for it. An answer that doesn't fit the present ends counts as none. */
export function pageNumber(
  options: PageNumberOptions,
  answers: Answers,
): { readonly value: number; readonly input: Shown<PageNumberState> } {
  const { id, low, high, step } = options;
  const inside = (number: number) => Math.min(Math.max(low + Math.round((number - low) / step) * step, low), high);
  const kept = answers[id];
  const value = typeof kept === "number" && kept >= low && kept <= high ? inside(kept) : inside(options.start);
  return { value, input: show<PageNumberState>(pageNumberView, { ...options, value }) };
}

const decimalsOf = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
const textOf = (value: number, { step, unit }: PageNumberState): string => {
  // Distances follow the reader's units; what is measured at gears is in millimetres everywhere.
  if (unit === "m") return formatValue(value, unit);
  const text = formatNumber(value, decimalsOf(step));
  return unit === "" ? text : `${text}\u00a0${unit}`;
};

const pageNumberView: View<PageNumberState> = {
  name: "page-number",
  words: (state) => {
    const low = textOf(state.low, state).replace(/\u00a0.*/, "");
    return en.number(state.label, textOf(state.value, state), low, textOf(state.high, state));
  },
  mount(host) {
    const doc = host.ownerDocument;
    const name = el(doc, "span");
    const range = el(doc, "input", { type: "range" });
    const shown = el(doc, "output", { class: "ink" });
    host.append(el(doc, "label", { class: "page-number" }, name, range, shown));
    let state: PageNumberState | null = null;
    range.addEventListener("input", () => {
      if (state) answer(state.id, Number(range.value));
    });
    return (next) => {
      state = next;
      setText(name, next.label);
      setAttribute(range, "min", String(next.low));
      setAttribute(range, "max", String(next.high));
      setAttribute(range, "step", String(next.step));
      const value = String(next.value);
      if (range.value !== value) range.value = value;
      const text = textOf(next.value, next);
      setAttribute(range, "aria-valuetext", text);
      setText(shown, text);
    };
  },
};
