/** What a teacher's fold offers beside its words: to present the page, and to put its questions to the room. */
import { askRoom } from "#blocks/room-guesses";
import { el } from "#view/dom";
import { enPresent } from "#view/words/en-present";
import { enRoom } from "#view/words/en-room-guesses";

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
  fold.querySelector("summary")?.after(el(doc, "p", { class: "teacher-does" }, present, " ", room));
}
