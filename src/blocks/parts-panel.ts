/**
 * The parts of the machine within reach: the five that matter most always, everything else one step away. On a phone it
 * folds into a bar. With a what-if machine on the bench it tells, and lets choose, which of the two is being changed.
 */
import { aimed, benchAim, bind, type Control, refreshAll, type Socket, socketFor } from "#inputs/bound";
import { makeChoice, makeText, makeToggle } from "#inputs/choice";
import { makeSlider, type SliderOptions } from "#inputs/slider";
import { withUnit } from "#inputs/typed";
import type { Bench } from "#machine/bench";
import { type Field, fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { el, setText } from "#view/dom";
import { inReadersUnits } from "#view/format";
import { rested } from "#view/rested";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { makeLearned } from "./learned-inputs.ts";
import { makeModes } from "./mode-inputs.ts";
import { fieldsOf, gists, mainFive, type Section, sections } from "./parts-list.ts";
import { makePin } from "./pin.ts";
import { makeStartFrom } from "./start-from.ts";
import { makeWhich } from "./which-machine.ts";

/** Where the owner reads a field, what is allowed and what it was at first. */
function readWords(field: Field): string {
  const words = [inReadersUnits(field.read)];
  if (field.kind !== "choice" && field.kind !== "text") {
    const ends = [withUnit(field.min, { ...field, unit: "" }), withUnit(field.max, field)] as const;
    words.push(field.wholeEven ? en.input.even(...ends) : en.input.limits(...ends));
    if (typeof field.default === "number") words.push(en.input.standard(withUnit(field.default, field)));
  }
  return words.join(" ");
}

function fieldInput(socket: Socket, field: Field): HTMLElement {
  const { doc } = socket;
  const none: SliderOptions = field.path === "mainRotor.ratedRpm" ? { none: en.input.unprinted } : {};
  const control =
    field.kind === "choice"
      ? makeChoice(socket, field.path)
      : field.kind === "text"
        ? makeText(socket, field.path)
        : makeSlider(socket, field.path, none);
  const note = el(doc, "p", { class: "read" }, readWords(field));
  const both: Control = {
    ...control,
    refresh(machine, anew) {
      control.refresh(machine, anew);
      if (anew) setText(note, readWords(field));
    },
  };
  return el(doc, "div", { class: "part" }, bind(socket, both).element, note);
}

/** The second stage: whether there is one, and its two gears. */
function secondStage(socket: Socket): HTMLElement {
  const { doc } = socket;
  const group = "gears.secondStage";
  const teeth = ["driverTeeth", "drivenTeeth"].map((key) => fieldInput(socket, fieldAt(`${group}.${key}`)));
  const inside = el(doc, "div", { class: "second-stage" }, ...teeth);
  const tick = bind(socket, makeToggle(socket, group, en.panel.secondStage));
  bind(socket, {
    element: inside,
    part: "gears",
    refresh: ({ gears }) => {
      inside.hidden = gears.secondStage === null;
    },
  });
  return el(doc, "div", {}, tick.element, inside);
}

function fill(socket: Socket, section: Section, body: HTMLElement): void {
  if (section === "learned") body.append(makeLearned(socket));
  else if (section === "modes") body.append(makeModes(socket));
  else body.append(...fieldsOf(section).map((field) => fieldInput(socket, field)));
  if (section === "gears") body.append(secondStage(socket));
}

/** A folded section. Its inputs are built when it is opened first: most readers open one or two. */
function sectionFor(socket: Socket, section: Section): HTMLDetailsElement {
  const { doc } = socket;
  const gist = el(doc, "span", { class: "gist" });
  const summary = el(doc, "summary", {}, el(doc, "span", {}, en.panel.sections[section]), " ", gist);
  const body = el(doc, "div", { class: "section-body" });
  const element = el(doc, "details", { class: "section", "data-section": section }, summary, body);
  element.addEventListener("toggle", () => {
    if (element.open && !body.firstChild) fill(socket, section, body);
  });
  let shown: Machine | null = null;
  const sum = rested(() => {
    if (shown) setText(gist, gists[section](shown));
  });
  bind(socket, {
    element,
    part: section === "learned" ? "controller" : section,
    refresh(machine) {
      shown = machine;
      sum();
    },
  });
  return element;
}

const barWords = ({ gears, motor, pack }: Machine): string =>
  `${gears.pinionTeeth}\u202f:\u202f${gears.mainTeeth} · ${en.learned.cells(pack.cells)} · ${withUnit(motor.kvRpmPerVolt, fieldAt("motor.kvRpmPerVolt"))}`;

/** Builds the panel in its host. */
export function mountParts(host: HTMLElement, bench: Bench): void {
  const doc = host.ownerDocument;
  const socket = socketFor(host, bench, benchAim(bench));
  const bar = el(doc, "button", {
    type: "button",
    class: "parts-bar",
    "aria-expanded": "false",
    "aria-controls": "parts-body",
  });
  const barGist = el(doc, "span", { class: "gist" });
  bar.append(el(doc, "b", {}, en.panel.bar), " ", barGist);

  const main = el(doc, "div", { class: "main-five", role: "group", "aria-label": en.panel.main });
  for (const path of mainFive) {
    main.append(bind(socket, makeSlider(socket, path, { label: en.panel.short[path] ?? fieldAt(path).name })).element);
  }
  const rest = sections.map((section) => sectionFor(socket, section));
  const name = bind(socket, makeText(socket, "name"));
  const body = el(
    doc,
    "div",
    { class: "parts-body", id: "parts-body" },
    el(doc, "div", { class: "strip" }, makePin(socket), makeWhich(socket)),
    main,
    el(doc, "h3", {}, en.panel.everything),
    makeStartFrom(socket),
    name.element,
    ...rest,
  );
  const panel = el(doc, "section", { class: "parts", "aria-label": en.panel.title }, bar, body);
  bar.addEventListener("click", () => openBar(panel, bar.getAttribute("aria-expanded") !== "true"));
  panel.addEventListener("keydown", (event) => {
    // An input that gives up what was typed has used the key already.
    if (event.key !== "Escape" || event.defaultPrevented || !panel.classList.contains("is-open")) return;
    openBar(panel, false);
    bar.focus();
  });
  let lastWhich = "";
  const sum = rested(() => setText(barGist, barWords(aimed(socket))));
  bind(socket, {
    element: panel,
    refresh() {
      if (!bench.whatIf && socket.aim.which === "what-if") {
        socket.aim.which = "now";
        // Not from inside this round of refreshing: the others would see two aims in one round.
        queueMicrotask(() => refreshAll(bench));
      }
      const which = socket.aim.which;
      if (which !== lastWhich) panel.dataset.machine = lastWhich = which;
      sum();
    },
  });
  host.replaceChildren(panel);
}

function openBar(panel: HTMLElement, open: boolean): void {
  panel.classList.toggle("is-open", open);
  panel.querySelector(".parts-bar")?.setAttribute("aria-expanded", String(open));
}

/** Opens one section of the panel on this page and takes the reader there. */
export function openSection(doc: Document, section: Section): void {
  const panel = doc.querySelector<HTMLElement>(".parts");
  const details = panel?.querySelector<HTMLDetailsElement>(`[data-section="${section}"]`);
  if (!panel || !details) return;
  openBar(panel, true);
  details.open = true;
  const summary = details.querySelector<HTMLElement>("summary");
  summary?.focus({ preventScroll: true });
  details.scrollIntoView({ block: "nearest" });
}

/** Takes the reader to the input of a field, wherever on the page it stands; its section is opened if need be. */
export function goToInput(doc: Document, path: string): void {
  const find = () => doc.querySelector<HTMLElement>(`[data-input="${path}"] input, [data-input="${path}"] select`);
  const go = () => {
    const input = find();
    input?.scrollIntoView({ block: "center" });
    input?.focus({ preventScroll: true });
  };
  if (find()) {
    go();
    return;
  }
  const learned = path.startsWith("controller.learned.");
  const section = learned ? "learned" : sections.find((each) => path.startsWith(`${each}.`));
  if (!section) return;
  openSection(doc, section);
  // The section builds its inputs when the browser tells that it was opened.
  setTimeout(go, 60);
}

const partsView: View<null> = {
  name: "parts",
  words: () => en.panel.title,
  mount(host, bench) {
    mountParts(host, bench);
    return () => {};
  },
};

/** The parts panel as something that a cell shows. */
export const partsPanel = (): Shown<null> => show(partsView, null);
