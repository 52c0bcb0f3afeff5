/** What is needed now and then: demo machines, files, colours, units. Folded away in the head of the page. */
import { newId, type Socket } from "#inputs/bound";
import { demos } from "#machine/demos";
import type { UnitSystem } from "#machine/units";
import { el } from "#view/dom";
import { chooseUnits, onUnits, unitsNow } from "#view/units";
import { en } from "#view/words/en";
import { enPresent } from "#view/words/en-present";
import { enSheet } from "#view/words/en-sheet";
import { openText, save, toDemo } from "./actions.ts";
import type { SheetKind } from "./sheet-kind.ts";
import { chooseTheme, type Theme, themeNow } from "./theme.ts";

/** Builds the menu: a fold that closes when something was chosen, on Escape, or when the reader goes elsewhere. */
export function makeMenu({ doc, bench }: Socket): HTMLElement {
  const summary = el(doc, "summary", { class: "head-button" }, en.header.menu);
  const body = el(doc, "div", { class: "menu-body" });
  const fold = el(doc, "details", { class: "menu" }, summary, body);
  const close = () => {
    fold.open = false;
  };
  const action = (words: string, run: () => void) => {
    const button = el(doc, "button", { type: "button" }, words);
    button.addEventListener("click", () => {
      close();
      run();
    });
    return button;
  };
  fold.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !fold.open) return;
    close();
    summary.focus();
  });
  body.addEventListener("click", (event) => {
    if ((event.target as Element).closest("a")) close();
  });
  doc.addEventListener("pointerdown", (event) => {
    if (fold.open && !fold.contains(event.target as Node)) close();
  });
  const file = el(doc, "input", {
    type: "file",
    accept: ".json,application/json",
    class: "heard",
    tabindex: "-1",
    "aria-label": en.header.open,
  });
  file.addEventListener("change", async () => {
    const chosen = file.files?.[0];
    if (chosen) openText(bench, await chosen.text());
    file.value = "";
  });
  const group = (title: string, ...inside: HTMLElement[]) =>
    el(doc, "div", { class: "menu-group", role: "group", "aria-label": title }, el(doc, "h2", {}, title), ...inside);
  body.append(
    group(en.header.demo, ...demos.map((demo) => action(demo.name, () => toDemo(bench, demo)))),
    group(
      en.header.room,
      el(doc, "a", { href: "?present", "data-present": "" }, enPresent.present),
      action(enSheet.print, () => print(doc, "handout")),
      action(enSheet.printKey, () => print(doc, "key")),
      el(doc, "a", { href: "./to-teach-with-this.html" }, en.header.evening),
    ),
    group(
      en.header.file,
      action(en.header.save, () => save(bench.now, doc)),
      action(en.header.open, () => file.click()),
      file,
    ),
    group(
      en.header.theme,
      ...radios<Theme>(
        doc,
        en.header.themes,
        () => themeNow(doc),
        (theme) => chooseTheme(doc, theme),
      ),
    ),
    group(en.header.units, ...radios<UnitSystem>(doc, en.header.systems, unitsNow, chooseUnits, onUnits)),
  );
  return fold;
}

const print = (doc: Document, kind: SheetKind) =>
  void import("./sheet.ts").then(({ printSheet }) => printSheet(doc, kind));

/** One radio button for each word of a choice. */
function radios<C extends string>(
  doc: Document,
  words: Readonly<Record<C, string>>,
  now: () => C,
  choose: (choice: C) => void,
  follow?: (listener: () => void) => void,
): HTMLElement[] {
  const name = newId();
  const inputs = (Object.keys(words) as C[]).map((value) => {
    const input = el(doc, "input", { type: "radio", name, value });
    input.addEventListener("change", () => choose(value));
    return input;
  });
  const show = () => {
    for (const input of inputs) input.checked = input.value === now();
  };
  show();
  follow?.(show);
  return inputs.map((input) =>
    el(doc, "label", { class: "radio" }, input, el(doc, "span", {}, words[input.value as C])),
  );
}
