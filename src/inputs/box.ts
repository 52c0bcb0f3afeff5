/**
 * The text box of a field: the exact value, typed. What can't be taken is answered in words at the place; the machine
 * keeps the last good value, which comes back when the reader leaves the box or presses Escape.
 */
import type { Problem } from "#machine/bench";
import { el } from "#view/dom";
import { inTurn } from "#view/turns";
import { en } from "#view/words/en";
import { type Notice, noticeAt } from "./notice.ts";

export interface BoxWork {
  /** The present value as text; "" where there is none. */
  text(): string;
  /** The present value in a sentence. */
  words(): string;
  /** Takes what was typed, or says why not. */
  take(text: string): Problem | null;
  /** One step up or down, where the field has steps. */
  step?(direction: 1 | -1): void;
}

export interface Box {
  readonly input: HTMLInputElement;
  readonly notice: Notice;
  /** Shows the present value, unless somebody is typing. A change from elsewhere mends what was wrong. */
  show(changed: boolean): void;
  /** Takes what stands in the box now, as leaving it does. */
  commit(): void;
  /** Gives the typing up. */
  restore(): void;
}

/** Wires a text box to its work; words about what can't be taken stand at the end of `place`. */
export function boxFor(input: HTMLInputElement, place: HTMLElement, work: BoxWork): Box {
  const notice = noticeAt(place, input);
  let typing = false;
  let refused: string | null = null;

  const write = () => {
    const text = work.text();
    if (input.value !== text) input.value = text;
  };
  const writeUntyped = () => {
    if (!typing) write();
  };
  const writeInTurn = inTurn(writeUntyped);
  // Whoever listens to keys must know that this text is not the machine's yet.
  const setTyping = (now: boolean) => {
    if (typing === now) return;
    typing = now;
    input.toggleAttribute("data-typing", now);
  };
  const giveUp = () => {
    setTyping(false);
    refused = null;
    notice.say(null);
  };
  const restore = () => {
    giveUp();
    write();
  };
  const commit = () => {
    const text = input.value;
    // Enter commits, and the browser then tells of the same change once more.
    if (text === refused) return;
    if (text === work.text()) {
      if (typing) restore();
      return;
    }
    const problem = work.take(text);
    if (!problem) return restore();
    refused = text;
    notice.say(`${problem.words} ${en.input.kept(work.words())}`);
  };

  input.addEventListener("input", () => {
    setTyping(true);
    refused = null;
  });
  input.addEventListener("change", commit);
  input.addEventListener("blur", () => {
    commit();
    setTyping(false);
    refused = null;
    write();
  });
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") commit();
    else if (event.key === "Escape" && (typing || notice.shown)) {
      event.preventDefault();
      restore();
    } else if (work.step && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
      event.preventDefault();
      restore();
      work.step(event.key === "ArrowUp" ? 1 : -1);
    }
  });

  return {
    input,
    notice,
    commit,
    restore,
    show(changed) {
      if (changed) giveUp();
      // Leaving the box takes what stands in it, so the one that has the focus is never behind.
      if (input.ownerDocument.activeElement === input) writeUntyped();
      else writeInTurn();
    },
  };
}

/** A text box as numbers need it. */
export function numberInput(doc: Document, id: string, label: string, kind: "numeric" | "decimal" | "text") {
  return el(doc, "input", {
    type: "text",
    id,
    class: "exact",
    inputmode: kind,
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    "aria-label": label,
  });
}
