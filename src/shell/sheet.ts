/**
 * A lesson on paper: the page at its present settings as a handout (its question, room for answers, the plots as they
 * stand, the exercises with lines), or the key to it. Built when it is asked for, printed alone, then taken away.
 */
import { seedNow } from "#blocks/exercise-progress";
import { qrCode, quietZone } from "#blocks/qr";
import { isNear, startAddress } from "#blocks/start-link";
import type { Exercise } from "#exercises/exercise";
import { type ExercisePage, recipes } from "#exercises/pages";
import { exercisesOn } from "#exercises/sheet";
import type { Bench } from "#machine/bench";
import type { CellRecord } from "#notebook/record";
import { runHeadless } from "#notebook/runtime";
import { answersNow } from "#view/answers";
import { el, svgEl } from "#view/dom";
import { isShown, type Shown } from "#view/shown";
import { enSheet as en } from "#view/words/en-sheet";
import { openNow } from "./at-hand.ts";
import { gistOf } from "./gist.ts";
import { giver } from "./given.ts";
import type { SheetKind } from "./sheet-kind.ts";
import { exercisePiece, isGuess, pieceOf, ruled } from "./sheet-pieces.ts";
import "./sheet.css";

/** Prints the open page's handout or key, and nothing else of it. */
export async function printSheet(doc: Document, kind: SheetKind): Promise<void> {
  const open = openNow();
  const view = doc.defaultView;
  if (!open || !view) return;
  for (const old of doc.querySelectorAll(".sheet")) old.remove();
  // What waits to be seen before it is drawn draws itself for paper.
  view.dispatchEvent(new Event("beforeprint"));
  const sheet = await makeSheet(doc, kind, open.records, open.bench);
  doc.body.append(sheet);
  doc.documentElement.dataset.sheet = kind;
  const done = () => {
    sheet.remove();
    delete doc.documentElement.dataset.sheet;
  };
  view.addEventListener("afterprint", done, { once: true });
  view.print();
}

/** Builds the sheet of a page from its text and from what its cells show now. */
export async function makeSheet(
  doc: Document,
  kind: SheetKind,
  records: readonly CellRecord[],
  bench: Bench,
): Promise<HTMLElement> {
  const results = await runHeadless(records, giver()(bench));
  const shown = new Map(results.map(({ cell, value }) => [cell.id, isShown(value) ? value : undefined]));
  const sheet = el(doc, "section", { class: "sheet", "aria-label": en[kind] }, ...headOf(doc, kind, bench));
  const prose = doc.querySelector(".prose");
  let heading: Element | null = null;
  let asked = false;
  let exercised = false;
  const put = (piece: Element | null) => {
    if (!piece) return;
    // A heading stands only where something follows it.
    if (heading) sheet.append(heading);
    heading = null;
    sheet.append(piece);
  };
  for (const part of prose?.children ?? []) {
    // A page that has its exercises for paper alone gets them before its summary.
    if (part.id === "in-three-lines" && !exercised) put(await exercisePiece(doc, kind, ownExercises(doc, bench)));
    if (/^H[2-4]$/.test(part.tagName)) {
      heading = el(doc, "h2", {}, part.textContent ?? "");
      if (part.id === "in-three-lines" && kind === "handout") put(ruled(doc, 3));
    } else if (part instanceof HTMLElement && part.dataset.cell) {
      const cell = shown.get(part.dataset.cell);
      asked ||= isGuess(cell);
      exercised ||= cell?.view.name === "exercises";
      put(await pieceOf(kind, part, cell as Shown | undefined));
    } else put(wordsOf(part, kind, asked, heading));
  }
  return sheet;
}

/** The exercises that go by this page's title, whether it shows them or not. */
function ownExercises(doc: Document, { now }: Bench): readonly Exercise[] {
  const name = doc.title.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return name in recipes ? exercisesOn(name as ExercisePage, now, seedNow(answersNow())) : [];
}

/** What of the page's own words goes on the sheet. */
function wordsOf(part: Element, kind: SheetKind, asked: boolean, heading: Element | null): Element | null {
  const doc = part.ownerDocument;
  const text = part.matches("p") ? (plainCopy(part).textContent ?? "").replace(/[^\S\u00a0]+/g, " ").trim() : "";
  if (part.matches(".caution")) return kind === "handout" ? plainCopy(part) : null;
  if (part.matches(".teacher")) return kind === "key" ? teacherPart(part) : null;
  if (part.matches("p") && /^At the (?:bench|field):/.test(text)) return el(doc, "p", {}, text);
  // Until the first question the words set the scene; after it they would give answers away.
  if (part.matches("p") && !asked && text !== "") return el(doc, "p", {}, text);
  return part.matches("ul, ol") && kind === "key" && heading ? plainCopy(part) : null;
}

/** A copy as it reads: inputs as the values they hold, nothing to press, no names. */
function plainCopy(part: Element): Element {
  const copy = part.cloneNode(true) as Element;
  // A clone doesn't take along what was typed or dragged.
  const values = [...part.querySelectorAll("input")].map(({ value }) => value);
  for (const [i, input] of [...copy.querySelectorAll("input")].entries()) input.replaceWith(values[i] ?? "");
  for (const button of copy.querySelectorAll("button")) button.replaceWith(button.textContent ?? "");
  for (const hidden of copy.querySelectorAll(".heard, .screen-only, [hidden], .worked")) hidden.remove();
  for (const named of copy.querySelectorAll("[id], [data-cell]")) {
    named.removeAttribute("id");
    named.removeAttribute("data-cell");
  }
  return copy;
}

function teacherPart(fold: Element): Element {
  const doc = fold.ownerDocument;
  const inside = [...fold.children].filter((part) => part.matches("p:not(.teacher-does), ul, ol")).map(plainCopy);
  return el(doc, "div", { class: "sheet-teacher" }, el(doc, "h2", {}, en.teacher), ...(inside as HTMLElement[]));
}

function headOf(doc: Document, kind: SheetKind, bench: Bench): HTMLElement[] {
  const seed = seedNow(answersNow());
  const fill = [en.name, en.date].map((words) => el(doc, "span", { class: "fill-in" }, `${words} `));
  const facts = `${en.machine(bench.now.name, gistOf(bench.now))} · ${en.numbers(seed)}`;
  const head = el(
    doc,
    "div",
    {},
    el(doc, "p", { class: "sheet-kicker" }, `${doc.title} · ${en[kind]}`),
    el(doc, "h1", {}, doc.querySelector(".page h1")?.textContent ?? ""),
    ...(kind === "handout" ? [el(doc, "p", { class: "fill-ins" }, ...fill)] : []),
    el(doc, "p", { class: "sheet-kicker" }, facts),
  );
  const address = startAddress(doc.location.href, doc.location.href, bench, seed);
  const code = kind === "handout" && address && !isNear(address) ? codeOf(doc, address) : null;
  return [el(doc, "div", { class: "sheet-head" }, head, ...(code ? [code] : []))];
}

/** The starting link as a code, in the corner of the handout. */
function codeOf(doc: Document, address: string): HTMLElement | null {
  const code = qrCode(address);
  if (!code) return null;
  const side = code.size + 2 * quietZone;
  const svg = svgEl(doc, "svg", { class: "qr", viewBox: `${-quietZone} ${-quietZone} ${side} ${side}` });
  svg.append(svgEl(doc, "path", { class: "qr-dark", d: code.path }));
  return el(doc, "div", { class: "sheet-code" }, svg, el(doc, "p", {}, en.scan));
}
