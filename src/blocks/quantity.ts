/**
 * A computed figure in the text: an `<output>` that other programs can read, inside a button that opens how it came about.
 */

import { catalogue, type QuantityName } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import type { Value } from "#figures/values";
import type { UnitSystem } from "#machine/units";
import { el, setAttribute, setText } from "#view/dom";
import { formatModelled, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { unitsNow } from "#view/units";
import { enBlocks as en } from "#view/words/en-blocks";
import { closeWorked, openWorked, refreshWorked } from "./worked.ts";

/** Marks an output with what the figure was for the pinned machine, where that differs; takes the mark away otherwise. */
function markPinned(output: HTMLElement, { figures, name, mode, pinned }: QuantityState): boolean {
  const then = pinned?.value(name, mode ?? 0);
  const differs = then !== undefined && then !== figures.value(name, mode ?? 0);
  setAttribute(output, "data-pinned", differs ? String(then ?? "") : null);
  return differs;
}

export interface QuantityState {
  readonly figures: Figures;
  readonly name: QuantityName;
  readonly mode: number | null;
  readonly machine: "now" | "what-if" | null;
  /** The figures of the pinned machine, where there is one. */
  readonly pinned?: Figures;
}

/** A figure of the machine in prose, by its stable name; `mode` for one that each flight mode has. */
export function quantity(
  figures: Figures,
  name: QuantityName,
  mode?: number,
  machine: "now" | "what-if" | null = null,
): Shown<QuantityState> {
  return show(quantityView, { figures, name, mode: catalogue[name].perMode ? (mode ?? 0) : null, machine });
}

/** Speeds that the model gives, whatever is known of the machine. */
const modelled: ReadonlySet<QuantityName> = new Set([
  "no-load-head-speed",
  "learning-head-speed",
  "ceiling-hover",
  "ceiling-full-pitch",
  "speed-headroom-hover",
  "speed-headroom-full-pitch",
]);

/** Those that the model gives as long as nobody has measured what the controller learned. */
const expected: ReadonlySet<QuantityName> = new Set([
  "learned-motor-speed",
  "learned-head-speed",
  "usable-low-head-speed",
  "usable-high-head-speed",
]);

const isModelled = ({ bearings }: Figures, name: QuantityName): boolean =>
  modelled.has(name) || (expected.has(name) && !bearings.reference().measured);

/** The figure as text, rounded to what it is worth. */
export function quantityText({
  figures,
  name,
  mode = null,
}: Pick<QuantityState, "figures" | "name"> & { readonly mode?: number | null }): string {
  const value = figures.value(name, mode ?? 0);
  if (typeof value === "string") return en.quantity.states[value as keyof typeof en.quantity.states] ?? value;
  const none = en.quantity.none[name] ?? en.quantity.noValue;
  if (isModelled(figures, name)) return formatModelled(value, { none });
  // What a transmitter takes has no decimals to show, and a charge isn't known to a tenth of a per cent.
  const whole = name === "throttle-entered" || name === "lowest-charge" ? { decimals: 0 } : {};
  return formatValue(value, catalogue[name].unit, { none, ...whole });
}

/** What was last written into an output, so that a figure that stands still costs a comparison. */
interface Written extends Omit<QuantityState, "figures" | "pinned"> {
  readonly value: Value;
  readonly text: string;
  readonly units: UnitSystem;
}
const written = new WeakMap<HTMLElement, Written>();

/** Writes a figure and all that other programs read of it into an output element. Nobody else may write the same. */
export function fillOutput(output: HTMLElement, state: QuantityState): void {
  const { name, mode, machine } = state;
  const value = state.figures.value(name, mode ?? 0);
  const last = written.get(output);
  const same = last?.name === name && last.mode === mode && last.machine === machine;
  const units = unitsNow();
  if (same && last.value === value && last.units === units) return;
  const text = quantityText(state);
  if (!same) {
    setAttribute(output, "data-quantity", name);
    setAttribute(output, "data-unit", catalogue[name].unit);
    setAttribute(output, "data-mode", mode === null ? null : String(mode));
    setAttribute(output, "data-machine", machine);
  }
  output.setAttribute("data-value", value === null ? "" : String(value));
  if (!same || last.text !== text) setText(output, text);
  written.set(output, { name, mode, machine, value, text, units });
}

const quantityView: View<QuantityState> = {
  name: "quantity",
  words: quantityText,
  mount(host) {
    const doc = host.ownerDocument;
    const output = el(doc, "output", { class: "ink" });
    const button = el(doc, "button", { type: "button", class: "number", "aria-expanded": "false" }, output);
    host.append(button);
    let state: QuantityState | null = null;
    let marked = false;
    const isOpen = () => button.getAttribute("aria-expanded") === "true";
    button.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && isOpen()) closeWorked(button);
    });
    button.addEventListener("click", () => {
      if (!state) return;
      if (isOpen()) closeWorked(button);
      else openWorked(button, state);
    });
    return (next) => {
      if (state?.name !== next.name) button.title = catalogue[next.name].title;
      state = next;
      fillOutput(output, next);
      if (next.pinned || marked) marked = markPinned(output, next);
      if (isOpen()) refreshWorked(button, next);
    };
  },
};
