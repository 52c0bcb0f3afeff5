/**
 * What the controller has learned: not yet, or yes; then the speed that was measured, at the motor or at the rotor, and
 * the parts that were fitted.
 */
import { aimed, bind, type Control, newId, type Socket } from "#inputs/bound";
import { boxFor, numberInput } from "#inputs/box";
import { makeChoice, makeToggle } from "#inputs/choice";
import { makeSlider } from "#inputs/slider";
import { readTyped, withUnit } from "#inputs/typed";
import type { Which } from "#machine/bench";
import { fieldAt } from "#machine/fields";
import { type FittedParts, fittedNow, type Machine } from "#machine/machine";
import { el, setText } from "#view/dom";
import { formatNumber } from "#view/format";
import { en } from "#view/words/en";

const LEARNED = "controller.learned";
const thenFields = [
  "cells",
  "chemistry",
  "kvRpmPerVolt",
  "pinionTeeth",
  "mainTeeth",
  "bladeCount",
  "diameterMm",
  "chordMm",
];

/** Motor turns for one turn of the rotor. */
const ratioOf = ({ gears: { pinionTeeth, mainTeeth, secondStage } }: Machine): number =>
  (mainTeeth / pinionTeeth) * (secondStage ? secondStage.drivenTeeth / secondStage.driverTeeth : 1);

function partsInWords(parts: FittedParts): string {
  const kv = withUnit(parts.kvRpmPerVolt, fieldAt("motor.kvRpmPerVolt"));
  const { secondStage } = parts;
  const pairs = [[parts.pinionTeeth, parts.mainTeeth]];
  if (secondStage) pairs.push([secondStage.driverTeeth, secondStage.drivenTeeth]);
  const gears = pairs.map((pair) => pair.join("\u202f:\u202f")).join(" × ");
  const rotor = `${en.learned.bladeCount(parts.bladeCount)}, ${withUnit(parts.diameterMm, fieldAt("mainRotor.diameterMm"))}`;
  return en.learned.parts(en.learned.cells(parts.cells), kv, gears, rotor);
}

/** Changes what was learned, as one step of undo. */
function learn(socket: Socket, edit: (machine: Machine) => Partial<Machine["controller"]["learned"]>): void {
  const which: Which = socket.aim.which === "what-if" && socket.bench.whatIf ? "what-if" : "now";
  socket.bench.change(
    (machine) => ({
      ...machine,
      controller: { ...machine.controller, learned: { ...machine.controller.learned, ...edit(machine) } },
    }),
    { machine: which },
  );
}

/** The measured head speed: the motor's speed by way of the gears. An input of pages only. */
function makeHeadSpeed(socket: Socket): Control {
  const { doc } = socket;
  const field = { ...fieldAt(`${LEARNED}.motorRpm`), path: `${LEARNED}.headRpm` };
  const id = newId();
  const input = numberInput(doc, id, en.learned.headSpeed, "decimal");
  const element = el(doc, "div", { class: "input box-only", "data-input": field.path });
  const now = () => aimed(socket).controller.learned.motorRpm;
  const text = () => {
    const motorRpm = now();
    return motorRpm === null ? "" : formatNumber(motorRpm / ratioOf(aimed(socket)), 0).replace(",", "");
  };
  const box = boxFor(input, element, {
    text,
    words: () => (text() === "" ? en.input.unset : `${text()}\u00a0rpm`),
    take(typed) {
      const head = typed.trim() === "" ? null : (readTyped(typed, field) ?? typed);
      const motor = typeof head === "number" ? head * ratioOf(aimed(socket)) : head;
      const which: Which = socket.aim.which === "what-if" && socket.bench.whatIf ? "what-if" : "now";
      return socket.bench.set(`${LEARNED}.motorRpm`, motor, { machine: which });
    },
  });
  const entry = el(doc, "span", { class: "entry" }, input, el(doc, "span", { class: "unit" }, field.unit));
  element.append(el(doc, "label", { for: id }, en.learned.headSpeed), entry);
  let shown = "";
  return {
    element,
    refresh() {
      const next = text();
      box.show(next !== shown);
      shown = next;
    },
  };
}

