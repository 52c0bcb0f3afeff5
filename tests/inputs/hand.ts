/** What a reader does to an input, without a browser: types, drags a slider, presses keys. */
import { type Aim, bind, type Control, type Socket } from "#inputs/bound";
import { type Bench, createBench } from "#machine/bench";

/** Builds an input on a page of its own, bound to a bench. */
export function placed<C extends Control>(
  make: (socket: Socket) => C,
  bench: Bench = createBench(),
  aim: Aim = { which: "now" },
): { bench: Bench; element: HTMLElement } {
  const socket: Socket = { bench, doc: document, aim };
  const { element } = bind(socket, make(socket));
  document.body.replaceChildren(element);
  return { bench, element };
}

export const slider = (element: Element): HTMLInputElement => element.querySelector("input[type=range]")!;
export const box = (element: Element): HTMLInputElement => element.querySelector("input:not([type=range])")!;

const fire = (element: Element, name: string): boolean => element.dispatchEvent(new Event(name, { bubbles: true }));

/** Types a text into a box, and leaves it with Enter or by going elsewhere. */
export function type(input: HTMLInputElement, text: string, leave: "enter" | "blur" = "enter"): void {
  input.value = text;
  fire(input, "input");
  if (leave === "enter") press(input, "Enter");
  else {
    fire(input, "change");
    fire(input, "blur");
  }
}

export function press(element: Element, key: string, more: KeyboardEventInit = {}): boolean {
  return element.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more }));
}

/** Drags a slider over these values and lets it go. */
export function drag(range: HTMLInputElement, values: readonly number[]): void {
  range.dispatchEvent(new Event("pointerdown", { bubbles: true }));
  for (const value of values) {
    range.value = String(value);
    fire(range, "input");
  }
  fire(range, "change");
}

/** The words at an input that was given something it can't take; "" when nothing is wrong. */
export function complaint(input: Element): string {
  if (input.getAttribute("aria-invalid") !== "true") return "";
  const ids = input.getAttribute("aria-describedby")?.split(" ") ?? [];
  return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
