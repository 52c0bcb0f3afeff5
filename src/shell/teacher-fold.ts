/** What a teacher's fold offers beside its words: to present the page, to put its questions to the room, to print, to share. */
import { askRoom } from "#blocks/room-guesses";
import { startLink } from "#blocks/start-link";
import { el } from "#view/dom";
import { enPresent } from "#view/words/en-present";
import { enRoom } from "#view/words/en-room-guesses";
import { enSheet } from "#view/words/en-sheet";
import { enStart } from "#view/words/en-start";
import { openNow } from "./at-hand.ts";
import type { SheetKind } from "./sheet-kind.ts";

/** Puts the buttons at the head of an opened fold, once. */
export function fitOut(fold: HTMLDetailsElement): void {
  if (fold.querySelector(".teacher-does")) return;
  const doc = fold.ownerDocument;
  const present = el(doc, "a", { href: "?present", class: "button", "data-present": "" }, enPresent.present);
  const room = el(doc, "button", { type: "button", "data-ask-room": "" }, enRoom.ask);
  room.addEventListener("click", () => {
    const first = askRoom(doc);
    first?.scrollIntoView({ block: "center" });
    first?.querySelector<HTMLElement>(".room input, .room textarea")?.focus({ preventScroll: true });
  });
  const button = (words: string, act: () => void) => {
    const made = el(doc, "button", { type: "button" }, words);
    made.addEventListener("click", act);
    return made;
  };
  const print = (kind: SheetKind) => void import("./sheet.ts").then(({ printSheet }) => printSheet(doc, kind));
  const start = button(enStart.open, () => showStart(doc, start));
  const does = [
    present,
    room,
    button(enSheet.print, () => print("handout")),
    button(enSheet.printKey, () => print("key")),
    start,
  ];
  fold.querySelector("summary")?.after(el(doc, "p", { class: "teacher-does" }, ...does.flatMap((one) => [one, " "])));
}

/** Opens the starting link of this page below its button, or folds it away again. */
function showStart(doc: Document, button: HTMLButtonElement): void {
  const place = button.parentElement;
  const open = button.getAttribute("aria-expanded") !== "true";
  button.setAttribute("aria-expanded", String(open));
  const page = openNow();
  if (!open || !page || !place) {
    place?.parentElement?.querySelector(".start-link")?.remove();
    return;
  }
  const { element, put } = startLink(doc, [{ href: doc.location.pathname, title: doc.title }]);
  place.after(element);
  put(page.bench);
  const stop = page.bench.subscribe(() => (element.isConnected ? put(page.bench) : stop()));
}
