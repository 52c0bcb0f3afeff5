/** The words at an input that was given something it can't take. */
import { el, setAttribute } from "#view/dom";
import { newId } from "./bound.ts";

export interface Notice {
  readonly shown: boolean;
  /** Puts words at the place; `null` takes them away. */
  say(words: string | null): void;
}

/** Words under `place`, tied to `input` for screen readers. The element is made when it is first needed. */
export function noticeAt(place: HTMLElement, input: HTMLElement): Notice {
  let paragraph: HTMLElement | null = null;
  let shown = false;
  const described = input.getAttribute("aria-describedby");
  return {
    get shown() {
      return shown;
    },
    say(words) {
      if (words === null && !shown) return;
      shown = words !== null;
      if (!paragraph) {
        paragraph = el(place.ownerDocument, "p", { class: "input-problem", id: newId(), role: "alert" });
        place.append(paragraph);
      }
      paragraph.textContent = words ?? "";
      paragraph.hidden = !shown;
      place.classList.toggle("has-problem", shown);
      setAttribute(input, "aria-invalid", shown ? "true" : null);
      setAttribute(input, "aria-describedby", shown ? [paragraph.id, described].filter(Boolean).join(" ") : described);
    },
  };
}
