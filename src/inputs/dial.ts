/**
 * A number in the prose that can be changed where it stands: dragged sideways, stepped by the arrow keys, or typed: at
 * once, after a double click, or after a tap. It names its unit.
 */
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { inputValue } from "#machine/voltage";
import { el, setAttribute, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { bind, type Control, newGesture, newId, partOf, type Socket, socketFor } from "./bound.ts";
import { boxFor } from "./box.ts";
import { type NumberWork, numberWork } from "./number.ts";
import { unitBeside, withUnit } from "./typed.ts";

/** A drag over so many pixels goes from end to end of the sensible range, or further for fields of few steps. */
const SPAN = 500;
const MOST_PIXELS_PER_STEP = 12;
const FEWEST_STEPS_BY_PAGE_KEY = 5;

/** Builds an inline number; it follows the bench from then on. */
export function makeDial(socket: Socket, path: string): Control {
  const { doc } = socket;
  const field = fieldAt(path);
  const plain = numberWork(socket, path, field.kind === "nullable number" ? en.input.unset : null);
  // In the text its thousands are set apart, as those of the figures around it.
  const work: NumberWork = { ...plain, text: () => plain.figure() };
  const hint = el(doc, "span", { class: "heard", id: newId() }, en.input.drag);
  const input = el(doc, "input", {
    type: "text",
    role: "spinbutton",
    class: "dial-number",
    readonly: true,
    size: 3,
    inputmode: field.kind === "integer" ? "numeric" : "decimal",
    autocomplete: "off",
    "aria-label": field.name,
    "aria-describedby": hint.id,
  });
  const gap = doc.createTextNode("");
  const unit = el(doc, "span", { class: "unit" });
  const element = el(doc, "span", { class: "dial", "data-input": path }, input, gap, unit, hint);
  const box = boxFor(input, element, work);
  let keyGesture = "";

  const write = (value: number | null, gesture: string) => {
    if (value === null) return;
    const problem = work.set(value, gesture);
    box.notice.say(problem ? problem.words : null);
  };
  const edit = () => {
    input.readOnly = false;
    element.classList.add("is-typed");
    input.select();
  };
  const rest = () => {
    input.readOnly = true;
    element.classList.remove("is-typed");
  };
  input.addEventListener("dblclick", edit);
  input.addEventListener("blur", rest);
  input.addEventListener("keydown", (event) => {
    if (!input.readOnly) {
      if (event.key === "Enter" && !box.notice.shown) rest();
      else if (event.key === "Escape") rest();
      return;
    }
    if (event.key === "Enter") {
      event.preventDefault();
      edit();
      return;
    }
    // A figure typed on it begins a new number.
    if (/^\d$/.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) return edit();
    const steps = stepsOf(event.key, work);
    if (steps === null) return;
    event.preventDefault();
    if (!event.repeat || keyGesture === "") keyGesture = newGesture();
    write(work.stepped(steps), keyGesture);
  });
  dragSideways(input, work, write, edit);

  let shown: unknown;
  return {
    element,
    part: partOf(path),
    refresh(machine: Machine, anew: boolean) {
      const value = inputValue(machine, path);
      if (value === shown && !anew) return;
      const changed = value !== shown;
      shown = value;
      const { low, high } = work.field();
      box.show(changed);
      input.size = Math.max(2, input.value.length);
      setAttribute(input, "aria-valuemin", String(Math.min(low, Number(value))));
      setAttribute(input, "aria-valuemax", String(Math.max(high, Number(value))));
      setAttribute(input, "aria-valuenow", typeof value === "number" ? String(value) : null);
      setAttribute(input, "aria-valuetext", work.words());
      if (!anew) return;
      setText(unit, unitBeside(field));
      gap.data = ["", "°"].includes(unitBeside(field)) ? "" : "\u00a0";
    },
  };
}

function stepsOf(key: string, work: NumberWork): number | null {
  const { low, high, step } = work.field();
  const page = Math.max(FEWEST_STEPS_BY_PAGE_KEY, Math.round((high - low) / step / 10));
  const steps: Readonly<Record<string, number>> = {
    ArrowUp: 1,
    ArrowRight: 1,
    ArrowDown: -1,
    ArrowLeft: -1,
    PageUp: page,
    PageDown: -page,
  };
  return steps[key] ?? null;
}

/** A drag moves the value by whole steps; a finger that goes up or down still scrolls the page. */
function dragSideways(
  input: HTMLInputElement,
  work: NumberWork,
  write: (value: number | null, gesture: string) => void,
  edit: () => void,
): void {
  let from: number | null = null;
  let moved = false;
  let startX = 0;
  let gesture = "";
  input.addEventListener("pointerdown", (event) => {
    if (!input.readOnly || event.button !== 0) return;
    from = work.value();
    moved = false;
    startX = event.clientX;
    gesture = newGesture();
    input.setPointerCapture(event.pointerId);
  });
  input.addEventListener("pointermove", (event) => {
    if (from === null) return;
    const { low, high, step } = work.field();
    const pixels = Math.min(MOST_PIXELS_PER_STEP, (SPAN * step) / (high - low));
    const steps = Math.round((event.clientX - startX) / pixels);
    moved ||= steps !== 0;
    write(steps === 0 ? from : work.stepped(steps, from), gesture);
  });
  // A finger has no arrow keys: its tap asks for the keypad.
  input.addEventListener("pointerup", (event) => {
    if (from !== null && !moved && event.pointerType === "touch") edit();
  });
  for (const name of ["pointerup", "pointercancel", "lostpointercapture"] as const) {
    input.addEventListener(name, () => {
      from = null;
    });
  }
}

interface DialState {
  readonly path: string;
}

const dialView: View<DialState> = {
  name: "dial",
  words({ path }) {
    const field = fieldAt(path);
    return en.input.settable(field.name, withUnit(field.low, field), withUnit(field.high, field));
  },
  mount(host, bench) {
    let built = "";
    return ({ path }) => {
      if (path === built) return;
      built = path;
      const socket = socketFor(host, bench);
      host.replaceChildren(bind(socket, makeDial(socket, path)).element);
    };
  },
};

/** A field's value in the prose, to be changed where it stands: `{= dial("gears.pinionTeeth")}`. */
export function dial(path: string): Shown<DialState> {
  fieldAt(path);
  return show(dialView, { path });
}
