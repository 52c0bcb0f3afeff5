/** A number by slider, by its box, and with step buttons where a finger needs them. */
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { inputValue } from "#machine/voltage";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { bind, type Control, newId, partOf, type Socket, socketFor } from "./bound.ts";
import { boxFor, numberInput } from "./box.ts";
import { numberWork } from "./number.ts";
import { rangeFor } from "./range.ts";
import { stepButton } from "./step-button.ts";
import { unitBeside, withUnit } from "./typed.ts";

export interface SliderOptions {
  /** The label; the field's own name where nothing is said. */
  readonly label?: string;
  /** Words for 'there is none': gives a number that may be null a button to say so. */
  readonly none?: string;
  /** Leaves the slider out: box and step buttons alone. */
  readonly boxOnly?: boolean;
}

/** Builds the input of a numeric field; it follows the bench from then on. */
export function makeSlider(socket: Socket, path: string, options: SliderOptions = {}): Control {
  const { doc } = socket;
  const first = fieldAt(path);
  const label = options.label ?? first.name;
  const none = options.none ?? (first.kind === "nullable number" ? en.input.unset : null);
  const work = numberWork(socket, path, none);
  const id = newId();
  const kind = first.min < 0 ? "text" : first.kind === "integer" ? "numeric" : "decimal";
  const input = numberInput(doc, id, label === first.name ? label : en.input.exact(first.name), kind);
  const unit = el(doc, "span", { class: "unit" });
  const less = stepButton(doc, en.input.less(first.name), "\u2212", (gesture) => stepBy(-1, gesture));
  const more = stepButton(doc, en.input.more(first.name), "+", (gesture) => stepBy(1, gesture));
  const entry = el(doc, "span", { class: "entry" }, less, input, unit, more);
  const element = el(doc, "div", { class: "input", "data-input": path });
  const stepBy = (direction: 1 | -1, gesture?: string) => {
    const next = work.stepped(direction);
    const problem = next === null ? null : work.set(next, gesture);
    box.notice.say(problem ? problem.words : null);
  };
  const box = boxFor(input, element, { ...work, step: (direction) => stepBy(direction) });
  const range = options.boxOnly ? null : rangeFor(doc, newId(), first.name, work, (words) => box.notice.say(words));
  const toggle =
    none === null ? null : el(doc, "button", { type: "button", class: "none", "aria-pressed": "false" }, none);

  element.append(el(doc, "label", { for: id }, label));
  if (range) element.append(range.input);
  element.append(entry);
  if (toggle) element.append(toggle);
  if (options.boxOnly) element.classList.add("box-only");
  let last = typeof first.default === "number" ? first.default : first.low;
  toggle?.addEventListener("click", () => void work.set(work.value() === null ? last : null));

  let shownValue: unknown;
  return {
    element,
    part: partOf(path),
    refresh(machine: Machine, anew: boolean) {
      const value = inputValue(machine, path);
      const changed = value !== shownValue;
      // The ends of some sliders follow other fields, so those look each time.
      if (!changed && !anew && path !== "pack.voltage") return;
      shownValue = value;
      const number = typeof value === "number" ? value : null;
      if (number !== null) last = number;
      range?.show(number, work.field(), anew);
      box.show(changed);
      if (anew) setText(unit, unitBeside(first));
      if (!toggle) return;
      toggle.setAttribute("aria-pressed", String(number === null));
      element.classList.toggle("is-none", number === null);
    },
  };
}

interface SliderState extends SliderOptions {
  readonly path: string;
}

const sliderView: View<SliderState> = {
  name: "slider",
  words({ path }) {
    const field = fieldAt(path);
    return en.input.settable(field.name, withUnit(field.low, field), withUnit(field.high, field));
  },
  mount(host, bench) {
    let built = "";
    return (state) => {
      const key = JSON.stringify(state);
      if (key === built) return;
      built = key;
      const socket = socketFor(host, bench);
      host.replaceChildren(bind(socket, makeSlider(socket, state.path, state)).element);
    };
  },
};

/** Shows the slider of a field, with its box: `slider("gears.pinionTeeth")`. */
export function slider(path: string, options: SliderOptions = {}): Shown<SliderState> {
  // A misspelt path is the author's mistake: say so where it is written.
  fieldAt(path);
  return show(sliderView, { path, ...options });
}
