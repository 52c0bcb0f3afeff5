/** Fields that hold one of a few words, free text, or a group of fields that is there or not. */
import { fieldAt, shapeAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { valueAt } from "#machine/paths";
import { filled } from "#machine/shape";
import { el } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { aimed, bind, type Control, newId, partOf, propose, type Socket, socketFor } from "./bound.ts";
import { boxFor } from "./box.ts";
import { noticeAt } from "./notice.ts";

/** A native list of the words that a field can hold. */
export function makeChoice(socket: Socket, path: string, label?: string): Control {
  const { doc } = socket;
  const field = fieldAt(path);
  const id = newId();
  const options = (field.choices ?? []).map(({ value, name }) => el(doc, "option", { value }, name));
  const select = el(doc, "select", { id }, ...options);
  const element = el(
    doc,
    "div",
    { class: "input", "data-input": path },
    el(doc, "label", { for: id }, label ?? field.name),
    select,
  );
  const notice = noticeAt(element, select);
  select.addEventListener("change", () => {
    const problem = propose(socket, path, select.value);
    notice.say(problem ? problem.words : null);
    if (problem) select.value = String(valueAt(aimed(socket), path));
  });
  let shown: unknown;
  return {
    element,
    part: partOf(path),
    refresh(machine: Machine) {
      const value = valueAt(machine, path);
      if (value === shown || value === undefined) return;
      shown = value;
      select.value = String(value);
      notice.say(null);
    },
  };
}

/** A box for a name. */
export function makeText(socket: Socket, path: string, label?: string): Control {
  const { doc } = socket;
  const field = fieldAt(path);
  const id = newId();
  const input = el(doc, "input", { type: "text", id, class: "words", autocomplete: "off" });
  const element = el(
    doc,
    "div",
    { class: "input", "data-input": path },
    el(doc, "label", { for: id }, label ?? field.name),
    input,
  );
  const text = () => String(valueAt(aimed(socket), path) ?? "");
  const box = boxFor(input, element, {
    text,
    words: () => `“${text()}”`,
    take: (typed) => propose(socket, path, typed.trim()),
  });
  let shown: unknown;
  return {
    element,
    part: partOf(path),
    refresh(machine: Machine) {
      const value = valueAt(machine, path);
      if (value === shown) return;
      shown = value;
      box.show(true);
    },
  };
}

/** A tick for a group of fields that can be absent: ticked, each of its fields starts at its default. */
export function makeToggle(socket: Socket, path: string, label: string): Control {
  const { doc } = socket;
  const id = newId();
  const tick = el(doc, "input", { type: "checkbox", id });
  const element = el(
    doc,
    "div",
    { class: "input tick", "data-input": path },
    tick,
    el(doc, "label", { for: id }, label),
  );
  const notice = noticeAt(element, tick);
  let last: unknown = null;
  tick.addEventListener("change", () => {
    const shape = shapeAt(path);
    const start = last ?? (shape?.kind === "group" ? filled(shape) : null);
    const problem = propose(socket, path, tick.checked ? start : null);
    notice.say(problem ? problem.words : null);
    if (problem) tick.checked = !tick.checked;
  });
  return {
    element,
    part: partOf(path),
    refresh(machine: Machine) {
      const value = valueAt(machine, path);
      if (value) last = value;
      const on = value !== null && value !== undefined;
      if (tick.checked !== on) tick.checked = on;
    },
  };
}

interface FieldState {
  readonly path: string;
}

/** A view that builds one input and leaves it to follow the bench. */
function viewOf(
  name: string,
  words: (path: string) => string,
  make: (socket: Socket, path: string) => Control,
): View<FieldState> {
  return {
    name,
    words: ({ path }) => words(path),
    mount(host, bench) {
      let built = "";
      return ({ path }) => {
        if (path === built) return;
        built = path;
        const socket = socketFor(host, bench);
        host.replaceChildren(bind(socket, make(socket, path)).element);
      };
    },
  };
}

const choiceView = viewOf(
  "choice",
  (path) => en.input.choosable(fieldAt(path).name, (fieldAt(path).choices ?? []).map(({ name }) => name).join(", ")),
  makeChoice,
);
const textView = viewOf("text-input", (path) => en.input.writable(fieldAt(path).name), makeText);

/** Shows the list of a field's words: `choice("pack.chemistry")`. */
export function choice(path: string): Shown<FieldState> {
  fieldAt(path);
  return show(choiceView, { path });
}

/** Shows the box of a field that is free text: `textInput("name")`. */
export function textInput(path: string): Shown<FieldState> {
  fieldAt(path);
  return show(textView, { path });
}
