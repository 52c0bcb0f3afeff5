/** A starting point as a link and a code: machine, page and the exercises' numbers, for phones in the room. */
import type { BenchState } from "#machine/bench";
import { writeLink } from "#machine/link";
import { answersNow } from "#view/answers";
import { el, setAttribute, setText, svgEl } from "#view/dom";
import { enStart as en } from "#view/words/en-start";
import { isSeed, seedNow, startFrom } from "./exercise-progress.ts";
import "./start-link.css";

/** A page that a link can lead to. */
export interface StartPage {
  readonly href: string;
  readonly title: string;
}

/** The address of a starting point; null where the workbook itself has none yet. */
export function startAddress(base: string, href: string, { now, whatIf }: BenchState, seed: number): string | null {
  if (!/^(?:https?|file):/.test(base)) return null;
  const url = new URL(href, base);
  url.search = "";
  url.hash = writeLink({ now, whatIf, extras: { seed } });
  return url.href;
}

/** Whether an address means the very computer that it is typed on. */
export const isNear = (address: string): boolean =>
  /^(?:file:|https?:\/\/(?:localhost|[\w-]+\.localhost|127(?:\.\d+){3}|\[::1\]|0\.0\.0\.0)(?:[:/]|$))/.test(address);

export interface StartLink {
  readonly element: HTMLElement;
  /** Brings link and code to the bench and the seed as they are. */
  put(bench: BenchState): void;
}

/** Builds it: a choice of pages if there are several, the numbers, the link, the code. */
export function startLink(doc: Document, pages: readonly StartPage[]): StartLink {
  const page = el(doc, "select", {}, ...pages.map(({ href, title }) => el(doc, "option", { value: href }, title)));
  const seed = el(doc, "input", { type: "number", min: 1, max: 9999, step: 1, class: "exact" });
  const box = el(doc, "input", { type: "text", readonly: true, class: "copy", "aria-label": en.link });
  const copy = el(doc, "button", { type: "button" }, en.copy);
  const said = el(doc, "span", { class: "unit", role: "status" });
  const shape = svgEl(doc, "path", { class: "qr-dark" });
  const ground = svgEl(doc, "rect", { class: "qr-ground" });
  const code = svgEl(doc, "svg", { class: "qr", role: "img", "shape-rendering": "crispEdges" }, ground, shape);
  const note = el(doc, "p", { class: "start-note", hidden: true });
  const element = el(
    doc,
    "section",
    { class: "start-link", "aria-label": en.title },
    el(doc, "label", { hidden: pages.length < 2 }, el(doc, "span", {}, en.page), page),
    el(doc, "label", {}, el(doc, "span", {}, en.seed), seed),
    el(doc, "p", { class: "start-row" }, box, copy, said),
    note,
    code,
    el(doc, "p", { class: "start-same" }, en.same),
  );
  let last: BenchState | null = null;
  let shown = "";
  const refresh = () => {
    if (!last) return;
    const number = seedNow(answersNow());
    if (doc.activeElement !== seed) seed.value = String(number);
    const address = startAddress(doc.location?.href ?? "", page.value, last, number) ?? "";
    if (address === shown) return;
    shown = address;
    box.value = address;
    setText(said, "");
    const near = isNear(address);
    setText(note, near ? en.near : "");
    note.hidden = !near;
    void import("./qr.ts").then(({ qrCode, quietZone }) => {
      if (address !== shown) return;
      const drawn = qrCode(address);
      code.toggleAttribute("hidden", drawn === null);
      if (!drawn) {
        note.hidden = false;
        setText(note, en.tooLong);
        return;
      }
      const side = drawn.size + 2 * quietZone;
      setAttribute(code, "viewBox", `${-quietZone} ${-quietZone} ${side} ${side}`);
      setAttribute(code, "aria-label", en.code(address));
      for (const [name, value] of Object.entries({ x: -quietZone, y: -quietZone, width: side, height: side }))
        setAttribute(ground, name, String(value));
      setAttribute(shape, "d", drawn.path);
    });
  };
  page.addEventListener("change", refresh);
  seed.addEventListener("change", () => {
    const number = Number(seed.value);
    setText(said, isSeed(number) ? "" : en.noSeed);
    if (!isSeed(number)) return;
    startFrom(number);
    refresh();
  });
  box.addEventListener("focus", () => box.select());
  copy.addEventListener("click", async () => {
    try {
      await doc.defaultView?.navigator.clipboard.writeText(box.value);
      setText(said, en.copied);
    } catch {
      // Where copying is forbidden the text is marked, ready to be copied by hand.
      box.focus();
    }
  });
  return {
    element,
    put(bench) {
      last = bench;
      refresh();
    },
  };
}
