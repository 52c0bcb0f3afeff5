/** The native slider of a field: every step of a drag is set in the very event that brings it. */
import type { Field } from "#machine/fields";
import { el } from "#view/dom";
import { newGesture } from "./bound.ts";
import type { NumberWork } from "./number.ts";
import { tidied } from "./typed.ts";

export interface Range {
  readonly input: HTMLInputElement;
  show(value: number | null, field: Field, anew: boolean): void;
}

/** A slider for a number; `refused` hears the words when a step can't be taken. */
export function rangeFor(
  doc: Document,
  id: string,
  label: string,
  work: NumberWork,
  refused: (words: string | null) => void,
): Range {
  const input = el(doc, "input", { type: "range", id, "aria-label": label });
  let gesture = "";
  let keyIsDown = false;
  let low = Number.NaN;
  let high = Number.NaN;
  let shownValue = "";

  const begin = () => {
    gesture = newGesture();
  };
  const end = () => {
    if (!keyIsDown) gesture = "";
  };
  input.addEventListener("pointerdown", begin);
  input.addEventListener("keydown", (event) => {
    if (event.repeat) return;
    keyIsDown = true;
    begin();
  });
  input.addEventListener("keyup", () => {
    keyIsDown = false;
    end();
  });
  input.addEventListener("blur", () => {
    keyIsDown = false;
    end();
  });
  input.addEventListener("change", () => {
    end();
    // After a step that was refused the thumb goes back to where the machine is.
    const value = work.value();
    if (shownValue === "" && value !== null) input.value = String(value);
  });
  input.addEventListener("input", () => {
    if (gesture === "") begin();
    const field = work.field();
    const moved = Math.min(field.high, Math.max(field.low, Number(input.value)));
    const problem = work.set(moved, gesture);
    refused(problem ? problem.words : null);
    if (problem) shownValue = "";
  });

  return {
    input,
    show(value, field, anew) {
      if (anew || field.low !== low || field.high !== high) {
        ({ low, high } = field);
        // The slider's steps are counted from its high end, so that a full pack can be reached.
        const steps = Math.ceil((high - low) / field.step - 1e-9);
        input.min = String(tidied(high - steps * field.step));
        input.max = String(tidied(high));
        input.step = String(field.step);
        shownValue = "";
      }
      if (input.disabled !== (value === null)) input.disabled = value === null;
      const text = String(value ?? low);
      if (text === shownValue) return;
      shownValue = text;
      // A browser moves the thumb to the nearest step, and to the end for a value beyond it.
      if (Number(input.value) !== Number(text)) input.value = text;
      input.setAttribute("aria-valuetext", work.words());
    },
  };
}
