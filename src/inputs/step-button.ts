/** A button for one step; held down it goes on stepping, and all of that is one gesture. */
import { el } from "#view/dom";
import { newGesture } from "./bound.ts";

const WAIT_MS = 420;
const AGAIN_MS = 110;

export function stepButton(
  doc: Document,
  label: string,
  sign: string,
  act: (gesture: string) => void,
): HTMLButtonElement {
  const button = el(doc, "button", { type: "button", class: "step", "aria-label": label }, sign);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let gesture = "";
  let repeated = false;
  const again = () => {
    if (!button.isConnected) return;
    repeated = true;
    act(gesture);
    timer = setTimeout(again, AGAIN_MS);
  };
  const stop = () => clearTimeout(timer);
  button.addEventListener("pointerdown", () => {
    stop();
    gesture = newGesture();
    repeated = false;
    timer = setTimeout(again, WAIT_MS);
  });
  for (const name of ["pointerup", "pointercancel", "pointerleave"]) button.addEventListener(name, stop);
  button.addEventListener("click", () => {
    stop();
    if (!repeated) act(newGesture());
    repeated = false;
  });
  return button;
}