/** The second stage while it learned: whether there was one, and its two gears. */
function stageThen(socket: Socket): HTMLElement[] {
  const path = `${LEARNED}.fittedWith.secondStage`;
  const gears = ["driverTeeth", "drivenTeeth"].map(
    (key) => bind(socket, makeSlider(socket, `${path}.${key}`, { boxOnly: true })).element,
  );
  const inside = el(socket.doc, "div", { class: "second-stage" }, ...gears);
  bind(socket, {
    element: inside,
    part: "controller",
    refresh({ controller: { learned } }: Machine) {
      inside.hidden = !learned.fittedWith?.secondStage;
    },
  });
  return [bind(socket, makeToggle(socket, path, en.panel.secondStage)).element, inside];
}

/** Builds the section; all of it follows the bench from then on. */
export function makeLearned(socket: Socket): HTMLElement {
  const { doc } = socket;
  const name = newId();
  const radio = (value: string, words: string) => {
    const input = el(doc, "input", { type: "radio", name, value });
    return { input, label: el(doc, "label", { class: "radio" }, input, el(doc, "span", {}, words)) };
  };
  const notYet = radio("no", en.learned.notYet);
  const yes = radio("yes", en.learned.measured);
  const throttle = bind(socket, makeSlider(socket, `${LEARNED}.throttlePercent`));
  const motor = bind(
    socket,
    makeSlider(socket, `${LEARNED}.motorRpm`, {
      label: en.learned.motorSpeed,
      boxOnly: true,
      none: en.learned.unmeasured,
    }),
  );
  const head = bind(socket, makeHeadSpeed(socket));
  const then = el(doc, "p", { class: "then" });
  const again = el(doc, "button", { type: "button" }, en.learned.learnNow);
  const edit = el(doc, "details", { class: "then-parts" }, el(doc, "summary", {}, en.learned.editParts));
  const speeds = el(doc, "fieldset", {}, el(doc, "legend", {}, en.learned.speed), motor.element, head.element);
  const fitted = el(doc, "fieldset", {}, el(doc, "legend", {}, en.learned.fitted), then, again, edit);
  const which = el(
    doc,
    "fieldset",
    { class: "learned" },
    el(doc, "legend", {}, en.learned.which),
    notYet.label,
    yes.label,
  );
  const host = el(doc, "div", { class: "learned" }, which, throttle.element, speeds, fitted);

  notYet.input.addEventListener("change", () => learn(socket, () => ({ motorRpm: null, fittedWith: null })));
  yes.input.addEventListener("change", () => learn(socket, (machine) => ({ fittedWith: fittedNow(machine) })));
  again.addEventListener("click", () => learn(socket, (machine) => ({ fittedWith: fittedNow(machine) })));

  let built = false;
  bind(socket, {
    element: host,
    part: "controller",
    refresh({ controller: { learned } }: Machine) {
      const known = learned.motorRpm !== null || learned.fittedWith !== null;
      notYet.input.checked = !known;
      yes.input.checked = known;
      speeds.hidden = fitted.hidden = !known;
      edit.hidden = learned.fittedWith === null;
      setText(then, learned.fittedWith ? partsInWords(learned.fittedWith) : en.learned.sameParts);
      if (!learned.fittedWith || built) return;
      built = true;
      for (const key of thenFields) {
        const path = `${LEARNED}.fittedWith.${key}`;
        const control = key === "chemistry" ? makeChoice(socket, path) : makeSlider(socket, path, { boxOnly: true });
        edit.append(bind(socket, control).element);
      }
      edit.append(...stageThen(socket));
    },
  });
  return host;
}
