/** Undo and redo by keyboard, except where somebody is typing: a text box has an undo of its own. */
import type { Bench } from "#machine/bench";
import { redo, undo } from "./actions.ts";

/** Whether keys typed here belong to a text that is being written. */
function isTyping(target: EventTarget | null): boolean {
  const element = target as HTMLElement | null;
  if (!element?.matches?.("textarea, input, [contenteditable]")) return false;
  if (element.matches("input:is([type=range], [type=radio], [type=checkbox], [type=button], [readonly])")) return false;
  // A box of ours says whether its text is already the machine's.
  return !element.matches(".exact, .words, .dial-number") || element.matches("[data-typing]");
}

/** Listens until the function that it returns is called. */
export function listenToKeys(doc: Document, bench: Bench): () => void {
  const listener = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) redo(bench);
    else undo(bench);
  };
  doc.addEventListener("keydown", listener);
  return () => doc.removeEventListener("keydown", listener);
}
