/** How the presenting view is led: by keys, by a clicker (which sends keys), and by a finger that wipes sideways. */

export interface Moves {
  next(): void;
  back(): void;
  first(): void;
  last(): void;
  leave(): void;
  machine(): void;
  fill(): void;
  blank(): void;
  /** Gives the keyboard back to what is shown. */
  settle(): void;
}

const takesKeys = "input, textarea, select, [role=slider], [contenteditable]";

/** Whether a key belongs to the part of the page that has the focus. */
function isTheirs({ key, target }: KeyboardEvent): boolean {
  const element = target instanceof Element ? target : null;
  if (!element) return false;
  // A clicker's keys move on wherever the focus is: nothing on a page needs them.
  if (key === "PageDown" || key === "PageUp") return false;
  if (element.closest(takesKeys)) return true;
  return (key === " " || key === "Enter") && element.closest("button, a, summary") !== null;
}

function moveFor({ key, shiftKey }: KeyboardEvent): keyof Moves | null {
  switch (key) {
    case "ArrowRight":
    case "ArrowDown":
    case "PageDown":
    case "Enter":
      return "next";
    case " ":
      return shiftKey ? "back" : "next";
    case "ArrowLeft":
    case "ArrowUp":
    case "PageUp":
    case "Backspace":
      return "back";
    case "Home":
      return "first";
    case "End":
      return "last";
    case "Escape":
      return "leave";
    case "m":
    case "M":
      return "machine";
    case "f":
    case "F":
      return "fill";
    case "b":
    case "B":
    case ".":
      return "blank";
    default:
      return null;
  }
}

/** A wipe goes at least so far sideways, px, and twice as far as up or down. */
const WIPE = 60;

/** Listens until the function that it returns is called. */
export function listenToHand(doc: Document, moves: Moves): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const target = event.target instanceof Element ? event.target : null;
    if (event.key === "Escape" && target?.closest(`.worked, [aria-expanded="true"]`)) return;
    if (isTheirs(event)) {
      if (event.key === "Escape") moves.settle();
      return;
    }
    const move = moveFor(event);
    if (!move) return;
    event.preventDefault();
    moves[move]();
  };
  let start: { x: number; y: number; id: number } | null = null;
  const onDown = (event: PointerEvent) => {
    const target = event.target instanceof Element ? event.target : null;
    const free = event.pointerType === "touch" && event.isPrimary && !target?.closest(`${takesKeys}, .handle, .dial`);
    start = free ? { x: event.clientX, y: event.clientY, id: event.pointerId } : null;
  };
  const onUp = (event: PointerEvent) => {
    if (start?.id !== event.pointerId) return;
    const [dx, dy] = [event.clientX - start.x, event.clientY - start.y];
    start = null;
    if (Math.abs(dx) < WIPE || Math.abs(dx) < 2 * Math.abs(dy)) return;
    if (dx < 0) moves.next();
    else moves.back();
  };
  doc.addEventListener("keydown", onKey);
  doc.addEventListener("pointerdown", onDown);
  doc.addEventListener("pointerup", onUp);
  return () => {
    doc.removeEventListener("keydown", onKey);
    doc.removeEventListener("pointerdown", onDown);
    doc.removeEventListener("pointerup", onUp);
  };
}
