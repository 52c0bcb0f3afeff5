/** What stands on a handout and on its key for each thing on a page. */
import type { ChooseState, EstimateState } from "#blocks/guess";
import type { Exercise } from "#exercises/exercise";
import { el } from "#view/dom";
import { formatValue } from "#view/format";
import { setFormula } from "#view/formula";
import type { Shown } from "#view/shown";
import { enSheet as en } from "#view/words/en-sheet";

import type { SheetKind } from "./sheet-kind.ts";
import { tablePiece, tablesOf } from "./sheet-tables.ts";

/** Empty lines to write on. */
export const ruled = (doc: Document, count: number, label = ""): HTMLElement =>
  el(
    doc,
    "div",
    { class: "ruled" },
    ...Array.from({ length: count }, (_, i) => el(doc, "p", {}, i === 0 && label ? `${label} ` : "\u00a0")),
  );

const question = (doc: Document, words: string, ...inside: HTMLElement[]): HTMLElement =>
  el(doc, "div", { class: "sheet-piece" }, el(doc, "p", { class: "sheet-ask" }, words), ...inside);

function choosePiece(doc: Document, kind: SheetKind, { ask, options, right, reply }: ChooseState): HTMLElement {
  if (kind === "key") {
    const says = options.find(({ key }) => key === right)?.says ?? "";
    return question(doc, ask, el(doc, "p", {}, el(doc, "b", {}, `${en.right}: ${says}.`), ` ${reply[right] ?? ""}`));
  }
  const boxes = options.map(({ says }) => el(doc, "li", {}, says));
  return question(doc, ask, el(doc, "ul", { class: "boxes" }, ...boxes), ruled(doc, 2, en.why));
}

function estimatePiece(doc: Document, kind: SheetKind, state: EstimateState): HTMLElement {
  const { ask, unit, answer, reply } = state;
  if (kind === "handout") return question(doc, ask, blank(doc, en.guess, unit), ruled(doc, 1, en.why));
  const truth = answer === null ? en.noAnswer : `${en.model} ${formatValue(answer, unit)}.`;
  return question(doc, ask, el(doc, "p", {}, el(doc, "b", {}, truth), ` ${reply}`));
}

/** A short line for a number, with its unit behind it. */
const blank = (doc: Document, label: string, unit: string): HTMLElement =>
  el(doc, "p", { class: "blank-number" }, `${label}: `, el(doc, "span"), ` ${unit}`);

/** The exercises under their heading; null where this machine gives them no numbers. */
export async function exercisePiece(
  doc: Document,
  kind: SheetKind,
  exercises: readonly Exercise[],
): Promise<HTMLElement | null> {
  if (exercises.length === 0) return null;
  return el(doc, "div", {}, el(doc, "h2", {}, en.exercises), await exerciseList(doc, kind, exercises));
}

async function exerciseList(doc: Document, kind: SheetKind, exercises: readonly Exercise[]): Promise<HTMLElement> {
  const items = await Promise.all(
    exercises.map(async ({ question: words, target, answer, solution }) => {
      const item = el(doc, "li", { class: "sheet-piece" }, el(doc, "p", { class: "sheet-ask" }, words));
      if (kind === "handout") item.append(ruled(doc, 3), blank(doc, en.answer, target.unit));
      else {
        item.append(el(doc, "p", {}, el(doc, "b", {}, `${answer}.`), ` ${solution.because}`));
        for (const { general, numbers } of solution.formulas)
          for (const tex of general === numbers ? [general] : [general, numbers]) {
            const place = el(doc, "div", { class: "formula" }, tex);
            item.append(place);
            await setFormula(place, tex);
          }
      }
      return item;
    }),
  );
  return el(doc, "ol", {}, ...items);
}

let copies = 0;

/** A picture as it stands, without what only works on a screen. Its names become others, so that both can stand. */
function pictureOf(figure: Element): Element {
  copies += 1;
  const copy = figure.cloneNode(true) as Element;
  for (const part of copy.querySelectorAll("figcaption, details, table, .arrows, button, input, select, [role=status]"))
    part.remove();
  const ids = new Map([...copy.querySelectorAll("[id]")].map(({ id }) => [id, `${id}-sheet-${copies}`]));
  for (const part of copy.querySelectorAll("*"))
    for (const { name, value } of [...part.attributes]) {
      const other =
        name === "id"
          ? ids.get(value)
          : value.replace(/#([^)"]+)/g, (all, id) => (ids.has(id) ? `#${ids.get(id)}` : all));
      if (other !== undefined && other !== value) part.setAttribute(name, other);
    }
  return copy;
}

const isChoose = (state: object): state is ChooseState => "options" in state && "right" in state && "ask" in state;
const isEstimate = (state: object): state is EstimateState => "within" in state && "ask" in state;
const exercisesOf = (state: object): Exercise[] | null =>
  "items" in state && "page" in state
    ? (state.items as { exercise: Exercise }[]).map(({ exercise }) => exercise)
    : null;

/** Whether a cell asks for a guess. */
export const isGuess = (shown: Shown | undefined): boolean =>
  typeof shown?.state === "object" && shown.state !== null && (isChoose(shown.state) || isEstimate(shown.state));

/** What stands for a cell on the sheet; nothing for inputs and warnings, which are of no use on paper. */
export async function pieceOf(kind: SheetKind, host: Element, shown: Shown | undefined): Promise<HTMLElement | null> {
  const doc = host.ownerDocument;
  const state = shown?.state;
  if (shown && typeof state === "object" && state !== null) {
    if (isChoose(state)) return choosePiece(doc, kind, state);
    if (isEstimate(state)) return estimatePiece(doc, kind, state);
    const exercises = exercisesOf(state);
    if (exercises) return exercisePiece(doc, kind, exercises);
  }
  const figures = [...host.querySelectorAll("figure")].filter((figure) => figure.querySelector("svg"));
  const tables = tablesOf(host).map((table) => tablePiece(kind, table));
  if (!shown || figures.length + tables.length === 0) return null;
  if (figures.length === 0) return el(doc, "div", {}, ...tables);
  if (kind === "key") return el(doc, "p", { class: "sheet-piece" }, `${en.shows}: ${shown.view.words(state)}`);
  return el(doc, "div", { class: "sheet-piece" }, ...figures.map(pictureOf), ruled(doc, 2, en.see));
}
